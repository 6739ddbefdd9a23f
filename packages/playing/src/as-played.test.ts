import { type Bpm, perform, Seconds, seededRandom } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { asked, playNotes, reportOfNotes, type TrueNote } from '../../../internal/testing/played-notes.ts';
import { type AsPlayed, followTake } from './as-played.ts';
import { evenClock, movedClock, playedClock } from './clock.ts';
import { landingsOf } from './landings.ts';
import { createProgram } from './program.ts';

describe('a clock', () => {
  it('[PL2000] is at each knot where somebody was, goes evenly between and beyond, and never back', () => {
    const clock = playedClock([
      { place: 0, seconds: 1 },
      { place: 1, seconds: 3 },
      // Struck before the one that is due before it.
      { place: 1.25, seconds: 2.9 },
      { place: 2, seconds: 4 },
    ]);
    // definition: straight lines through (0, 1), (1, 3) and (2, 4)
    expect([-0.5, 0, 0.5, 1, 1.5, 2, 3].map((place) => clock.secondsAt(place))).toEqual([
      0, 1, 2, 3, 3.5, 4, 5,
    ]);
    expect([0, 1, 2, 3.5, 5].map((seconds) => clock.placeAt(seconds))).toEqual([-0.5, 0, 0.5, 1.5, 3]);
    expect(() => playedClock([{ place: 0, seconds: 1 }])).toThrow(RangeError);
  });

  it('[PL2000] is read on another at half the speed', () => {
    // definition: 120 quarters a minute: a whole note is 2 s; from 1 s on, at half the speed, 4 s
    const clock = movedClock(evenClock(0, 120), { fromSeconds: 1, speed: 0.5 });
    expect([0.5, 1, 1.5].map((place) => clock.secondsAt(place))).toEqual([0, 2, 4]);
    expect(clock.placeAt(4)).toBe(1.5);
  });
});

/** The form of the asked exercise at the tempo at which it was played. */
function formAt(bpm: Bpm) {
  const { lesson, exercise, form } = asked;
  const request = { exercise, form, bpm, layers: lesson.layers.length };
  return {
    program: createProgram(lesson, request),
    performance: perform(lesson, request),
    meter: lesson.meter,
  };
}

function follow(notes: readonly TrueNote[]): AsPlayed {
  const report = reportOfNotes(notes);
  return followTake(formAt(report.alignment.bpm), report);
}

/** How far each landing of the ball is from the nearest stroke of the snare or the ride, in ms. */
function errorsOf({ program, clock }: AsPlayed, notes: readonly TrueNote[]): readonly number[] {
  const own = notes.filter(({ voice }) => voice === 'snare' || voice === 'ride');
  return landingsOf(program).map(({ place }) => {
    const at = clock.secondsAt(place);
    return 1000 * Math.min(...own.map(({ timeSeconds }) => Math.abs(timeSeconds - at)));
  });
}

/** Strokes of hands: a tempo that rises by a tenth over the form, and each some ms before or after. */
function hands() {
  const random = seededRandom('hands');
  return ({ timeSeconds, ...note }: TrueNote): TrueNote => {
    const drifted = timeSeconds - (0.1 * timeSeconds ** 2) / (2 * 20);
    return { ...note, timeSeconds: Seconds(drifted + (random.next() - 0.5) * 0.02) };
  };
}

describe('a take that is followed', () => {
  it('[PL2001] has the ball down on each stroke when it was struck, through drift and scatter', () => {
    const notes = playNotes(1, 100, hands());
    const played = follow(notes);
    expect(played.formBars).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
    // definition: every landing of the exercise falls on a stroke of snare or ride, at its own time
    const errors = errorsOf(played, notes);
    expect(errors.length).toBe(8 * (4 + 3));
    expect(Math.max(...errors)).toBeLessThan(1e-6);
    // definition: strokes keep the times at which they were struck
    const snare = played.strokes.filter(({ voice }) => voice === 'snare').map((each) => each.timeSeconds);
    const truth = notes.filter(({ voice }) => voice === 'snare').map((each) => each.timeSeconds);
    expect(snare).toEqual(truth.map((time) => expect.closeTo(time, 9)));
  });

  it('[PL2001] goes on evenly where a stroke was left out', () => {
    const left = hands();
    const notes = playNotes(1, 100, left);
    const isOut = ({ written }: TrueNote) => written.bar === 4 && written.beat === 3;
    const played = follow(notes.filter((note) => !isOut(note)));
    const place = 3 + 2 / 4;
    const truth = notes.find((note) => isOut(note) && note.voice === 'ride' && note.written.slot === 1);
    // The scatter of three strokes of 10 ms each.
    expect(Math.abs(played.clock.secondsAt(place) - (truth?.timeSeconds ?? 0))).toBeLessThan(0.03);
  });

  it('[PL2001] keeps to the bars that were played where one comes again and others are left out', () => {
    const all = playNotes(1, 100);
    const bar = (60 / 100) * 4;
    const order = [1, 2, 3, 4, 4, 5, 8];
    const notes = order.flatMap((from, index) =>
      all
        .filter(({ written }) => written.bar === from)
        .map((note) => ({ ...note, timeSeconds: Seconds(note.timeSeconds + (index + 1 - from) * bar) })),
    );
    const played = follow(notes);
    // The exercise has one bar: which of its bars comes again cannot be told, only that there are seven.
    expect(played.formBars).toHaveLength(order.length);
    expect(played.program.bars.map((each) => each.bar)).toEqual([1, 2, 3, 4, 5, 6, 7]);
    expect(Math.max(...errorsOf(played, notes))).toBeLessThan(1);
  });
});
