/** Which rhythm an exercise is in: the finest division of a beat that a voice of it needs. */
import { beatLength, type ExercisePart, type Meter, reduceGrid, struckSlots } from '@shedbook/core';

/** Names of rhythms, in the order in which they are learnt. */
export const RHYTHMS = [
  'beats',
  'quarters',
  'eighths',
  'triplets',
  'sixteenths',
  'sextuplets',
  'thirty-seconds',
  'duplets',
  'quadruplets',
  'quintuplets',
  'septuplets',
] as const;

/** A rhythm. */
export type Rhythm = (typeof RHYTHMS)[number];

/** Notes of so many to a whole note. */
const PLAIN: Readonly<Record<number, Rhythm>> = {
  4: 'quarters',
  8: 'eighths',
  16: 'sixteenths',
  32: 'thirty-seconds',
};

/** Parts of a beat that no plain note is. */
const TUPLETS: Readonly<Record<number, Rhythm>> = {
  2: 'duplets',
  3: 'triplets',
  4: 'quadruplets',
  5: 'quintuplets',
  6: 'sextuplets',
  7: 'septuplets',
};

function rhythmOfBeat(meter: Meter, beat: number, slots: number): Rhythm {
  const { num, den } = beatLength(meter, beat);
  const perWhole = (den * slots) / num;
  return (slots === 1 ? null : (PLAIN[perWhole] ?? TUPLETS[slots])) ?? 'beats';
}

/** The finest rhythm of a part. */
export function rhythmOf(meter: Meter, { pattern }: ExercisePart): Rhythm {
  let [finest, slots]: [Rhythm, number] = ['beats', 1];
  for (const bar of pattern.bars) {
    bar.forEach((cell, beat) => {
      const own = reduceGrid(cell.marks.length, struckSlots(cell)).slots;
      if (own > slots) [finest, slots] = [rhythmOfBeat(meter, beat, own), own];
    });
  }
  return finest;
}
