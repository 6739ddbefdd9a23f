/**
 * Repeats of an exercise: bars that are played several times, with what ends each time, and bars that are written as a
 * sign since they are those before them.
 *
 * Conventions: bars count from 0 in the program and from 1 for people; a stretch ends before its `to`. The last ending
 * belongs to the last time; where there are fewer endings than times, the first one belongs to all that are left.
 * Source: MusicXML 4.0, elements repeat, ending and measure-repeat; common practice for how repeats are played.
 */

/** Bars from one up to another. */
export interface BarStretch {
  /** Index of its first bar. */
  readonly from: number;
  /** Index after its last bar. */
  readonly to: number;
}

/** Bars that are played several times. */
export interface Repeat extends BarStretch {
  /** How often, 2 or more. */
  readonly times: number;
  /** What ends each time, one after another behind the bars; empty where all times are the same, else two at least. */
  readonly endings: readonly BarStretch[];
}

/** How the bars of an exercise are gone through and written. */
export interface Repetition {
  /** In order, none in another; left out where there are none. */
  readonly repeats?: readonly Repeat[];
  /** One or two bars each that stand as a repeat sign; left out where all bars stand as notes. */
  readonly barRepeats?: readonly BarStretch[];
}

/** Number of the ending, from 0, that a time through (from 0) takes. */
function endingAt({ times, endings }: Repeat, time: number): number {
  return Math.max(0, time - (times - endings.length));
}

function barsBetween({ from, to }: BarStretch): readonly number[] {
  return Array.from({ length: Math.max(0, to - from) }, (_, index) => from + index);
}

/** Index after the last bar of a repeat, endings and all. */
export function endOfRepeat({ to, endings }: Repeat): number {
  return endings.at(-1)?.to ?? to;
}

function barsOfRepeat(repeat: Repeat): readonly number[] {
  return Array.from({ length: repeat.times }, (_, time) => {
    const ending = repeat.endings[endingAt(repeat, time)];
    return [...barsBetween(repeat), ...(ending ? barsBetween(ending) : [])];
  }).flat();
}

/**
 * The bars of an exercise (from 0) in the order in which they are played.
 * @example playedBars(4, { repeats: [{ from: 0, to: 2, times: 2, endings: [{ from: 2, to: 3 }, { from: 3, to: 4 }] }] }) // [0, 1, 2, 0, 1, 3]
 */
export function playedBars(bars: number, { repeats = [] }: Repetition): readonly number[] {
  const played: number[] = [];
  let next = 0;
  for (const repeat of repeats) {
    played.push(...barsBetween({ from: next, to: repeat.from }), ...barsOfRepeat(repeat));
    next = endOfRepeat(repeat);
  }
  return [...played, ...barsBetween({ from: next, to: bars })];
}

/** What stands at a bar beside its notes. */
export interface BarSigns {
  /** Whether a repeat begins before it. */
  readonly opens: boolean;
  /** How often what ends with it is played in all; null where no repeat sign stands after it. */
  readonly closes: number | null;
  /** The ending that it lies in: for which times (from 1), and whether it begins and ends here; null for none. */
  readonly ending: {
    readonly times: readonly number[];
    readonly begins: boolean;
    readonly ends: boolean;
    readonly isLast: boolean;
  } | null;
  /** What stands in place of its notes: a sign of one bar, or half of a sign of two. */
  readonly sign: 'one' | 'two' | 'second of two' | null;
}

function endingSigns(repeat: Repeat, bar: number): BarSigns['ending'] {
  const index = repeat.endings.findIndex(({ from, to }) => bar >= from && bar < to);
  const ending = repeat.endings[index];
  if (!ending) return null;
  const all = Array.from({ length: repeat.times }, (_, time) => time);
  const times = all.filter((time) => endingAt(repeat, time) === index).map((time) => time + 1);
  const isLast = index === repeat.endings.length - 1;
  return { times, begins: bar === ending.from, ends: bar === ending.to - 1, isLast };
}

