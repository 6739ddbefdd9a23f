/**
 * What an exercise says of single bars, where its bars come and go. Bars count from 0.
 */
import type { Expression } from './expression.ts';
import type { Exercise, ExercisePart } from './lesson.ts';
import { endOfRepeat, playedBars, type Repetition } from './repeats.ts';

/** Texts at the bars that they stand at now; undefined where none is left. */
function textsAt(
  written: readonly (string | null)[] | undefined,
  placesOf: (bar: number) => readonly number[],
): readonly (string | null)[] | undefined {
  const moved: (string | null)[] = [];
  written?.forEach((text, bar) => {
    if (text === null) return;
    for (const to of placesOf(bar)) {
      while (moved.length < to) moved.push(null);
      moved[to] = text;
    }
  });
  return moved.length > 0 ? moved : undefined;
}

/**
 * What stands at bars after a change of where they are, without repeats. What stands at no bar any more is left out; a
 * fill begins in the last of its bars.
 * @param placesOf the bars that a bar is now: none, one or several
 */
export function saidAt<E extends Expression & Repetition>(
  exercise: E,
  placesOf: (bar: number) => readonly number[],
): Omit<E, keyof Repetition> {
  const { dynamics, above, below, fill, repeats: _, barRepeats: __, ...rest } = exercise;
  const signs = dynamics
    ?.flatMap((sign) => placesOf(sign.bar).map((bar) => ({ ...sign, bar })))
    .toSorted((a, b) => a.bar - b.bar || a.beat - b.beat);
  const [over, under] = [textsAt(above, placesOf), textsAt(below, placesOf)];
  const bar = fill ? placesOf(fill.bar).at(-1) : undefined;
  return {
    ...rest,
    ...(signs && signs.length > 0 ? { dynamics: signs } : {}),
    ...(over ? { above: over } : {}),
    ...(under ? { below: under } : {}),
    ...(fill && bar !== undefined ? { fill: { ...fill, bar } } : {}),
  } as Omit<E, keyof Repetition>;
}

/** What all voices play in a bar, as one text. */
function barText(parts: readonly ExercisePart[], bar: number | undefined): string {
  const cells = parts.map(({ pattern }) => pattern.bars[bar ?? -1]?.map((each) => each.text).join(' '));
  return cells.join('; ');
}

/**
 * Whether bars may stand as a repeat sign: whenever they are played, what was played before them is the same.
 * @param from the first of them; `to` is behind the last
 */
export function isPlayedAgain(
  parts: readonly ExercisePart[],
  repetition: Repetition,
  { from, to }: { readonly from: number; readonly to: number },
): boolean {
  const order = playedBars(parts[0]?.pattern.bars.length ?? 0, repetition);
  return [from, to - 1].every((bar) =>
    order.every(
      (each, index) => each !== bar || barText(parts, order[index - (to - from)]) === barText(parts, bar),
    ),
  );
}

/**
 * The exercise without what does not fit its bars any more, however they were changed: what names bars that it does not
 * have, and repeat signs for bars that are others by now, which are written out.
 */
export function withinItsBars<E extends Pick<Exercise, 'parts'> & Expression & Repetition>(exercise: E): E {
  const bars = exercise.parts[0]?.pattern.bars.length ?? 0;
  const kept = exercise.repeats?.filter((each) => endOfRepeat(each) <= bars);
  const repeats = kept && kept.length > 0 ? { repeats: kept } : {};
  const signs = exercise.barRepeats?.filter(
    (each) => each.to <= bars && isPlayedAgain(exercise.parts, repeats, each),
  );
  return {
    ...saidAt(exercise, (bar) => (bar < bars ? [bar] : [])),
    ...repeats,
    ...(signs && signs.length > 0 ? { barRepeats: signs } : {}),
  } as unknown as E;
}
