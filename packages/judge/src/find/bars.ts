/**
 * Which bars of what was asked were gone through: bars that never came, bars that were left out now and then, and bars
 * that came in another order.
 *
 * Conventions: bars of the form from 1. Bars with the same strokes are one bar, whichever of them it was. Before the
 * first bar and behind the last one nobody knows what the recording left out, only what it never has.
 */
import { groupBy } from '@shedbook/core';
import type { LoopTask } from '../loop/task.ts';
import type { RoundStrokes } from '../take/hearing.ts';
import { type Finding, NOT_YET } from '../verdict/finding.ts';
import type { Known } from './known.ts';

/** A bar taken for another one with the same strokes costs as good as nothing. */
const OTHER_NAME = 0.01;
/** From this share of the steps from bar to bar on, an order is another one, and no slip. */
const ANOTHER_ORDER = 0.5;

/** What each bar of a task asks, as a text that is the same for bars with the same strokes. */
export function contentsOf({ strokes, bars }: LoopTask): readonly string[] {
  const byBar = groupBy(strokes, ({ written }) => written.bar);
  return Array.from({ length: bars }, (_, index) =>
    (byBar.get(index + 1) ?? [])
      .map(({ voice, written, slots }) => `${voice} ${written.beat}.${written.slot}/${slots}`)
      .toSorted()
      .join(),
  );
}

/** How many bars of a form lie between two that follow each other in a take. */
function between(from: number, to: number, count: number): number {
  return (to - from - 1 + count) % count;
}

interface Way {
  readonly cost: number;
  readonly bars: readonly number[];
}

/** Bars of a form that were gone through, each taken for that one of its likes for which fewest bars were left out. */
function likeliest(played: readonly (readonly number[])[], count: number): Way | null {
  let ways: ReadonlyMap<number, Way> = new Map();
  for (const [index, likes] of played.entries()) {
    const next = new Map<number, Way>();
    for (const [rank, bar] of likes.entries()) {
      const own = rank === 0 ? 0 : OTHER_NAME;
      if (index === 0) next.set(bar, { cost: own, bars: [bar] });
      for (const [from, way] of ways) {
        const cost = way.cost + own + between(from, bar, count);
        if (cost < (next.get(bar)?.cost ?? Number.POSITIVE_INFINITY))
          next.set(bar, { cost, bars: [...way.bars, bar] });
      }
    }
    ways = next;
  }
  return [...ways.values()].toSorted((a, b) => a.cost - b.cost)[0] ?? null;
}

/** The bars of a form with the same strokes as each that was gone through, that one itself first. */
function likesOf(contents: readonly string[], bars: readonly number[]): readonly (readonly number[])[] {
  return bars.map((bar) => {
    const like = contents.flatMap((content, i) =>
      content === contents[bar - 1] && i + 1 !== bar ? [i + 1] : [],
    );
    return [bar, ...like];
  });
}

/** Which bars were left out on the way through a take. */
export interface WayThrough {
  /** Bars as they came. */
  readonly bars: readonly number[];
  /** The first bar of the kind of each. */
  readonly order: readonly number[];
  /** Bars that were passed over, the first of their kind, as often as they were. */
  readonly skipped: readonly number[];
  /** Steps from bar to bar that passed some over. */
  readonly leaps: number;
  /** The first bar of each kind that never came. */
  readonly never: readonly number[];
  /** How many kinds of bars are asked. */
  readonly kinds: number;
}

/** What makes two bars of a form the same to whoever reads them: the bar that is written, or the same strokes. */
function kindsOf(task: LoopTask): readonly string[] {
  const isLong = task.patternBars.some((bar) => (bar ?? 0) > 0);
  const contents = contentsOf(task);
  return contents.map((content, index) => {
    const written = isLong ? task.patternBars[index] : null;
    return written === null || written === undefined ? content : `bar ${written}`;
  });
}

