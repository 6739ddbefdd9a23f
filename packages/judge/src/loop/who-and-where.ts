/**
 * Who plays what, and how a place is counted.
 *
 * Conventions: a bar is named only where the loop has more than one.
 */
import {
  type PlaceFact,
  placeInBar,
  type SidedLimb,
  sideOf,
  VOICE_FACTS,
  type Voice,
  type WrittenPlace,
} from '@shedbook/core';
import type { LoopTask } from './task.ts';

/** A voice, and the limb that plays it. */
export interface Player {
  readonly limb: SidedLimb;
  readonly voice: Voice;
}

/** Subdivision by which a place is counted where nothing is written. */
const SIXTEENTHS = 4;

/** Who plays a voice, at a place or at its first; both hands clap. */
export function whoPlays(task: LoopTask, voice: Voice, place: WrittenPlace | null): Player {
  const own = task.strokes.filter((stroke) => stroke.voice === voice);
  const here = own.find(
    ({ written }) => written.bar === place?.bar && written.beat === place.beat && written.slot === place.slot,
  );
  if (voice === 'clap') return { limb: 'both hands', voice };
  const limb = here?.limb ?? own[0]?.limb ?? VOICE_FACTS[voice].limb;
  return { limb: sideOf(limb, task.setUp), voice };
}

/** The number of a bar as it is written in the exercise, where that has several; else in the form. From 1. */
export function writtenBar({ patternBars }: LoopTask, bar: number): number {
  const isLong = patternBars.some((each) => (each ?? 0) > 0);
  const written = patternBars[bar - 1];
  return isLong && written !== null && written !== undefined ? written + 1 : bar;
}

/** A place of a loop as it is counted; without its bar where it is the same in every bar. */
export function placeOf(task: LoopTask, place: WrittenPlace, inEveryBar = false): PlaceFact {
  const at = task.strokes.find(
    ({ written, slots }) =>
      written.bar === place.bar && written.beat === place.beat && written.slot === place.slot && slots > 1,
  );
  const inBar = placeInBar(place.beat - 1, place.slot - 1, at?.slots ?? SIXTEENTHS);
  return task.bars > 1 && !inEveryBar ? { fact: 'in-bar', place: inBar, bar: place.bar } : inBar;
}
