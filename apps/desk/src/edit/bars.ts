/** Bars of a pattern and of an exercise: one more, one less. Bars count from 0. */
import {
  type BarStretch,
  type Exercise,
  type Hands,
  handsOf,
  type Pattern,
  type Repetition,
  saidAt,
  silentLike,
  strokesOfBar,
  withHands,
} from '@shedbook/core';
import type { Unnumbered } from './unnumbered.ts';

/** What a new bar has: nothing, divided as the one before it, or the same again. */
export type NewBar = 'silent' | 'same';

/** The pattern with a bar more after one of its bars. */
export function addBar({ bars }: Pattern, after: number, how: NewBar): Pattern {
  const bar = bars[after] ?? bars.at(-1) ?? [];
  return { bars: bars.toSpliced(after + 1, 0, how === 'same' ? bar : bar.map(silentLike)) };
}

/** The pattern without one of its bars; the last one stays. */
export function removeBar({ bars }: Pattern, at: number): Pattern {
  return bars.length < 2 ? { bars } : { bars: bars.toSpliced(at, 1) };
}

/** What is done with the hands of a bar: `own` are its own, the first of them number `from` (from 0) of all. */
type ChangeHands = (all: Hands, own: { readonly from: number; readonly hands: Hands }) => Hands;

/** The voices with their patterns changed at a bar, and their hands with them. */
function withParts(
  exercise: Unnumbered,
  at: number,
  change: (pattern: Pattern) => Pattern,
  changeHands: ChangeHands,
): Pick<Exercise, 'parts' | 'sticking'> {
  const handsAfter = (part: number) => {
    const all = handsOf(exercise, part);
    if (!all) return null;
    const { from, to } = strokesOfBar(exercise.parts[part]?.pattern ?? { bars: [] }, at);
    const left = changeHands(all, { from, hands: all.slice(from, to) });
    return left.length > 0 ? left : null;
  };
  return {
    parts: exercise.parts.map((part, index) =>
      withHands({ ...part, pattern: change(part.pattern) }, index === 0 ? null : handsAfter(index)),
    ),
    sticking: handsAfter(0),
  };
}

/** Repeats after a bar has come or gone; what stands as a repeat sign from there on is written out. */
function repeatsAt({ repeats, barRepeats }: Unnumbered, at: number, by: 1 | -1): Repetition {
  const moved = (stretch: BarStretch): BarStretch => ({
    from: stretch.from > at ? stretch.from + by : stretch.from,
    to: stretch.to > at ? stretch.to + by : stretch.to,
  });
  const isLeft = ({ from, to }: BarStretch) => to > from;
  const kept = repeats
    ?.map((each) => ({ ...each, ...moved(each), endings: each.endings.map(moved) }))
    .filter((each) => isLeft(each) && each.endings.every(isLeft));
  const signs = barRepeats?.filter(({ to }) => to <= at);
  return {
    ...(kept && kept.length > 0 ? { repeats: kept } : {}),
    ...(signs && signs.length > 0 ? { barRepeats: signs } : {}),
  };
}

/** The exercise with a bar more after one of its bars, in all its voices; the same again has its hands too. */
export function withBar(exercise: Unnumbered, after: number, how: NewBar): Unnumbered {
  const copied: ChangeHands = (all, { from, hands }) =>
    all.toSpliced(from + hands.length, 0, ...(how === 'same' ? hands : []));
  return {
    ...saidAt(exercise, (bar) => [bar > after ? bar + 1 : bar]),
    ...repeatsAt(exercise, after, 1),
    ...withParts(exercise, after, (pattern) => addBar(pattern, after, how), copied),
  };
}

/** The exercise without one of its bars; the last one stays. */
export function withoutBar(exercise: Unnumbered, at: number): Unnumbered {
  if ((exercise.parts[0]?.pattern.bars.length ?? 0) < 2) return exercise;
  const left: ChangeHands = (all, { from, hands }) => all.toSpliced(from, hands.length);
  return {
    ...saidAt(exercise, (bar) => (bar === at ? [] : [bar > at ? bar - 1 : bar])),
    ...repeatsAt(exercise, at, -1),
    ...withParts(exercise, at, (pattern) => removeBar(pattern, at), left),
  };
}
