/**
 * Faults as facts: who played what wrongly, and where.
 *
 * Conventions: a bar is named only where the loop has more than one.
 */
import {
  type LoopFault,
  type PlaceFact,
  placeInBar,
  type SidedLimb,
  sideOf,
  VOICE_FACTS,
  type Voice,
  type WrittenPlace,
} from '@shedbook/core';
import type { FaultFact } from './fact.ts';
import type { LoopTask } from './task.ts';

/** A voice, and the limb that plays it. */
export interface Player {
  readonly limb: SidedLimb;
  readonly voice: Voice;
}

/** Subdivision by which a place is counted where nothing is written. */
const SIXTEENTHS = 4;

/** Who plays a voice, at a place or at its first. */
export function whoPlays(task: LoopTask, voice: Voice, place: WrittenPlace | null): Player {
  const own = task.strokes.filter((stroke) => stroke.voice === voice);
  const here = own.find(
    ({ written }) => written.bar === place?.bar && written.beat === place.beat && written.slot === place.slot,
  );
  const limb = here?.limb ?? own[0]?.limb ?? VOICE_FACTS[voice].limb;
  return { limb: sideOf(limb, task.setUp), voice };
}

/** A place of a loop as it is counted. */
export function placeOf(task: LoopTask, place: WrittenPlace): PlaceFact {
  const at = task.strokes.find(
    ({ written, slots }) =>
      written.bar === place.bar && written.beat === place.beat && written.slot === place.slot && slots > 1,
  );
  const inBar = placeInBar(place.beat - 1, place.slot - 1, at?.slots ?? SIXTEENTHS);
  return task.bars > 1 ? { fact: 'in-bar', place: inBar, bar: place.bar } : inBar;
}

const MEANT = {
  missed: ['missed-throughout', 'missed-at'],
  extra: ['extra', 'extra-near'],
  early: ['early-throughout', 'early-at'],
  late: ['late-throughout', 'late-at'],
} as const;

/** One fault as a clause. Its place is null where it holds throughout. */
export function tellFault(task: LoopTask, { kind, voice, place, amount }: LoopFault): FaultFact {
  if (voice === null || kind === 'slow' || kind === 'fast')
    return { fact: kind === 'slow' ? 'slower-than-asked' : 'faster-than-asked', percent: amount };
  const who = whoPlays(task, voice, place);
  if (kind === 'loud' || kind === 'quiet')
    return { fact: kind === 'loud' ? 'too-loud' : 'too-quiet', ...who, db: amount, lead: task.lead };
  const at = place && placeOf(task, place);
  if (kind === 'missed' || kind === 'extra') {
    const [throughout, there] = MEANT[kind];
    return at === null ? { fact: throughout, ...who } : { fact: there, ...who, place: at };
  }
  const [throughout, there] = MEANT[kind];
  return at === null
    ? { fact: throughout, ...who, ms: amount }
    : { fact: there, ...who, ms: amount, place: at };
}
