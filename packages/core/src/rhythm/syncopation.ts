/**
 * Published measures of syncopation, each as its authors give it.
 *
 * Conventions: a rhythm is a list of 0 and 1 on an even grid, one bar, looped: the note after the last is the
 * first. Larger is more syncopated.
 * Sources: Longuet-Higgins & Lee 1984, Music Perception 1(4), as set out in Fitch & Rosenfeld 2007, Music
 * Perception 25(1); Gómez, Melvin, Rappaport & Toussaint 2005, "Mathematical measures of syncopation", BRIDGES;
 * Toussaint 2013, The Geometry of Musical Rhythm, for off-beatness and his reading of Keith 1991, From Polychords
 * to Pólya.
 */
import { add, type Fraction, fraction, greatestCommonDivisor, ZERO } from './fraction.ts';

/** Places of the strokes, from 0. */
export function onsetsOf(bits: readonly number[]): readonly number[] {
  return bits.flatMap((bit, place) => (bit === 0 ? [] : [place]));
}

/** How many strokes fall on places that have no divisor in common with the length of the cycle. */
export function offBeatness(bits: readonly number[]): number {
  return onsetsOf(bits).filter((place) => greatestCommonDivisor(place, bits.length) === 1).length;
}

/** Distance from each stroke to the next one round the cycle. */
export function intervalsOf(bits: readonly number[]): readonly number[] {
  const onsets = onsetsOf(bits);
  const first = (onsets[0] ?? 0) + bits.length;
  return onsets.map((place, i) => (onsets[i + 1] ?? first) - place);
}

/**
 * Keith's measure as Toussaint reads it: strokes that do not start on a multiple of the largest power of two that
 * their duration holds.
 */
export function keithSyncopation(bits: readonly number[]): number {
  const intervals = intervalsOf(bits);
  return onsetsOf(bits).filter((place, i) => place % 2 ** Math.floor(Math.log2(intervals[i] ?? 1)) !== 0)
    .length;
}

/** How a note that ends exactly on the second beat after it starts is counted: the sources differ. */
export type NoteEndingOnSecondBeat = 'once' | 'twice';

/** A weighted note-to-beat distance, exact. */
export interface NoteToBeatDistance {
  readonly sum: Fraction;
  /** The sum divided by the number of strokes: the published measure. */
  readonly mean: Fraction;
}

/** Weight of one note: 0 on a beat; else 1/T, doubled when it is held over the next beat and not the one after. */
function noteWeight(place: number, end: number, beat: number, ending: NoteEndingOnSecondBeat): Fraction {
  const into = place % beat;
  if (into === 0) return ZERO;
  const nextBeat = place - into + beat;
  const distance = Math.min(into, beat - into);
  const held = end > nextBeat && (end < nextBeat + beat || (end === nextBeat + beat && ending === 'twice'));
  return fraction(held ? 2 * beat : beat, distance);
}

/**
 * Weighted note-to-beat distance (WNBD), exact.
 * @param beat places in a beat
 * @param ending a note ending exactly on the second beat: `once` gives the values that the paper prints (soukous
 * 3.6); `twice` follows its wording and some programs (soukous 4.4).
 */
export function noteToBeatDistance(
  bits: readonly number[],
  beat: number,
  ending: NoteEndingOnSecondBeat = 'once',
): NoteToBeatDistance {
  const onsets = onsetsOf(bits);
  const intervals = intervalsOf(bits);
  const weights = onsets.map((place, i) => noteWeight(place, place + (intervals[i] ?? 0), beat, ending));
  const sum = weights.reduce(add, ZERO);
  return { sum, mean: onsets.length === 0 ? ZERO : fraction(sum.num, sum.den * onsets.length) };
}

interface Terminal {
  readonly struck: boolean;
  readonly weight: number;
}

/** The ends of the tree of Longuet-Higgins and Lee: notes and rests at the coarsest level that shows them. */
function terminalsOf(
  bits: readonly number[],
  divisions: readonly number[],
  weight: number,
  level: number,
): readonly Terminal[] {
  const strokes = bits.reduce((sum, bit) => sum + bit, 0);
  if (strokes === 0) return [{ struck: false, weight }];
  const division = divisions[level];
  if ((strokes === 1 && bits[0] === 1) || division === undefined) return [{ struck: true, weight }];
  const size = bits.length / division;
  return Array.from({ length: division }, (_, i) => bits.slice(i * size, (i + 1) * size)).flatMap((part, i) =>
    terminalsOf(part, divisions, i === 0 ? weight : -(level + 1), level + 1),
  );
}

function pairStrength(terminals: readonly Terminal[], rest: number): number | null {
  const { weight } = terminals[rest] as Terminal;
  for (let i = rest - 1; i >= 0; i -= 1) {
    const note = terminals[i] as Terminal;
    if (note.struck && note.weight <= weight) return weight - note.weight;
  }
  return null;
}

/**
 * Syncopation of Longuet-Higgins and Lee: over all rests, the weight of the rest less that of the nearest note
 * before it that is no stronger; weights are 0, −1, −2, … by level of the tree.
 * @param divisions how the bar is divided, level by level, e.g. `[2, 2, 2, 2]` for sixteenths in 4/4; their product
 * is the length of `bits`
 * @param before the bar heard before: nothing (as published) or the same bar, looped
 * @returns the sum, or −1 when nothing is syncopated.
 */
export function longuetHigginsLee(
  bits: readonly number[],
  divisions: readonly number[],
  before: 'nothing' | 'same bar' = 'nothing',
): number {
  const own = terminalsOf(bits, divisions, 0, 0);
  const last = before === 'same bar' ? own.findLast((terminal) => terminal.struck) : undefined;
  const terminals = last ? [last, ...own] : own;
  const strengths = terminals.flatMap((terminal, i) => {
    const strength = terminal.struck ? null : pairStrength(terminals, i);
    return strength === null ? [] : [strength];
  });
  return strengths.length === 0 ? -1 : strengths.reduce((sum, strength) => sum + strength, 0);
}
