/**
 * Meters and their beats.
 *
 * Conventions: lengths are fractions of a whole note, so a 12/8 bar is 3/2. The upper numeral of a compound
 * meter (6, 9, 12, … over 8 or 16) counts divisions; its beat is dotted. An additive meter such as `2+2+3/8`
 * has beats of unequal length, one for each group.
 * Source: common practice, as in any theory primer; 3/8 is read as three beats of an eighth.
 */
import { add, type Fraction, formatFraction, fraction, ZERO } from './fraction.ts';

/** A meter and the beats it has. */
export interface Meter {
  /** As written, e.g. `4/4`, `12/8`, `2+2+3/8`. */
  readonly text: string;
  /** How many units a bar has. */
  readonly upper: number;
  /** Units that make a whole note, a number such as 4 or 8. */
  readonly lower: number;
  /** Whether beats divide in three: the beat is a dotted value. */
  readonly compound: boolean;
  /** Length of each beat, in whole notes. */
  readonly beats: readonly Fraction[];
  /** Length of the bar, in whole notes. */
  readonly bar: Fraction;
}

function beatsOf(groups: readonly number[], upper: number, lower: number): readonly Fraction[] {
  if (groups.length > 1) return groups.map((size) => fraction(size, lower));
  const compound = lower >= 8 && upper > 3 && upper % 3 === 0;
  const size = compound ? 3 : 1;
  return Array.from({ length: upper / size }, () => fraction(size, lower));
}

/**
 * Reads a meter.
 * @example parseMeter('6/8')?.beats.length // 2
 * @returns the meter, or null when `text` is not one (upper 1–32, lower 1, 2, 4, 8, 16 or 32; groups of 1–4).
 */
export function parseMeter(text: string): Meter | null {
  const match = /^\s*(\d{1,2}(?:\s*\+\s*\d{1,2})*)\s*\/\s*(\d{1,2})\s*$/.exec(text);
  if (!match) return null;
  const groups = (match[1] ?? '').split('+').map(Number);
  const lower = Number(match[2]);
  const upper = groups.reduce((sum, size) => sum + size, 0);
  if (![1, 2, 4, 8, 16, 32].includes(lower) || upper < 1 || upper > 32) return null;
  if (groups.length > 1 && groups.some((size) => size < 1 || size > 4)) return null;
  const beats = beatsOf(groups, upper, lower);
  return {
    text: `${groups.join('+')}/${lower}`,
    upper,
    lower,
    compound: beats.every((beat) => beat.num === 3),
    beats,
    bar: beats.reduce(add, ZERO),
  };
}

/**
 * The meter `text`.
 * @throws RangeError when it is not a meter: use {@link parseMeter} for a person's input.
 */
export function meter(text: string): Meter {
  const parsed = parseMeter(text);
  if (!parsed) throw new RangeError(`Internal error: "${text}" is not a meter`);
  return parsed;
}

/** Start of each beat from the bar line, in whole notes. */
export function beatStarts(of: Meter): readonly Fraction[] {
  let at = ZERO;
  return of.beats.map((length) => {
    const start = at;
    at = add(at, length);
    return start;
  });
}

/** Length of beat `index` (from 0), in whole notes. @throws RangeError when the meter has no such beat. */
export function beatLength(of: Meter, index: number): Fraction {
  const length = of.beats[index];
  if (!length) throw new RangeError(`Internal error: ${of.text} has no beat ${index + 1}`);
  return length;
}

/** Whether all beats are of one length, as they are not in 2+2+3/8. */
export function isEvenMeter({ beats }: Meter): boolean {
  return beats.every(({ num, den }) => num === beats[0]?.num && den === beats[0]?.den);
}

/** How many units of the meter a beat has: of 2+2+3/8 two, two and three. */
export function unitsIn({ lower }: Meter, { num, den }: Fraction): number {
  return (num * lower) / den;
}

/**
 * The note that a tempo counts: the beat, dotted in a compound meter, or its division where beats are not of one
 * length, as in 2+2+3/8.
 * @source MusicXML 4.0, metronome-beat: a metronome mark names its note and its dots; common practice for which.
 */
export function tempoBeat(of: Meter): Fraction {
  const first = of.beats[0] ?? fraction(1, of.lower);
  return isEvenMeter(of) && (first.num === 1 || first.num === 3) ? first : fraction(1, of.lower);
}

/**
 * A tempo as people say it: whole beats of the meter a minute.
 * @param bpm quarter notes a minute
 * @example countedTempo(meter('12/8'), 90) // 60
 */
export function countedTempo(of: Meter, bpm: number): number {
  const { num, den } = tempoBeat(of);
  return Math.round((bpm * den) / (4 * num));
}

/**
 * Quarter notes a minute of a tempo in beats of the meter a minute.
 * @example quarterTempo(meter('12/8'), 60) // 90
 */
export function quarterTempo(of: Meter, counted: number): number {
  const { num, den } = tempoBeat(of);
  return (counted * 4 * num) / den;
}

/**
 * The sign of a note in running text, as tempo marks have it: a note, and a dot where it is dotted.
 * @source Unicode 16, Musical Symbols and Miscellaneous Symbols
 * @example noteSign(fraction(3, 8)) // '♩.'
 */
export function noteSign({ num, den }: Fraction): string {
  const isDotted = num === 3;
  const signs: Readonly<Record<number, string>> = { 1: '𝅝', 2: '𝅗𝅥', 4: '♩', 8: '♪', 16: '𝅘𝅥𝅯', 32: '𝅘𝅥𝅰' };
  return `${signs[isDotted ? den / 2 : den] ?? '♩'}${isDotted ? '.' : ''}`;
}

/** The name of a note value that fills one beat: `quarter`, `dotted quarter`, … or the fraction in whole notes. */
export function beatName(length: Fraction): string {
  const names: Record<number, string> = { 1: 'whole', 2: 'half', 4: 'quarter', 8: 'eighth', 16: 'sixteenth' };
  const plain = names[length.den];
  if (length.num === 1 && plain) return plain;
  const dotted = names[length.den / 2];
  if (length.num === 3 && dotted) return `dotted ${dotted}`;
  return formatFraction(length);
}
