import { Bpm, parseLesson } from '@shedbook/core';
import { createProgram, loopOneBar, nextLoop, type Program } from '@shedbook/playing';
import { Sequencer, type TakeOver, type TimedStroke } from '@shedbook/stand';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { firstOther, swapSides } from './sides.ts';
import { AS_WRITTEN } from './sound-choice.ts';

const RATE = 44_100;
/** Samples of a bar of 4/4 at 120. definition: four quarters of half a second */
const BAR = 2 * RATE;
const BLOCK = 128;

const { lesson } = parseLesson(
  `title: Two bars
feel: triplet
groove:
  ride: x x.x x x.x
  hihat-foot: . x . x
  bass: x x x x
exercises:
  - "x.. ..x x.x ... | ..x ... x.. xxx"
`,
  'lesson',
);
if (!lesson) throw new Error('the lesson under test has problems');
const LESSON = lesson;

function program(form = 'loop', layers = 9): Program {
  const found = LESSON.forms.find((each) => each.name === form);
  if (!found) throw new Error(form);
  return createProgram(LESSON, { exercise: 1, form: found, layers, bpm: Bpm(120) });
}

const SETTINGS = { bpm: Bpm(120), click: false, mute: [], trimDb: {} } as const;

interface Change {
  readonly at: number;
  readonly program: Program;
  readonly when: TakeOver;
}

/** Reads out in blocks, changing programs on the way; the block that each stroke came with stands beside it. */
function readOut(until: number, changes: readonly Change[], first = program()) {
  const sequencer = new Sequencer(first, SETTINGS, RATE, 0);
  const out: (TimedStroke & { readonly from: number })[] = [];
  let from = 0;
  for (let sample = BLOCK; sample <= until; sample += BLOCK) {
    for (const change of changes) {
      if (change.at >= from && change.at < sample) sequencer.replace(change.program, change.when);
    }
    out.push(...sequencer.until(sample).map((each) => ({ ...each, from })));
    from = sample;
  }
  return out;
}

const told = (each: TimedStroke) => [each.sample, each.stroke.voice];

describe('another program while it plays', () => {
  it('[ST102] takes one bar round alone from the next bar line, and goes back to the whole', () => {
    // One bar of count-in; told in the middle of the first bar, the loop begins with the second.
    const out = readOut(9 * BAR, [
      { at: 1.5 * BAR, program: loopOneBar(program(), 1), when: 'next bar' },
      { at: 5.2 * BAR, program: program(), when: 'next bar' },
    ]);
    const plain = readOut(9 * BAR, []);
    const bars = (strokes: readonly TimedStroke[], from: number, to: number, shift = 0) =>
      strokes
        .filter((each) => each.sample >= from * BAR && each.sample < to * BAR)
        .map((each) => [each.sample - shift * BAR, each.stroke.voice]);
    expect(bars(out, 0, 2)).toEqual(bars(plain, 0, 2));
    for (const bar of [2, 3, 4, 5]) {
      expect(bars(out, bar, bar + 1, bar - 2)).toEqual(bars(plain, 2, 3));
    }
    expect(bars(out, 6, 9, 5)).toEqual(bars(plain, 1, 4));
    expect(loopOneBar(program(), 1).bars.map((each) => each.patternBar)).toEqual([1]);
  });

  it('[ST102] goes through the bars by one key, and back to the whole', () => {
    expect([nextLoop(null, 2), nextLoop(0, 2), nextLoop(1, 2)]).toEqual([0, 1, null]);
    expect(nextLoop(null, 1)).toBeNull();
  });

  it('[ST20] never gives a stroke out after its time, nor twice at once, whatever program takes over', () => {
    const programs = [
      program(),
      program('time'),
      program('loop', 1),
      loopOneBar(program(), 0),
      loopOneBar(program(), 1),
    ];
    const change = fc.record({
      at: fc.integer({ min: 0, max: 12 * BAR }),
      program: fc.constantFrom(...programs),
      when: fc.constantFrom<TakeOver>('now', 'next bar', 'next time'),
    });
    const property = fc.property(fc.array(change, { maxLength: 8 }), (changes) => {
      const out = readOut(14 * BAR, changes);
      expect(out.filter((each) => each.sample < each.from)).toEqual([]);
      const keys = out.map((each) => told(each).join(' '));
      expect(new Set(keys).size).toBe(keys.length);
      // The ride of this groove is the same in every program, so it must never stop.
      const ride = out.filter((each) => each.stroke.voice === 'ride').map((each) => each.sample);
      const longest = Math.max(...ride.slice(1).map((sample, index) => sample - (ride[index] ?? 0)));
      // definition: its longest stroke lasts a quarter, half a second at 120
      expect(longest).toBeLessThanOrEqual(RATE / 2 + 1);
    });
    fc.assert(property, { seed: 11, numRuns: 60 });
  });

  it('[ST101] changes from one set of layers to the other without a gap in what both have', () => {
    const changes = [2.3, 3.1, 4.7].map((bar, index) => ({
      at: Math.round(bar * BAR),
      program: index % 2 === 0 ? program('loop', 1) : program(),
      when: 'now' as const,
    }));
    const out = readOut(6 * BAR, changes);
    const plain = readOut(6 * BAR, []);
    const ride = (strokes: readonly TimedStroke[]) =>
      strokes.filter((each) => each.stroke.voice === 'ride').map((each) => each.sample);
    expect(ride(out)).toEqual(ride(plain));
    const bass = out.filter((each) => each.stroke.voice === 'bass').map((each) => each.sample / BAR);
    // definition: one layer is the ride alone; the bass drum sounds only on side A
    expect(bass.some((bar) => bar > 2.31 && bar < 3.1)).toBe(false);
    expect(bass.some((bar) => bar > 3.2 && bar < 4.6)).toBe(true);
  });

  it('[ST101] keeps what was set on each side', () => {
    const choice = { ...AS_WRITTEN, exercise: 1, bpm: { value: 96, of: 80 }, trimDb: { bass: -3 } };
    const start = { choice, other: firstOther(choice, LESSON.layers), side: 'A' } as const;
    const b = swapSides(start);
    expect([b.side, b.choice.upTo, b.choice.bpm?.value]).toEqual(['B', 'bass', 96]);
    const set = { ...b, choice: { ...b.choice, bpm: { value: 104, of: 80 }, trimDb: { bass: 0 } } };
    const back = swapSides(set);
    expect(back.choice).toEqual({ ...choice, bpm: { value: 104, of: 80 } });
    expect(swapSides(back).choice.trimDb).toEqual({ bass: 0 });
  });
});