/** The way that bars of a take went through what was asked. */
export function wayThrough(played: readonly number[], task: LoopTask): WayThrough {
  const kinds = kindsOf(task);
  const way = likeliest(likesOf(contentsOf(task), played), task.bars);
  const bars = way?.bars ?? played;
  const firstOf = (bar: number) => kinds.indexOf(kinds[bar - 1] ?? '') + 1;
  // whoever only listens in a bar leaves nothing out there
  const isAsked = (bar: number) => task.plays[bar - 1] !== 'rest';
  const steps = bars.slice(1).map((to, index) => {
    const from = bars[index] as number;
    const passed = Array.from(
      { length: between(from, to, task.bars) },
      (_, i) => ((from + i) % task.bars) + 1,
    );
    return passed.filter(isAsked);
  });
  // bars with the same strokes stand for each other, whatever they are called
  const contents = contentsOf(task);
  const there = new Set(bars.flatMap((bar) => kinds.filter((_, i) => contents[i] === contents[bar - 1])));
  const absent = [...new Set(kinds)].filter((kind) => !there.has(kind));
  return {
    bars,
    order: bars.map(firstOf),
    skipped: steps.flat().map(firstOf),
    leaps: steps.filter(({ length }) => length > 0).length,
    never: absent.map((kind) => kinds.indexOf(kind) + 1).filter(isAsked),
    kinds: new Set(kinds).size,
  };
}

const placeOf = (bar: number) => ({ bar, beat: 1, slot: 1 });

/** Other exercises of which the bars that came are every one, none left out. */
function alsoPlayed(
  bars: readonly number[],
  task: LoopTask,
  others: readonly { readonly exercise: number; readonly task: LoopTask }[],
): number | null {
  const asked = contentsOf(task);
  const found = others.find(({ task: other }) => {
    const contents = contentsOf(other);
    const likes = bars.map((bar) =>
      contents.flatMap((content, i) => (content === asked[bar - 1] ? [i + 1] : [])),
    );
    if (likes.some(({ length }) => length === 0)) return false;
    const way = likeliest(likes, other.bars);
    const through = wayThrough(way?.bars ?? [], other);
    return through.never.length === 0 && through.leaps === 0;
  });
  return found?.exercise ?? null;
}

/** The bars as they came, up to where one comes again. */
function untilAgain(bars: readonly number[]): readonly number[] {
  const again = bars.findIndex((bar, index) => bars.indexOf(bar) < index);
  return again < 0 ? bars : bars.slice(0, again);
}

/** What is to be said of bars that were left out, or came in another order. */
export function barFindings(
  rounds: readonly Pick<RoundStrokes, 'bars'>[],
  task: LoopTask,
  { limits: { stumbleShare }, others, isAlongClick }: Pick<Known, 'limits' | 'others' | 'isAlongClick'>,
): readonly Finding[] {
  const through = wayThrough(
    rounds.flatMap(({ bars }) => bars.map(({ bar }) => bar)),
    task,
  );
  const { bars, order, skipped, leaps, never } = through;
  // a click that was stopped before the end asked for no more
  const isAsked = !isAlongClick || leaps > 0 || bars.length >= task.bars;
  if (never.length > 0 && isAsked) {
    const exercise = alsoPlayed(bars, task, others());
    return [
      {
        ...{ what: 'missing', places: never.map(placeOf), times: never.length, of: through.kinds },
        ...(exercise === null ? {} : { exercise }),
        strength: NOT_YET * 2,
      },
    ];
  }
  if (skipped.length === 0) return [];
  if (leaps > ANOTHER_ORDER * (bars.length - 1))
    return [{ what: 'other-exercise', places: untilAgain(order).map(placeOf), strength: 1 }];
  const of = bars.length + skipped.length;
  const strength = Math.max(1, (NOT_YET * skipped.length) / (of * stumbleShare));
  return [
    { what: 'missing', places: [...new Set(skipped)].map(placeOf), times: skipped.length, of, strength },
  ];
}
