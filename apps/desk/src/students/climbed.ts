/**
 * Practice that climbed a ladder, round by round: as a whole it would be several tempi.
 *
 * Conventions: tempi as the lesson counts them; what was practised last stands first.
 */
import { findExercise, nameOf } from '@shedbook/coach';
import { countedTempo, type LoopVerdict, type PracticeEntry, type PracticeLog } from '@shedbook/core';
import type { DeskShelf } from './take-in.ts';

/** Rounds further apart than this ratio were asked at different tempi: nobody steps by less, and takes drift by less. */
const CLIMBED = 1.02;
/** More of them help nobody. */
const SHOWN = 6;

/** One time up the ladder. */
export interface Climbed {
  readonly id: string;
  readonly startedAt: string;
  /** What the exercise is called. */
  readonly exercise: string;
  readonly rounds: readonly { readonly bpm: number; readonly verdict: LoopVerdict }[];
}

function isClimb({ heardBy, loops }: PracticeEntry): boolean {
  const tempi = loops.map(({ bpm }) => bpm);
  return heardBy === 'ear' && Math.max(...tempi) > CLIMBED * Math.min(...tempi);
}

/** What climbed of what an ear heard, the latest few. */
export function climbedOf(shelf: readonly DeskShelf[], { entries }: PracticeLog): readonly Climbed[] {
  const climbed = entries.toReversed().flatMap((entry): Climbed[] => {
    if (!isClimb(entry) || entry.exercise === null) return [];
    const found = findExercise(shelf, entry.lesson, entry.exercise);
    if (!found) return [];
    const { meter } = found.lesson;
    return [
      {
        id: entry.id,
        startedAt: entry.startedAt,
        exercise: nameOf(found),
        rounds: entry.loops.map(({ bpm, verdict }) => ({ bpm: countedTempo(meter, bpm), verdict })),
      },
    ];
  });
  return climbed.slice(0, SHOWN);
}
