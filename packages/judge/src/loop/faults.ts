/**
 * What was wrong in one time through the loop, measured against what was asked.
 *
 * Conventions: amounts as in the log: milliseconds, decibels, percent, or 1 for a stroke missed or added.
 * A stroke that the ear is unsure of is not held against anyone.
 */

import type { LoopFault, Voice, WrittenPlace } from '@shedbook/core';
import { median } from '@shedbook/signal';
import type { Allowance } from '../level/levels.data.ts';
import {
  allowedBalanceDb,
  allowedMs,
  allowedTempoPercent,
  tempoChangePercent,
} from '../perception/perception.ts';
import type { HeardLoop, HeardStroke } from './heard.ts';
import type { LoopTask, TaskStroke } from './task.ts';

/** From this confidence (0 to 1) on, what the ear says is held against the student. */
export const SURE = 0.5;

/** What was wrong, and how much was there to be judged. */
export interface MeasuredLoop {
  /** Asked strokes that were either heard or missed. */
  readonly judged: number;
  readonly faults: readonly LoopFault[];
}

/** A place and a voice as one key. */
export function strokeKey(voice: Voice, place: WrittenPlace): string {
  return `${voice} ${place.bar}.${place.beat}.${place.slot}`;
}

/** The lateness that a rule allows an asked stroke, in milliseconds. */
export function allowedFor(rule: Allowance, stroke: TaskStroke): number {
  return allowedMs(rule, stroke.intervalSeconds, stroke.together);
}

interface Pair {
  readonly asked: TaskStroke;
  readonly heard: HeardStroke;
}

function timeFaults(pairs: readonly Pair[], rule: Allowance): readonly LoopFault[] {
  return pairs.flatMap(({ asked, heard }): LoopFault[] => {
    const amount = Math.abs(heard.offsetMs);
    if (heard.confidence < SURE || amount <= allowedFor(rule, asked)) return [];
    const kind = heard.offsetMs < 0 ? 'early' : 'late';
    return [{ kind, voice: asked.voice, place: asked.written, amount }];
  });
}

/** A voice whose median level is out of balance. The lead voice is what the others are measured against. */
function balanceFaults(pairs: readonly Pair[], task: LoopTask, allowedDb: number): readonly LoopFault[] {
  const voices = [...new Set(pairs.map(({ asked }) => asked.voice))].filter((voice) => voice !== task.lead);
  return voices.flatMap((voice): LoopFault[] => {
    const own = pairs.filter(({ asked }) => asked.voice === voice);
    const difference = median(own.map(({ asked, heard }) => heard.levelDb - asked.levelDb));
    if (Math.abs(difference) <= allowedDb) return [];
    return [{ kind: difference > 0 ? 'loud' : 'quiet', voice, place: null, amount: Math.abs(difference) }];
  });
}

function tempoFaults(heardBpm: number, askedBpm: number, rule: Allowance): readonly LoopFault[] {
  const percent = tempoChangePercent(heardBpm, askedBpm);
  if (Math.abs(percent) <= allowedTempoPercent(rule)) return [];
  return [{ kind: percent > 0 ? 'fast' : 'slow', voice: null, place: null, amount: Math.abs(percent) }];
}

/** Everything that was wrong in a loop, in no particular order. */
export function measureLoop(task: LoopTask, loop: HeardLoop, rule: Allowance): MeasuredLoop {
  const heardAt = new Map(loop.strokes.map((stroke) => [strokeKey(stroke.voice, stroke.written), stroke]));
  const missedAt = new Set(loop.missed.map((place) => strokeKey(place.voice, place)));
  const voices = new Set(loop.voices);
  const asked = task.strokes.filter((stroke) => voices.has(stroke.voice));
  const pairs = asked.flatMap((stroke): Pair[] => {
    const heard = heardAt.get(strokeKey(stroke.voice, stroke.written));
    return heard ? [{ asked: stroke, heard }] : [];
  });
  const missed = asked.filter((stroke) => {
    const key = strokeKey(stroke.voice, stroke.written);
    return missedAt.has(key) && !heardAt.has(key);
  });
  const extra = loop.extra.filter((stroke) => stroke.confidence >= SURE);
  return {
    judged: pairs.length + missed.length,
    faults: [
      ...missed.map(
        ({ voice, written }): LoopFault => ({ kind: 'missed', voice, place: written, amount: 1 }),
      ),
      ...extra.map(({ voice, near }): LoopFault => ({ kind: 'extra', voice, place: near, amount: 1 })),
      ...timeFaults(pairs, rule),
      ...(loop.levelsBy === null ? [] : balanceFaults(pairs, task, allowedBalanceDb(rule, loop.levelsBy))),
      ...tempoFaults(loop.bpm, task.bpm, rule),
    ],
  };
}