function closesAt(repeat: Repeat, bar: number): number | null {
  const { to, times, endings } = repeat;
  if (endings.length === 0) return bar === to - 1 ? times : null;
  const ending = endingSigns(repeat, bar);
  return ending?.ends && !ending.isLast ? ending.times.length + 1 : null;
}

function signAt(barRepeats: readonly BarStretch[], bar: number): BarSigns['sign'] {
  const found = barRepeats.find(({ from, to }) => bar >= from && bar < to);
  if (!found) return null;
  if (found.to - found.from === 1) return 'one';
  return bar === found.from ? 'two' : 'second of two';
}

/** What stands at a bar (from 0) of an exercise. */
export function barSigns({ repeats = [], barRepeats = [] }: Repetition, bar: number): BarSigns {
  const repeat = repeats.find((each) => bar >= each.from && bar < endOfRepeat(each));
  return {
    opens: repeat?.from === bar,
    closes: repeat ? closesAt(repeat, bar) : null,
    ending: repeat ? endingSigns(repeat, bar) : null,
    sign: signAt(barRepeats, bar),
  };
}

/** Bars that stand as a repeat sign. */
export interface SignedBars {
  /** The first of them, from 0. */
  readonly first: number;
  readonly size: 1 | 2;
}

/**
 * The repeat sign that a bar (from 0) lies in; null where its notes stand, as they do where the groove is another one
 * than in the bars that the sign repeats.
 * @param bars those of the exercise, each with all that is printed in it
 */
export function signedBars(repetition: Repetition, bars: readonly object[], bar: number): SignedBars | null {
  const { sign } = barSigns(repetition, bar);
  if (sign === null) return null;
  const first = sign === 'second of two' ? bar - 1 : bar;
  const size = sign === 'one' ? 1 : 2;
  const written = (from: number) => JSON.stringify(bars.slice(from, from + size));
  const isThere = first >= size && first + size <= bars.length;
  return isThere && written(first) === written(first - size) ? { first, size } : null;
}

/** Bars as people write them: `3`, or `1-4`. */
export function formatStretch({ from, to }: BarStretch): string {
  return to - from === 1 ? `${from + 1}` : `${from + 1}-${to}`;
}

/** Bars as a lesson file has them: a number where it is one bar. */
function stretchToData(stretch: BarStretch): string | number {
  return stretch.to - stretch.from === 1 ? stretch.from + 1 : formatStretch(stretch);
}

function repeatToData(repeat: Repeat): unknown {
  const { times, endings } = repeat;
  const bars = stretchToData(repeat);
  if (times === 2 && endings.length === 0) return bars;
  const isPlain = times === Math.max(2, endings.length);
  return {
    bars,
    ...(isPlain ? {} : { times }),
    ...(endings.length === 0 ? {} : { endings: endings.map(stretchToData) }),
  };
}

function oneOrMany(values: readonly unknown[]): unknown {
  return values.length === 1 ? values[0] : values;
}

/** The keys of it, as far as anything is repeated. */
export function repetitionToData({ repeats, barRepeats }: Repetition): Readonly<Record<string, unknown>> {
  return {
    ...(repeats ? { repeats: oneOrMany(repeats.map(repeatToData)) } : {}),
    ...(barRepeats ? { barRepeats: oneOrMany(barRepeats.map(stretchToData)) } : {}),
  };
}

/** What of it makes another exercise of the same patterns, as one text; empty where nothing does. */
export function repetitionName({ repeats }: Repetition): string {
  if (!repeats) return '';
  const told = repeats.map(({ times, endings, ...bars }) => {
    const ends = endings.map((each) => ` (${formatStretch(each)})`).join('');
    return `${formatStretch(bars)}${ends} x${times}`;
  });
  return ` repeats ${told.join(', ')}`;
}
