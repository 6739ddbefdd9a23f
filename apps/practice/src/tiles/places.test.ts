import { Bpm, parseLesson } from '@shedbook/core';
import type { PackBar } from '@shedbook/pack';
import {
  countsOf,
  createProgram,
  flightAt,
  flightHeight,
  landingsOf,
  shownBar,
  xAt,
} from '@shedbook/playing';
import { countUnder, loadPractice } from '@shedbook/words';
import { describe, expect, it } from 'vitest';
import { formOf, TRADE } from '../session/choice.ts';

const { words } = await loadPractice('en');

const { lesson: read } = parseLesson(
  `title: Places
feel: 1.7:1
exercises:
  - x.. ..x x.x ...
  - x... x... x... x... | ... ..x ..x ...
`,
  'lesson',
);
if (!read) throw new Error('the lesson has problems');
const LESSON = read;

/** A bar of 120 mm: a beat takes 30 mm, its slots lie evenly in it. */
function barOf(slots: readonly number[], struck: readonly string[]): PackBar {
  return {
    ...{ bar: 1, tile: 'tiles/1.svg', widthMm: 120, heightMm: 10, staffTopMm: 5, staffBottomMm: 5 },
    description: '',
    slots: slots.flatMap((of, beat) =>
      Array.from({ length: of }, (_, slot) => ({
        beat: beat + 1,
        slot: slot + 1,
        slots: of,
        voice: 'snare' as const,
        xMm: 5 + 30 * beat + (30 * slot) / of,
        yMm: 5,
        struck: struck.includes(`${beat + 1}.${slot + 1}`),
      })),
    ),
  };
}

describe('places on a tile', () => {
  it('[ST53] comes down on the slot of every stroke and count, at its moment', () => {
    const bar = barOf([3, 3, 3, 3], ['1.1', '2.3', '3.1', '3.3']);
    const program = createProgram(LESSON, {
      ...{ exercise: 1, form: formOf(LESSON, 'loop'), layers: 9, bpm: Bpm(120) },
    });
    const landings = landingsOf(program).filter((landing) => landing.bar === 1);
    // definition: slots of triplets of a beat of 30 mm lie 10 mm apart; the first beat begins at 5 mm
    expect(landings.map((landing) => xAt(bar, landing.beat, landing.phase))).toEqual([
      5,
      35,
      expect.closeTo(55, 9),
      65,
      expect.closeTo(85, 9),
      95,
    ]);
    // definition: a last triplet at 1.7:1 sounds at 1.7/2.7 of its beat, a quarter long
    const late = 0.25 + 0.25 * (1.7 / 2.7);
    const flight = flightAt(landings, late, program.end);
    expect([flight?.from.beat, flight?.from.phase, flight?.share]).toEqual([
      1,
      expect.closeTo(2 / 3, 9),
      expect.closeTo(0, 6),
    ]);
  });

  it('[ST53] stands between slots where a bar has none at a moment', () => {
    // definition: halfway between the first and the second of two slots 15 mm apart
    expect(xAt(barOf([2, 2, 2, 2], []), 1, 0.25)).toBe(42.5);
    // definition: past the last slot of the bar, halfway to its end at 120 mm
    expect(xAt(barOf([1, 1, 1, 1], []), 3, 0.5)).toBe(107.5);
  });

  it('[ST53] counts the finest slots of a beat, bold where something is struck', () => {
    const counts = countsOf(barOf([3, 1, 2, 4], ['1.3', '2.1']).slots, (...place) =>
      countUnder(words.counts, ...place),
    );
    // common practice: triplets "1 trip let", eighths "3 &", sixteenths "4 e & a"
    expect(counts.map((count) => count.text)).toEqual('1 trip let 2 3 & 4 e & a'.split(' '));
    expect(counts.filter((count) => count.struck).map((count) => count.text)).toEqual(['let', '2']);
  });

  it('[ST53] shows answers over the exercise that is answered, and time alone over the groove', () => {
    const sizes = { exercise: 2, groove: 1 };
    const where = (name: string, exercise = 2) => {
      const program = createProgram(LESSON, {
        ...{ exercise, form: formOf(LESSON, name), layers: 9, bpm: Bpm(120) },
      });
      return program.bars.map((bar) => {
        const { on, index } = shownBar(program, bar, sizes);
        return `${on} ${index}`;
      });
    };
    const exercise = ['exercise 0', 'exercise 1', 'exercise 0', 'exercise 1'];
    // definition: four bars of an exercise of two, then four of rest
    expect(where(TRADE)).toEqual([...exercise, ...exercise]);
    // definition: the built-in form goes twice through four bars of pattern and two of time
    const round = [...exercise, 'groove 0', 'groove 0'];
    expect(where('four and two')).toEqual([...round, ...round]);
  });
});

it('[ST53] flies highest half way, as high as a quarter note is given, and no higher than it may', () => {
  const landing = (place: number) => ({ place, bar: 1, patternBar: 0, beat: 0, phase: 0 });
  const at = (share: number, whole: number) =>
    flightHeight({ from: landing(0), to: landing(whole), share }, { quarter: 10, most: 15 });
  // definition: a parabola through 0 at both landings; its top over a note four times as long is twice as high
  expect([at(0, 0.25), at(0.5, 0.25), at(1, 0.25)]).toEqual([0, 10, 0]);
  expect(at(0.5, 0.0625)).toBe(5);
  expect(at(0.5, 1)).toBe(15);
});
