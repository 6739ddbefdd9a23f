/**
 * Bars to exercises: what is played again and again is one exercise; what is not goes on for up to four bars each.
 *
 * Conventions: an exercise names the comping voices, and a voice of the groove only where it departs from it.
 */
import {
  type Cell,
  cell,
  type Exercise,
  type ExercisePart,
  PLAYED_SUBDIVISIONS,
  type Voice,
} from '@shedbook/core';
import { keyOf, mostly, type Parted } from './bars.ts';

/** Most bars of an exercise. */
const LONGEST = 4;

type Bar = readonly Cell[];

interface Bars {
  readonly voice: Voice;
  readonly bars: readonly Bar[];
}

/** A bar with every beat in the one subdivision that all bars of its voice can be written in; as it is where there is none. */
function inOneSubdivision(bar: Bar, all: readonly Bar[]): Bar {
  const used = all.flat().map((each) => each.marks.length);
  const slots = PLAYED_SUBDIVISIONS.find((each) => used.every((own) => each % own === 0));
  if (slots === undefined) return bar;
  return bar.map(({ marks }) =>
    cell(marks.flatMap((mark) => [mark, ...'.'.repeat(slots / marks.length - 1)]).join('')),
  );
}

/** Bars that are one exercise: from one on, and how often it is played. */
interface Stretch {
  readonly from: number;
  readonly bars: number;
  readonly times: number;
}

/** How many bars come again at once from here, or null where none do. */
function roundAt(keys: readonly string[], from: number): Stretch | null {
  for (let bars = 1; bars <= LONGEST && from + 2 * bars <= keys.length; bars += 1)
    if (keys.slice(from, from + bars).every((key, i) => key === keys[from + bars + i]))
      return { from, bars, times: 1 };
  return null;
}

/** The stretches of some bars; bars in which nobody plays part them and belong to none. */
function stretchesOf(keys: readonly string[], isSilent: (bar: number) => boolean): readonly Stretch[] {
  const found: Stretch[] = [];
  let alone: number | null = null;
  const flush = (to: number) => {
    for (let from = alone ?? to; from < to; from += LONGEST)
      found.push({ from, bars: Math.min(LONGEST, to - from), times: 1 });
    alone = null;
  };
  for (let at = 0; at < keys.length; ) {
    if (isSilent(at)) {
      flush(at);
      at += 1;
      continue;
    }
    const round = roundAt(keys, at);
    if (!round) {
      alone ??= at;
      at += 1;
      continue;
    }
    flush(at);
    const { bars } = round;
    const textAt = (from: number) => keys.slice(from, from + bars).join('|');
    let times = 1;
    // Bars that are all groove have an empty text, as what lies after the last bar has.
    while (at + (times + 1) * bars <= keys.length && textAt(at + times * bars) === textAt(at)) times += 1;
    found.push({ ...round, times });
    at += times * bars;
  }
  flush(keys.length);
  return found;
}

/** The exercises of some bars, each once, in the order in which they are first played. */
export function exercisesOf(
  parts: readonly ExercisePart[],
  { groove, comping }: Parted,
): readonly Exercise[] {
  const usual = new Map(groove.map(({ voice, key }) => [voice, key]));
  const bars = parts.map(({ voice, pattern }): Bars => ({ voice, bars: pattern.bars }));
  const departs = ({ voice, bars: own }: Bars, bar: number) =>
    usual.has(voice) && keyOf(own[bar]!) !== usual.get(voice);
  const count = bars[0]?.bars.length ?? 0;
  const keys = Array.from({ length: count }, (_, bar) =>
    bars
      .filter((one) => comping.includes(one.voice) || departs(one, bar))
      .map((one) => `${one.voice}:${keyOf(one.bars[bar]!)}`)
      .join(';'),
  );
  const ordered = [
    ...comping.flatMap((voice) => bars.filter((one) => one.voice === voice)),
    ...bars.filter(({ voice }) => usual.has(voice)),
  ];
  const seen = new Set<string>();
  const isSilent = (bar: number) => bars.every((one) => keyOf(one.bars[bar]!).trim() === '');
  return stretchesOf(keys, isSilent).flatMap(({ from, bars: length, times }): Exercise[] => {
    const key = keys.slice(from, from + length).join('|');
    const indices = Array.from({ length }, (_, i) => from + i);
    const own = ordered.filter(
      (one, i) =>
        (comping.includes(one.voice) &&
          (i === 0 || indices.some((bar) => keyOf(one.bars[bar]!).trim() !== ''))) ||
        indices.some((bar) => departs(one, bar)),
    );
    if (seen.has(key) || own.length === 0) return [];
    seen.add(key);
    const exerciseParts = own.map(({ voice, bars: each }) => ({
      voice,
      pattern: {
        bars: indices.map((bar) => {
          const again = Array.from({ length: times }, (_, time) => each[bar + time * length]!);
          return inOneSubdivision(mostly(again), each);
        }),
      },
    }));
    return [{ number: seen.size, name: null, parts: exerciseParts, sticking: null, notes: null }];
  });
}
