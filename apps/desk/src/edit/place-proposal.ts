/** Putting what the composer proposes on the page. */
import { type Exercise, isRest } from '@shedbook/core';
import type { Unnumbered } from './exercises.ts';

/** Where it goes: behind what is written, each after the one that it is made of, or in place of what is not kept. */
export type PlaceHow = 'behind' | 'each after its own' | 'instead';

/** An exercise that is proposed. */
export interface ProposedItem {
  readonly exercise: Unnumbered;
  /** Number of the exercise that it is made of, or null. */
  readonly from: number | null;
  /** Whether it is on the page already and stays there. */
  readonly isKept: boolean;
  /** Whether the person takes it. */
  readonly isTaken: boolean;
}

/** Whether nothing is struck in an exercise: the bar that a new lesson begins with. */
export function isSilent({ parts }: Pick<Exercise, 'parts'>): boolean {
  return parts.every((part) => part.pattern.bars.flat().every(isRest));
}

function behind(written: readonly Unnumbered[], items: readonly ProposedItem[]): readonly Unnumbered[] {
  const taken = items.filter(({ isTaken, isKept }) => isTaken && !isKept);
  return [...written, ...taken.map(({ exercise }) => exercise)];
}

/** The exercises of a page after a proposal is placed; kept ones are never lost, silent bars of a new lesson are. */
export function placeExercises(
  written: readonly Exercise[],
  items: readonly ProposedItem[],
  how: PlaceHow,
): readonly Unnumbered[] {
  const played = written.every(isSilent) ? [] : written;
  if (how === 'behind') return behind(played, items);
  if (how === 'each after its own') {
    return written.flatMap((exercise) => [
      exercise,
      ...items
        .filter(({ from, isTaken }) => isTaken && from === exercise.number)
        .map((item) => item.exercise),
    ]);
  }
  const stays = items.filter(({ isTaken, isKept }) => isTaken || isKept).map(({ exercise }) => exercise);
  return stays.length > 0 ? stays : written;
}
