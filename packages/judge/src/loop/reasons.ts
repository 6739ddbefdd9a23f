/**
 * Why loops were not clean, strongest first.
 *
 * Conventions: faults of the same kind, voice and place are one reason, however many loops had them; a voice that
 * is early or late (or missing) at most of its places is said once, as "throughout".
 */

import type { FaultKind, LoopFault, Voice, WrittenPlace } from '@shedbook/core';
import { median } from '@shedbook/signal';
import type { Allowance } from '../level/levels.data.ts';
import { APART_MS } from '../perception/perception.data.ts';
import type { FaultFact, HeardApartFact, LoopReasonFact, LoopsReasonFact } from './fact.ts';
import { strokeKey } from './faults.ts';
import type { HeardLoop } from './heard.ts';
import { strengthOf } from './strength.ts';
import type { LoopTask } from './task.ts';
import { tellFault } from './tell-fault.ts';

/** One reason, with what it is about. */
export interface Reason {
  readonly kind: FaultKind;
  readonly voice: Voice | null;
  /** Null when it holds throughout. */
  readonly place: WrittenPlace | null;
  /** Median over the faults that it stands for, in the fault's own unit: ms, dB, percent or a count. */
  readonly amount: number;
  /** In how many loops. */
  readonly loops: number;
  /** How many times over the limit, summed over the faults that it stands for; see `strengthOf`. No unit. */
  readonly strength: number;
  /** The same as it is said. */
  readonly fact: LoopReasonFact | LoopsReasonFact;
}

/** Faults by loop, and what was heard there where it is known. */
export interface FaultyLoop {
  readonly faults: readonly LoopFault[];
  readonly heard?: HeardLoop;
}

interface Group {
  readonly fault: LoopFault;
  readonly faults: readonly LoopFault[];
  readonly loops: number;
}

const TIMED: ReadonlySet<FaultKind> = new Set(['early', 'late', 'missed']);

/** A voice is said to be off "throughout" from this share of its places, and from this many places. */
const THROUGHOUT_SHARE = 0.5;
const THROUGHOUT_PLACES = 3;

/** Kinds and voices that are off at most of their places. */
function throughout(task: LoopTask, faults: readonly LoopFault[]): ReadonlySet<string> {
  const places = new Map<string, Set<string>>();
  for (const { kind, voice, place } of faults) {
    if (voice === null || place === null || !TIMED.has(kind)) continue;
    const key = `${kind} ${voice}`;
    places.set(key, (places.get(key) ?? new Set()).add(strokeKey(voice, place)));
  }
  const all = (voice: string) => task.strokes.filter((stroke) => stroke.voice === voice).length;
  const isMost = ([key, set]: [string, Set<string>]) =>
    set.size >= THROUGHOUT_PLACES && set.size >= THROUGHOUT_SHARE * all(key.split(' ')[1] as string);
  return new Set([...places].filter(isMost).map(([key]) => key));
}

function groupFaults(task: LoopTask, loops: readonly FaultyLoop[]): readonly Group[] {
  const spread = throughout(
    task,
    loops.flatMap((loop) => loop.faults),
  );
  const groups = new Map<string, { fault: LoopFault; faults: LoopFault[]; loops: Set<number> }>();
  loops.forEach((loop, index) => {
    for (const each of loop.faults) {
      const fault = spread.has(`${each.kind} ${each.voice}`) ? { ...each, place: null } : each;
      const { kind, voice, place } = fault;
      const key = `${kind} ${place && voice ? strokeKey(voice, place) : voice}`;
      const group = groups.get(key) ?? { fault, faults: [], loops: new Set() };
      group.faults.push(each);
      groups.set(key, { ...group, loops: group.loops.add(index) });
    }
  });
  return [...groups.values()].map((group) => ({ ...group, loops: group.loops.size }));
}

/** Voices written at a place that were heard apart from a voice there. */
function apartFrom(voice: Voice, place: WrittenPlace, loops: readonly FaultyLoop[]): readonly Voice[] {
  const here = (at: WrittenPlace) => at.bar === place.bar && at.beat === place.beat && at.slot === place.slot;
  const found = loops.flatMap(({ heard }) => {
    const struck = heard?.strokes.filter((stroke) => here(stroke.written)) ?? [];
    const own = struck.find((stroke) => stroke.voice === voice);
    if (!own) return [];
    return struck.filter((stroke) => Math.abs(stroke.offsetMs - own.offsetMs) > APART_MS);
  });
  return [...new Set(found.map((stroke) => stroke.voice))];
}

function tellGroup(
  task: LoopTask,
  fault: LoopFault,
  loops: readonly FaultyLoop[],
): FaultFact | HeardApartFact {
  const what = tellFault(task, fault);
  const { kind, voice, place } = fault;
  if (voice === null || place === null || (kind !== 'early' && kind !== 'late')) return what;
  const voices = apartFrom(voice, place, loops);
  return voices.length === 0 ? what : { fact: 'heard-apart', what, voices };
}

/** Reasons for everything that was wrong in one loop or several, strongest first. */
export function findReasons(
  task: LoopTask,
  loops: readonly FaultyLoop[],
  rule: Allowance,
): readonly Reason[] {
  const reasons = groupFaults(task, loops).map((group): Reason => {
    const { kind, voice, place } = group.fault;
    const amount = median(group.faults.map((fault) => fault.amount));
    const strength = group.faults.reduce((sum, fault) => sum + strengthOf(fault, task, rule), 0);
    const what = tellGroup(task, { ...group.fault, amount }, loops);
    const fact: Reason['fact'] =
      loops.length > 1
        ? { fact: 'loops-reason', what, times: group.loops, of: loops.length }
        : { fact: 'loop-reason', what };
    return { kind, voice, place, amount, loops: group.loops, strength, fact };
  });
  return reasons.toSorted((a, b) => b.strength - a.strength);
}
