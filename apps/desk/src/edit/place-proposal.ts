/** Putting what the composer proposes on the page. */
import type { Exercise } from '@shedbook/core';
import type { Unnumbered } from './exercises.ts';
import { isSilent } from './is-silent.ts';

/**
 * Where it goes: behind what is written, before one exercise, each after the one that it is made of or in its stead, or in
 * place of what is not kept.
 */
export type PlaceHow = 'behind' | 'before its goal' | 'each after its own' | 'in its stead' | 'instead';

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

function behind(written: readonly Unnumbered[], items: readonly ProposedItem[]): readonly Unnumbered[] {
  const taken = items.filter(({ isTaken, isKept }) => isTaken && !isKept);
  return [...written, ...taken.map(({ exercise }) => exercise)];
}

/** Every exercise with what is made of it behind it, or, where it is not kept, in its stead. */
function besideTheirOwn(
  written: readonly Exercise[],
  items: readonly ProposedItem[],
  isInstead: boolean,
): readonly Unnumbered[] {
  return written.flatMap((exercise) => {
    const made = items
      .filter(({ from, isTaken }) => isTaken && from === exercise.number)
      .map((item) => item.exercise);
    return isInstead && made.length > 0 && exercise.keep !== true ? made : [exercise, ...made];
  });
}

/**
 * The exercises of a page after a proposal is placed; kept ones are never lost, silent bars of a new lesson are.
 * @param goal number of the exercise that the proposal leads to
 */
export function placeExercises(
  written: readonly Exercise[],
  items: readonly ProposedItem[],
  how: PlaceHow,
  goal: number | null = null,
): readonly Unnumbered[] {
  const played = written.every(isSilent) ? [] : written;
  if (how === 'behind') return behind(played, items);
  if (how === 'each after its own' || how === 'in its stead') {
    return besideTheirOwn(written, items, how === 'in its stead');
  }
  if (how === 'before its goal') {
    const at = written.findIndex(({ number }) => number === goal);
    return [...behind(written.slice(0, at), items), ...written.slice(at)];
  }
  const stays = items.filter(({ isTaken, isKept }) => isTaken || isKept).map(({ exercise }) => exercise);
  return stays.length > 0 ? stays : written;
}
