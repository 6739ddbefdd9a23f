/**
 * Patterns: cells for one voice over one bar or more.
 *
 * Conventions: pattern text has beats separated by white space and bars by `|`; slots inside a beat stand
 * together. `x.. ..x x.x ...` is one bar of four triplet beats.
 */
import {
  type Cell,
  cell,
  findCellFault,
  isStruck,
  isSubdivision,
  MARKS,
  type Mark,
  SUBDIVISIONS,
  struckSlots,
} from './cell.ts';
import { add, type Fraction, fraction, multiply } from './fraction.ts';
import { beatLength, beatStarts, type Meter } from './meter.ts';
import type { PatternFact } from './pattern-fact.ts';
import { writableSlots } from './slot-value.ts';

/** Cells for one voice over one bar or more. */
export interface Pattern {
  /** Cells by bar, then by beat. */
  readonly bars: readonly (readonly Cell[])[];
}

/** A fault in a pattern text, with the offset of the character it is about. */
export interface PatternFault {
  /** Index of the character that it is about. */
  readonly offset: number;
  readonly found: PatternFact;
  readonly expected: PatternFact;
  readonly repair: PatternFact | null;
}

interface Token {
  readonly text: string;
  readonly offset: number;
}

function tokensOf(text: string, from: number): readonly Token[] {
  return [...text.matchAll(/\S+/g)].map((match) => ({ text: match[0], offset: from + match.index }));
}

function barsOf(text: string): readonly { readonly tokens: readonly Token[]; readonly offset: number }[] {
  let from = 0;
  return text.split('|').map((bar) => {
    const offset = from;
    from += bar.length + 1;
    return { tokens: tokensOf(bar, offset), offset };
  });
}

/** Common slips for a mark and what was meant. */
const MARK_REPAIRS: Readonly<Record<string, string>> = {
  '-': '.',
  _: '.',
  '0': '.',
  '1': 'x',
  '*': 'x',
  '(': 'g',
  '>': 'X',
  '@': 's',
  G: 'g',
};

function tokenFault(token: Token): PatternFault | null {
  const fault = findCellFault(token.text);
  if (!fault) return null;
  if (fault.kind === 'subdivision') {
    return {
      offset: token.offset,
      found: { fact: 'slots-in-beat', slots: token.text.length, text: token.text },
      expected: { fact: 'slots-a-beat', slots: SUBDIVISIONS.map(String) },
      repair: { fact: 'separate-beats' },
    };
  }
  const meant = MARK_REPAIRS[fault.found];
  return {
    offset: token.offset + fault.offset,
    found: { fact: 'character', character: fault.found },
    expected: { fact: 'one-of-marks', marks: MARKS.join(' ') },
    repair: meant ? { fact: 'write-mark', mark: meant } : null,
  };
}

/** A beat that is too finely divided for its length. */
function tooFine({ text, offset }: Token, length: Fraction | undefined): readonly PatternFault[] {
  const allowed: readonly number[] = length ? writableSlots([length]) : SUBDIVISIONS;
  if (!isSubdivision(text.length) || allowed.includes(text.length)) return [];
  const found = { fact: 'slots-in-beat', slots: text.length, text } as const;
  return [{ offset, found, expected: { fact: 'slots-a-beat', slots: allowed.map(String) }, repair: null }];
}

/**
 * Every fault of a pattern text against a meter, in order of place. Without a meter the number of beats is not
 * looked at.
 */
export function findPatternFaults(text: string, meter: Meter | null): readonly PatternFault[] {
  const faults: PatternFault[] = [];
  for (const bar of barsOf(text)) {
    for (const token of bar.tokens) {
      const fault = tokenFault(token);
      if (fault) faults.push(fault);
    }
    if (meter) faults.push(...bar.tokens.flatMap((token, beat) => tooFine(token, meter.beats[beat])));
    if (meter && bar.tokens.length !== meter.beats.length) {
      faults.push(beatCountFault(bar.tokens, bar.offset, meter));
    }
  }
  return faults.toSorted((a, b) => a.offset - b.offset);
}

function beatCountFault(tokens: readonly Token[], offset: number, meter: Meter): PatternFault {
  const wanted = meter.beats.length;
  const surplus = tokens[wanted];
  return {
    offset: surplus?.offset ?? tokens[0]?.offset ?? offset,
    found: tokens.length === 0 ? { fact: 'bar-without-beats' } : { fact: 'beats', beats: tokens.length },
    expected: { fact: 'beats-in-bar', beats: wanted, meter: meter.text },
    repair: { fact: surplus ? 'end-bar' : 'fill-bar' },
  };
}

/**
 * Reads a pattern text that has no faults.
 * @example parsePattern('x.. ..x').bars[0]?.length // 2
 * @throws RangeError on a fault: use {@link findPatternFaults} first for a person's input.
 */
export function parsePattern(text: string): Pattern {
  return { bars: barsOf(text).map((bar) => bar.tokens.map((token) => cell(token.text))) };
}

/** The canonical text of a pattern. */
export function formatPattern(pattern: Pattern): string {
  return pattern.bars.map((bar) => bar.map((beat) => beat.text).join(' ')).join(' | ');
}

/** One struck slot of a pattern. Bars, beats and slots count from 0. */
export interface PatternStroke {
  readonly bar: number;
  readonly beat: number;
  readonly slot: number;
  /** Slots in this beat's subdivision. */
  readonly slots: number;
  readonly mark: Mark;
  /** Score time from the start of the pattern, in whole notes, before any feel. */
  readonly at: Fraction;
}

/** Every struck slot of a pattern, in order of score time. */
export function patternStrokes(pattern: Pattern, meter: Meter): readonly PatternStroke[] {
  const starts = beatStarts(meter);
  return pattern.bars.flatMap((bar, barIndex) =>
    bar.flatMap((beat, beatIndex) =>
      beat.marks.flatMap((mark, slot) => {
        if (!isStruck(mark)) return [];
        const slots = beat.marks.length;
        const inBeat = multiply(beatLength(meter, beatIndex), fraction(slot, slots));
        const barStart = multiply(meter.bar, fraction(barIndex));
        const at = add(add(barStart, starts[beatIndex] ?? fraction(0)), inBeat);
        return [{ bar: barIndex, beat: beatIndex, slot, slots, mark, at }];
      }),
    ),
  );
}

/** Number of strokes in cells. */
/** How many strokes some cells have. */
export function countStrokes(cells: readonly Cell[]): number {
  return cells.reduce((sum, each) => sum + struckSlots(each).length, 0);
}

/** Which strokes of a pattern, counted from 0, lie in one of its bars (from 0): from the first up to `to`. */
export function strokesOfBar({ bars }: Pattern, bar: number): { readonly from: number; readonly to: number } {
  const from = countStrokes(bars.slice(0, bar).flat());
  return { from, to: from + countStrokes(bars[bar] ?? []) };
}
