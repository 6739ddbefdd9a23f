/** Repeat signs, endings and signs in place of notes, as they stand on one line of an exercise. */
import { barSigns, type Exercise, type NotatedBar, signedBars } from '@shedbook/core';
import type { MeiBarSigns } from '../tile/mei.ts';

/** An exercise with its bars as they are printed. */
interface Printed {
  readonly exercise: Exercise;
  readonly bars: readonly NotatedBar[];
}

/** What stands in place of the notes of a bar; where half of a sign would stand on another line, the notes stand. */
function signOf({ exercise, bars }: Printed, bar: number, from: number, to: number) {
  const sign = signedBars(exercise, bars, bar);
  if (!sign || sign.first < from || sign.first + sign.size > to) return null;
  if (sign.first < bar) return 'blank';
  return sign.size === 1 ? 'one' : 'two';
}

/** The signs of the bars `from` (from 0) up to `to`; nothing where there are none. */
export function signsOf(
  prepared: Printed,
  from: number,
  to: number,
): { readonly signs?: readonly MeiBarSigns[] } {
  const { exercise } = prepared;
  if (!exercise.repeats && !exercise.barRepeats) return {};
  const signs = Array.from({ length: to - from }, (_, index): MeiBarSigns => {
    const bar = from + index;
    const { opens, closes } = barSigns(exercise, bar);
    return {
      opens,
      closes: closes !== null,
      sign: signOf(prepared, bar, from, to),
    };
  });
  return { signs };
}

/** The bracket of an ending over some bars of a line. */
export interface EndingBracket {
  /** Index of its first bar on the line, in the exercise. */
  readonly from: number;
  /** Index after its last bar on the line. */
  readonly to: number;
  /** The times that it is for, such as `1.`; null where it began on the line before. */
  readonly text: string | null;
  /** Whether it goes on, or stays open since nothing is played again after it. */
  readonly isOpen: boolean;
}

/** The brackets over the bars `from` (from 0) up to `to`. */
export function bracketsOf(exercise: Exercise, from: number, to: number): readonly EndingBracket[] {
  const brackets: EndingBracket[] = [];
  for (let bar = from; bar < to; bar += 1) {
    const { ending } = barSigns(exercise, bar);
    if (!ending) continue;
    const last = brackets.at(-1);
    const isOpen = ending.isLast || !ending.ends;
    if (last && !ending.begins) brackets[brackets.length - 1] = { ...last, to: bar + 1, isOpen };
    else {
      const text = ending.begins ? `${ending.times.join(', ')}.` : null;
      brackets.push({ from: bar, to: bar + 1, text, isOpen });
    }
  }
  return brackets;
}
