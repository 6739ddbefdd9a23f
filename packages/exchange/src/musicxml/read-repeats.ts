/**
 * Repeats of bars that were read: repeat signs with or without endings, and measures that stand as a repeat sign. What
 * is not one plain repeat after another (a sign that is not closed, endings out of order) is left as it is written.
 * Source: MusicXML 4.0, elements repeat, ending, measure-repeat.
 */
import {
  type BarStretch,
  childrenOf,
  descend,
  type Repeat,
  type Repetition,
  type XmlElement,
} from '@shedbook/core';

/** What the bar lines of a measure say. */
interface Lines {
  readonly opens: boolean;
  readonly closes: number | null;
  /** Numbers of the ending that begins here, as written. */
  readonly begins: string | null;
  readonly ends: boolean;
}

function linesOf(measure: XmlElement): Lines {
  const lines = childrenOf(measure, 'barline');
  const repeats = lines.flatMap((line) => childrenOf(line, 'repeat'));
  const endings = lines.flatMap((line) => childrenOf(line, 'ending'));
  const back = repeats.find(({ attributes }) => attributes['direction'] === 'backward');
  const begin = endings.find(({ attributes }) => attributes['type'] === 'start');
  return {
    opens: repeats.some(({ attributes }) => attributes['direction'] === 'forward'),
    closes: back ? Number(back.attributes['times'] ?? 2) : null,
    begins: begin?.attributes['number'] ?? null,
    ends: endings.some(({ attributes }) => ['stop', 'discontinue'].includes(attributes['type'] ?? '')),
  };
}

function timesIn(numbers: string): number {
  return numbers.split(',').filter((each) => each.trim() !== '').length;
}

/** A repeat that is being read. */
interface Open {
  readonly from: number;
  readonly to: number | null;
  readonly times: number;
  readonly endings: readonly BarStretch[];
  /** First bar of the ending that is open; null for none. */
  readonly ending: number | null;
}

function begun(from: number): Open {
  return { from, to: null, times: 0, endings: [], ending: null };
}

/** The repeat after the bar line at the end of a measure, and whether it is whole. */
function afterBar(open: Open, lines: Lines, bar: number): { readonly open: Open; readonly whole: boolean } {
  if (open.ending === null) {
    const isWhole = lines.closes !== null;
    return { open: isWhole ? { ...open, to: bar + 1, times: lines.closes ?? 2 } : open, whole: isWhole };
  }
  if (!lines.ends && lines.closes === null) return { open, whole: false };
  const endings = [...open.endings, { from: open.ending, to: bar + 1 }];
  return { open: { ...open, endings, ending: null }, whole: lines.closes === null };
}

function repeatsOf(measures: readonly XmlElement[]): readonly Repeat[] {
  const repeats: Repeat[] = [];
  let open = begun(0);
  measures.forEach((measure, bar) => {
    const lines = linesOf(measure);
    if (lines.opens) open = begun(bar);
    if (lines.begins !== null) {
      const times = open.times + timesIn(lines.begins);
      open = { ...open, to: open.to ?? bar, times, ending: bar };
    }
    const after = afterBar(open, lines, bar);
    open = after.open;
    if (!after.whole) return;
    const { from, to, times, endings } = open;
    const isPlain = to !== null && to > from && endings.length !== 1 && times >= 2 && times <= 32;
    if (isPlain) repeats.push({ from, to, times, endings });
    open = begun(bar + 1);
  });
  return repeats;
}

function barRepeatsOf(measures: readonly XmlElement[]): readonly BarStretch[] {
  const found: BarStretch[] = [];
  let size = 0;
  measures.forEach((measure, bar) => {
    for (const attributes of childrenOf(measure, 'attributes')) {
      for (const style of childrenOf(attributes, 'measure-style')) {
        const sign = descend(style, 'measure-repeat');
        if (sign) size = sign.attributes['type'] === 'start' ? Number(sign.text) : 0;
      }
    }
    const last = found.at(-1);
    const isInside = last !== undefined && bar < last.to;
    if ((size === 1 || size === 2) && !isInside && bar >= size && bar + size <= measures.length)
      found.push({ from: bar, to: bar + size });
  });
  return found;
}

/** What is repeated among the measures of an exercise. */
export function readRepetition(measures: readonly XmlElement[]): Repetition {
  const [repeats, barRepeats] = [repeatsOf(measures), barRepeatsOf(measures)];
  return {
    ...(repeats.length > 0 ? { repeats } : {}),
    ...(barRepeats.length > 0 ? { barRepeats } : {}),
  };
}
