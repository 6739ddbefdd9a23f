import { Bpm, type Form, perform, seededRandom } from '@shedbook/core';
import { dbToGain, rootMeanSquare } from '@shedbook/signal';
import { describe, expect, it } from 'vitest';
import { RATE, soundedBy, swingOf } from '../../test/takes.ts';
import { listen, listenBeside } from '../listen.ts';
import { withoutLoudspeaker } from './beside.ts';

/** Samples from what the page says to what the microphone takes: 50 ms. */
const DELAY = 2205;

const LESSON = swingOf(['x.. ..x x.x ..x'], { more: 'balance: {bass: -10}\n' });

const FORM: Form = {
  name: 'eight',
  sections: [{ play: 'pattern', bars: 8, ending: null }],
  repeat: 1,
  countInBars: 0,
};
const asked = { lesson: LESSON, exercise: 1, form: FORM };
const performance = perform(LESSON, { exercise: 1, form: FORM, bpm: Bpm(100) });
const LASTS_SECONDS = performance.durationSeconds + 1;

/** A sound as it comes out of a loudspeaker, through a room of 30 reflections in 60 ms, to a microphone. */
function inRoom(sound: Float32Array): Float32Array {
  const random = seededRandom('room');
  const heard = new Float32Array(sound.length);
  const reflections = Array.from({ length: 30 }, () => random.below(2646));
  for (const late of [0, ...reflections]) {
    const gain = late === 0 ? 1 : (random.next() - 0.5) * Math.exp(-late / 900);
    for (let i = 0; i + late + DELAY < heard.length; i += 1)
      heard[i + late + DELAY] = heard[i + late + DELAY]! + gain * sound[i]!;
  }
  return heard;
}

const model = soundedBy(
  { seed: 'axe', lateSeconds: 0.3, spreadSeconds: 0 },
  performance.strokes,
  LASTS_SECONDS,
);
const echo = inRoom(model);
const known = { samples: model, sampleRateHz: RATE };
const student = soundedBy(
  { seed: 'student', lateSeconds: 0.3, spreadSeconds: 0.02 },
  performance.strokes.filter(({ voice }) => voice !== 'snare'),
  LASTS_SECONDS,
);

/** The student beside the loudspeaker, which is so many decibels softer. */
function beside(db: number): Float32Array {
  const gain = dbToGain(db) * (rootMeanSquare(student) / rootMeanSquare(echo));
  return student.map((sample, i) => sample + gain * echo[i]!);
}

describe('a take beside a loudspeaker', () => {
  it.each([-10, -20, -30])('[LI60] does not take what it played for the student at %d dB', (db) => {
    const samples = beside(db);
    const { report, refusal } = listenBeside({ samples, sampleRateHz: RATE }, known, asked);
    if (!report) throw new Error(refusal.fact);
    // definition: the snare is written 40 times and was never played, ride and bass drum always
    expect(report.voices.snare?.hits).toBe(0);
    expect(report.voices.ride?.hits).toBeGreaterThanOrEqual(47);
    expect(report.voices.bass?.hits).toBeGreaterThanOrEqual(31);
    if (db > -30) expect(report.loudspeaker?.delaySeconds).toBeCloseTo(DELAY / RATE, 4);
  });

  it('[LI7100] cannot tell a snare that only the loudspeaker plays from it, though nobody told of one', () => {
    const { report } = listen(beside(-10), RATE, asked);
    expect(report?.voices.snare?.hits ?? 0).toBe(0);
    // definition: the snare is written 40 times in eight bars, and the student plays ride and bass drum
    expect(report?.unheard).toContainEqual({ reason: 'from-loudspeaker', voice: 'snare', count: 40 });
    expect(report?.unknown?.filter(({ voice }) => voice === 'snare')).toHaveLength(40);
    expect(report?.voices.ride?.hits).toBeGreaterThanOrEqual(47);
    expect(report?.voices.bass?.hits).toBeGreaterThanOrEqual(31);
  });

  /** A take in which the snare was played as well, and by whom the ear takes it. */
  function expectBelieved(take: Float32Array): void {
    const { report } = listen(take, RATE, asked);
    expect(report?.unheard?.filter(({ reason }) => reason === 'from-loudspeaker')).toEqual([]);
    expect(report?.voices.snare?.hits).toBeGreaterThanOrEqual(39);
  }

  it('[LI7101] believes a snare that is played beside a loudspeaker of which nobody told', () => {
    const hands = { seed: 'student', lateSeconds: 0.3, spreadSeconds: 0.02 };
    const whole = soundedBy(hands, performance.strokes, LASTS_SECONDS);
    const gain = dbToGain(-10) * (rootMeanSquare(whole) / rootMeanSquare(echo));
    expectBelieved(whole.map((sample, i) => sample + gain * echo[i]!));
  });

  it('[LI7101] takes a recording of a machine alone as it takes a person', () => {
    expectBelieved(model);
  });

  it('[LI77] believes nothing of a voice that the student does not play, whatever the loudspeaker plays', () => {
    const plays = ['ride', 'hihat-foot', 'bass'] as const;
    const { report } = listen(beside(-10), RATE, { ...asked, plays });
    expect(report?.voices.snare).toBeUndefined();
    expect(report?.strokes.filter(({ voice }) => voice === 'snare')).toEqual([]);
    expect(report?.missed.filter(({ voice }) => voice === 'snare')).toEqual([]);
    expect(report?.voices.ride?.hits).toBeGreaterThanOrEqual(47);
  });

  it('[LI8510] takes nothing out of a take in which the microphone does not hear it', () => {
    // definition: who plays the same, on drums that sound alike, is no loudspeaker
    const { samples, loudspeaker } = withoutLoudspeaker(student, model, RATE);
    expect(loudspeaker).toBeNull();
    expect(samples === student).toBe(true);
  });

  it('[LI61] is no report where only the loudspeaker is heard', () => {
    const { refusal } = listenBeside({ samples: echo, sampleRateHz: RATE }, known, asked);
    expect(refusal?.fact).toBe('only-the-loudspeaker');
  });

  it('[LI61] is as without one where it is not in the take', () => {
    const { report } = listenBeside({ samples: student, sampleRateHz: RATE }, known, asked);
    // definition: the student plays all 48 strokes of the ride and none of the snare
    expect(report?.voices.ride?.hits).toBe(48);
    expect(report?.voices.snare?.hits).toBe(0);
  });
});
