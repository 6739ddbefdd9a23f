/**
 * Where something happens that is so in whole bars or in whole rounds: a limb that came late in two bars of eight is late
 * there, and neither uneven nor late throughout.
 *
 * Conventions: bars of the form and rounds from 1.
 */
import { groupBy } from '@shedbook/core';
import type { Due } from '../take/due.ts';
import type { PlayedBar } from '../take/played.ts';
import type { About } from '../verdict/verdict.ts';

/** Bars and rounds; those that are left out do not matter. */
export type Stretch = Pick<About, 'bars' | 'rounds'>;

/** A bar is wrong as a whole when so many of a voice's strokes in it are, and so many at least. */
const WHOLE_SHARE = 0.75;
const FEWEST_IN_BAR = 2;
/** As much of what is wrong must lie in such bars. */
const IN_BARS_SHARE = 0.75;
/** Wrong in so many of its rounds, a bar is wrong whatever the round. */
const AGAIN_SHARE = 0.6;

function numbers(bars: readonly PlayedBar[], of: (bar: PlayedBar) => number): readonly number[] {
  return [...new Set(bars.map(of))].toSorted((a, b) => a - b);
}

/** The form's bars that are wrong each time that they come round; null where there is one that mostly is not. */
function everyRound(wrong: readonly PlayedBar[], all: readonly PlayedBar[]): readonly number[] | null {
  const bars = numbers(wrong, ({ bar }) => bar);
  const timesIn = (some: readonly PlayedBar[], bar: number) => some.filter((one) => one.bar === bar).length;
  return bars.every((bar) => timesIn(wrong, bar) >= AGAIN_SHARE * timesIn(all, bar)) ? bars : null;
}

/** The stretch that some bars are. @param all the bars in which it might have been */
export function stretchIn(wrong: readonly PlayedBar[], all: readonly PlayedBar[]): Stretch {
  const bars = everyRound(wrong, all);
  if (bars) return { bars };
  const rounds = numbers(wrong, ({ round }) => round + 1);
  const inThem = all.filter(({ round }) => rounds.includes(round + 1));
  if (inThem.length === wrong.length) return { rounds };
  return { bars: numbers(wrong, ({ bar }) => bar), rounds };
}

/**
 * Where strokes of one voice are wrong, if that is in whole bars; null where it is here and there, or everywhere.
 * @param due all strokes of the voice that were due, those that are wrong among them
 */
export function stretchOf(wrong: readonly Due[], due: readonly Due[]): Stretch | null {
  const isWrong = new Set(wrong);
  const byBar = [...groupBy(due, ({ bar }) => bar)];
  const whole = byBar.filter(([, own]) => {
    const count = own.filter((one) => isWrong.has(one)).length;
    return count >= FEWEST_IN_BAR && count >= WHOLE_SHARE * own.length;
  });
  const inBars = whole.reduce((sum, [, own]) => sum + own.filter((one) => isWrong.has(one)).length, 0);
  if (whole.length === 0 || whole.length === byBar.length || inBars < IN_BARS_SHARE * wrong.length)
    return null;
  return stretchIn(
    whole.map(([bar]) => bar),
    byBar.map(([bar]) => bar),
  );
}
