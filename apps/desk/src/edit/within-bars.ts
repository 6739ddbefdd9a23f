/** What an exercise says of single bars, kept to bars that it has. Bars count from 0. */
import { endOfRepeat } from '@shedbook/core';
import type { Unnumbered } from './unnumbered.ts';

/** What stands at bars after a change of where they are; what stands at none is left out. */
export function saidAt(exercise: Unnumbered, placeOf: (bar: number) => number | null): Unnumbered {
  const { dynamics, above, below, fill, repeats: _, barRepeats: __, ...rest } = exercise;
  const signs = dynamics?.flatMap((sign) => {
    const bar = placeOf(sign.bar);
    return bar === null ? [] : [{ ...sign, bar }];
  });
  const texts = (written: readonly (string | null)[] | undefined) => {
    const moved: (string | null)[] = [];
    written?.forEach((text, bar) => {
      const to = placeOf(bar);
      if (to === null || text === null) return;
      while (moved.length < to) moved.push(null);
      moved[to] = text;
    });
    return moved.length > 0 ? moved : undefined;
  };
  const [over, under] = [texts(above), texts(below)];
  const bar = fill ? placeOf(fill.bar) : null;
  return {
    ...rest,
    ...(signs && signs.length > 0 ? { dynamics: signs } : {}),
    ...(over ? { above: over } : {}),
    ...(under ? { below: under } : {}),
    ...(fill && bar !== null ? { fill: { ...fill, bar } } : {}),
  };
}

/** The exercise without what names bars that it does not have: after its pattern has become shorter, however it did. */
export function withinItsBars(exercise: Unnumbered): Unnumbered {
  const bars = exercise.parts[0]?.pattern.bars.length ?? 0;
  const { repeats, barRepeats, ...rest } = exercise;
  const kept = repeats?.filter((each) => endOfRepeat(each) <= bars);
  const signs = barRepeats?.filter(({ to }) => to <= bars);
  return {
    ...saidAt(rest, (bar) => (bar < bars ? bar : null)),
    ...(kept && kept.length > 0 ? { repeats: kept } : {}),
    ...(signs && signs.length > 0 ? { barRepeats: signs } : {}),
  };
}
