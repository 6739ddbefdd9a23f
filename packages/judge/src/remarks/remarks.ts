/**
 * The remarks on a take, strongest first, each thing said once; praise where there is room.
 *
 * Conventions: a take with nothing wrong is praised and not searched for faults. What a microphone told badly is no
 * reason to blame, and what looks like a fault there is enough to praise nothing of the kind: voices that were not
 * heard, or can hardly be told, are left to what could not be heard (`told.ts`).
 */
import type { FullReport, Voice, VoiceReport } from '@shedbook/core';
import { ALLOWANCES, type Allowance, type Level } from '../level/levels.data.ts';
import { placeRemarks } from './place-remarks.ts';
import { isPraise, type Remark, type RemarkFact } from './remark.ts';
import { canBeHeld, isAllTold, isTold } from './told.ts';
import { wholeRemarks } from './whole-remarks.ts';

/** Remarks of one group on one voice say one thing. */
const GROUP_OF: Readonly<Record<RemarkFact['kind'], string>> = {
  missing: 'strokes',
  'left-out': 'strokes',
  added: 'added',
  early: 'time',
  late: 'time',
  before: 'time',
  after: 'time',
  unsteady: 'time',
  slows: 'tempo',
  hurries: 'tempo',
  wanders: 'tempo',
  slower: 'asked tempo',
  faster: 'asked tempo',
  'flat-swing': 'swing',
  'sharp-swing': 'swing',
  loud: 'balance',
  quiet: 'balance',
  uneven: 'evenness',
  complete: 'strokes',
  steady: 'time',
  holds: 'tempo',
  balanced: 'balance',
};

function topicOf(remark: Remark): string {
  return `${GROUP_OF[remark.kind]} ${'voice' in remark ? remark.voice : ''}`;
}

/** The first remark on each topic. */
function once(remarks: readonly Remark[]): readonly Remark[] {
  const said = new Set<string>();
  return remarks.filter((remark) => {
    const topic = topicOf(remark);
    if (said.has(topic)) return false;
    said.add(topic);
    return true;
  });
}

/** Strength of praise, so that it stands behind every fault and in this order. */
const PRAISE = { complete: 0.4, holds: 0.3, steady: 0.2, balanced: 0.1 } as const;
/** Half of a normal distribution lies within this many standard deviations. */
const HALF = 0.6745;
/** Fewest strokes of a voice that is called steady. */
const FEWEST_STEADY = 8;

/** Half of a voice's strokes lie within this many ms, whole ones. */
function wholeMs({ offsetMs }: VoiceReport): number {
  return Math.max(1, Math.round(HALF * offsetMs.spread));
}

function praise(report: FullReport, suspected: readonly Remark[]): readonly Remark[] {
  const isFree = (group: string) => !suspected.some((fault) => GROUP_OF[fault.kind] === group);
  const voices = Object.entries(report.voices) as readonly [Voice, VoiceReport][];
  const count = voices.reduce((sum, [, of]) => sum + of.hits, 0);
  const steadiest = voices
    .filter(
      ([voice, of]) =>
        of.hits >= FEWEST_STEADY &&
        isTold(report, voice) &&
        !suspected.some((fault) => 'voice' in fault && fault.voice === voice),
    )
    .toSorted(
      ([a, x], [b, y]) => wholeMs(x) - wholeMs(y) || Number(b === report.lead) - Number(a === report.lead),
    )[0];
  const allTold = isAllTold(report);
  const found: Remark[] = [];
  if (allTold && count > 0 && report.missed.length === 0 && report.strokes.every((stroke) => stroke.written))
    found.push({ kind: 'complete', count, strength: PRAISE.complete });
  if (isFree('tempo') && report.tempo.length >= 4)
    found.push({ kind: 'holds', bpm: report.alignment.bpm, strength: PRAISE.holds });
  if (steadiest) {
    const ms = wholeMs(steadiest[1]);
    found.push({ kind: 'steady', voice: steadiest[0], ms, strength: PRAISE.steady });
  }
  if (allTold && isFree('balance') && Object.keys(report.balanceDb).length > 1)
    found.push({ kind: 'balanced', strength: PRAISE.balanced });
  return found;
}

/** Everything that looks like a fault, strongest first, whether it can be held or not. */
function suspect(report: FullReport, limits: Allowance): readonly Remark[] {
  const all = [...placeRemarks(report, limits), ...wholeRemarks(report, limits)];
  return all.filter((remark) => !isPraise(remark)).toSorted((a, b) => b.strength - a.strength);
}

/** Every remark on a take for a student of a level: faults, strongest first, then praise. */
export function remarksOn(report: FullReport, level: Level): readonly Remark[] {
  const suspected = suspect(report, ALLOWANCES[level]);
  const faults = once(suspected.filter((remark) => canBeHeld(remark, report)));
  return [...faults, ...praise(report, suspected)];
}
