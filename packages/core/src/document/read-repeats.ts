/** Reading which bars of an exercise are repeated, and which stand as a repeat sign. */
import type { ExercisePart } from '../lesson/lesson.ts';
import { type BarStretch, endOfRepeat, playedBars, type Repeat, type Repetition } from '../lesson/repeats.ts';
import { isPlayedAgain } from '../lesson/said-at.ts';
import { quoted, valueFact } from '../lesson/value-fact.ts';
import { isOpenAtEnd } from '../rhythm/held.ts';
import type { Report } from './fault.ts';
import type { FieldPath } from './field-path.ts';
import type { RawLesson } from './schema.ts';

type RawExercise = Exclude<NonNullable<NonNullable<RawLesson['exercises']>[number]>, string>;
type RawRepeats = NonNullable<RawExercise['repeats']>;
type RawRepeat = Exclude<RawRepeats, readonly unknown[]>;
type RawStretch = string | number;

/** A value with where it stands. */
interface At<T> {
  readonly value: T;
  readonly path: FieldPath;
}

/** One value or a list of them, each with its place. */
function listed<T>(value: T | readonly T[], path: FieldPath): readonly At<T>[] {
  if (!Array.isArray(value)) return [{ value: value as T, path }];
  return (value as readonly T[]).map((each, index) => ({ value: each, path: [...path, index] }));
}

/** Bars such as `3` or `1-4` of an exercise of so many; null where they are not such. */
function readStretch({ value, path }: At<RawStretch>, bars: number, report: Report): BarStretch | null {
  const match = /^\s*(\d{1,3})\s*(?:[-–]\s*(\d{1,3}))?\s*$/.exec(String(value));
  const from = Number(match?.[1]) - 1;
  const to = match?.[2] === undefined ? from + 1 : Number(match[2]);
  if (!match || from < 0 || to <= from) {
    report({ code: 'bars', path, found: valueFact(value), expected: { fact: 'some-bars' } });
    return null;
  }
  if (to > bars) {
    const expected = { fact: 'bar-up-to', most: bars } as const;
    report({ code: 'no-such-bar', path, found: { fact: 'bar-found', bar: to }, expected });
    return null;
  }
  return { from, to };
}

/** Whether every ending begins where what is before it ends; the first that does not is reported. */
function follow(
  { to }: BarStretch,
  endings: readonly BarStretch[],
  path: FieldPath,
  report: Report,
): boolean {
  let next = to;
  return endings.every(({ from, to: end }, index) => {
    const expected = { fact: 'ending-at-bar', bar: next + 1 } as const;
    const found = { fact: 'bar-found', bar: from + 1 } as const;
    if (from !== next) report({ code: 'ending-bars', path: [...path, index], found, expected });
    const isRight = from === next;
    next = end;
    return isRight;
  });
}

function readEndings(
  raw: Exclude<RawRepeat, RawStretch>,
  body: BarStretch,
  { path, bars, report }: { readonly path: FieldPath; readonly bars: number; readonly report: Report },
): readonly BarStretch[] | null {
  const given = raw.endings ?? [];
  const at = [...path, 'endings'];
  const endings = given.flatMap(
    (value, index) => readStretch({ value, path: [...at, index] }, bars, report) ?? [],
  );
  if (endings.length < given.length || !follow(body, endings, at, report)) return null;
  const times = raw.times ?? Math.max(2, endings.length);
  if (given.length !== 1 && endings.length <= times) return endings;
  const expected = { fact: 'endings-up-to', most: times } as const;
  report({
    code: 'endings',
    path: at,
    found: { fact: 'endings-found', endings: endings.length },
    expected,
  });
  return null;
}

function readRepeat({ value, path }: At<RawRepeat>, bars: number, report: Report): Repeat | null {
  if (typeof value !== 'object') {
    const body = readStretch({ value, path }, bars, report);
    return body && { ...body, times: 2, endings: [] };
  }
  const body = readStretch({ value: value.bars, path: [...path, 'bars'] }, bars, report);
  const endings = body && readEndings(value, body, { path, bars, report });
  return body && endings && { ...body, times: value.times ?? Math.max(2, endings.length), endings };
}

/** Repeats in order; one that begins inside another is reported. */
function readRepeats(raw: RawRepeats, bars: number, path: FieldPath, report: Report): readonly Repeat[] {
  let next = 0;
  return listed<RawRepeat>(raw, path).flatMap((each): Repeat[] => {
    const read = readRepeat(each, bars, report);
    if (!read) return [];
    if (read.from < next) {
      const expected = { fact: 'repeat-after-bar', bar: next } as const;
      const found = { fact: 'bar-found', bar: read.from + 1 } as const;
      report({ code: 'repeats', path: each.path, found, expected });
      return [];
    }
    next = endOfRepeat(read);
    return [read];
  });
}

function readBarRepeats(
  raw: NonNullable<RawExercise['barRepeats']>,
  parts: readonly ExercisePart[],
  {
    path,
    repeats,
    report,
  }: { readonly path: FieldPath; readonly repeats: readonly Repeat[]; readonly report: Report },
): readonly BarStretch[] {
  const bars = parts[0]?.pattern.bars.length ?? 0;
  let next = 0;
  return listed<RawStretch>(raw, path).flatMap((each): BarStretch[] => {
    const read = readStretch(each, bars, report);
    if (!read) return [];
    const size = read.to - read.from;
    if (size > 2 || read.from < next) {
      const found = quoted(String(each.value));
      report({ code: 'bar-repeats', path: each.path, found, expected: { fact: 'one-or-two-bars' } });
      return [];
    }
    next = read.to;
    const isRight = isPlayedAgain(parts, { repeats }, read);
    const expected = { fact: 'same-as-bars-before', bars: size } as const;
    const found = { fact: 'another-bar', bar: read.from + 1 } as const;
    if (!isRight) report({ code: 'bar-repeats', path: each.path, found, expected });
    return isRight ? [read] : [];
  });
}

/** The first bar (from 0) that something is held into, and not from every bar that is played before it; else undefined. */
function cutBar(parts: readonly ExercisePart[], repeats: readonly Repeat[]): number | undefined {
  const order = playedBars(parts[0]?.pattern.bars.length ?? 0, { repeats });
  return order.find((bar, index) =>
    parts.some(({ pattern: { bars } }) => {
      const isHeldInto = index > 0 && bars[bar]?.[0]?.marks[0] === '~';
      return isHeldInto && !isOpenAtEnd(bars[order[index - 1] as number]);
    }),
  );
}

/** Everything about an exercise that is repeated. */
export function readRepetition(
  raw: RawExercise,
  parts: readonly ExercisePart[],
  path: FieldPath,
  report: Report,
): Repetition {
  const bars = parts[0]?.pattern.bars.length ?? 0;
  const repeats =
    raw.repeats === undefined ? [] : readRepeats(raw.repeats, bars, [...path, 'repeats'], report);
  const cut = repeats.length > 0 ? cutBar(parts, repeats) : undefined;
  if (cut !== undefined) {
    const found = { fact: 'bar-found', bar: cut + 1 } as const;
    report({ code: 'held', path: [...path, 'repeats'], found, expected: { fact: 'held-each-time' } });
  }
  const at = { path: [...path, 'barRepeats'], repeats, report };
  const barRepeats = raw.barRepeats === undefined ? [] : readBarRepeats(raw.barRepeats, parts, at);
  return {
    ...(repeats.length > 0 ? { repeats } : {}),
    ...(barRepeats.length > 0 ? { barRepeats } : {}),
  };
}
