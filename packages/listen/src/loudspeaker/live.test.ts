import { Bpm, type Form, perform, Seconds, seededRandom } from '@shedbook/core';
import { dbToGain, energyOf, powerToDb, rootMeanSquare } from '@shedbook/signal';
import { describe, expect, it } from 'vitest';
import { RATE, soundedBy, swingOf } from '../../test/takes.ts';
import { createLiveListener } from '../live/live-listener.ts';
import type { LiveStroke } from '../live/live-stroke.ts';
import { LiveLoudspeaker } from './live.ts';

const BLOCK = 128;
/** Samples from what the page says to what the microphone takes: 70 ms. */
const DELAY = 3087;
const BPM = Bpm(120);

const LESSON = swingOf(['x.. ..x x.x ..x'], { bpm: BPM });

const FORM: Form = {
  name: 'four',
  sections: [{ play: 'pattern', bars: 4, ending: null }],
  repeat: 1,
  countInBars: 1,
};
const performance = perform(LESSON, { exercise: 1, form: FORM, bpm: BPM });
const LASTS_SECONDS = performance.durationSeconds + 1;

/** A sound as it comes out of a small loudspeaker, through a room of 400 reflections in 0.2 s, to a microphone. */
function inRoom(sound: Float32Array): Float32Array {
  const random = seededRandom('room');
  const room = new Float32Array(9000);
  room[0] = 1;
  for (let i = 0; i < 400; i += 1) {
    const late = random.below(room.length);
    room[late] = room[late]! + (random.next() - 0.5) * 0.5 * Math.exp(-late / 2500);
  }
  const heard = new Float32Array(sound.length);
  room.forEach((gain, late) => {
    if (gain === 0) return;
    for (let i = 0; i + late + DELAY < heard.length; i += 1)
      heard[i + late + DELAY] = heard[i + late + DELAY]! + gain * sound[i]!;
  });
  // definition: a first-order low pass and high pass, of some 6000 and 200 Hz
  let [low, high, before] = [0, 0, 0];
  return heard.map((sample) => {
    low += 0.6 * (sample - low);
    high = 0.97 * (high + low - before);
    before = low;
    return high;
  });
}

const model = soundedBy(
  { seed: 'axe', lateSeconds: 0.3, spreadSeconds: 0 },
  performance.strokes,
  LASTS_SECONDS,
);
const echo = inRoom(model);
const student = soundedBy(
  { seed: 'student', lateSeconds: 0.31, spreadSeconds: 0.02 },
  performance.strokes.filter(({ voice }) => voice !== 'snare' && voice !== 'click'),
  LASTS_SECONDS,
);

/** The student beside a loudspeaker, and what it adds. */
function besideAt(db: number) {
  const gain = dbToGain(db) * (rootMeanSquare(student) / rootMeanSquare(echo));
  const added = echo.map((sample) => gain * sample);
  return { added, samples: student.map((sample, i) => sample + added[i]!) };
}

/** Hears a sound live while the page plays its model. */
function hear(samples: Float32Array) {
  const loudspeaker = new LiveLoudspeaker(RATE);
  const listener = createLiveListener(
    { lesson: LESSON, exercise: 1, form: FORM, bpm: BPM },
    { sampleRateHz: RATE, latencySeconds: Seconds(0.01), beside: loudspeaker.from(0) },
  );
  listener.startLoop(Seconds(performance.countInSeconds + 0.3), BPM);
  const strokes: LiveStroke[] = [];
  const cleaned: number[] = [];
  // Blocks of a browser, of which one now and then is short.
  for (let at = 0, count = BLOCK; at < samples.length; at += count) {
    count = at === 40 * BLOCK ? 50 : BLOCK;
    const own = loudspeaker.push(samples.subarray(at, at + count), model.subarray(at, at + count));
    strokes.push(...listener.push(own));
    cleaned.push(...own);
  }
  return { loudspeaker, listener, strokes, cleaned };
}

describe('a loudspeaker beside somebody who plays', () => {
  it.each([-10, -20])('[LI91] is not taken for the student at %d dB', (db) => {
    const { samples, added } = besideAt(db);
    const { loudspeaker, listener, strokes, cleaned } = hear(samples);
    // definition: the snare is written 20 times and was never played
    expect(strokes.filter(({ voice, written }) => voice === 'snare' && written).length).toBeLessThanOrEqual(
      1,
    );
    const { report, refusal } = listener.loopReport(0);
    if (!report) throw new Error(refusal.fact);
    expect(report.voices.snare?.hits).toBe(0);
    // definition: 24 strokes of the ride, 16 of the bass drum
    expect(report.voices.ride?.hits).toBeGreaterThanOrEqual(23);
    expect(report.voices.bass?.hits).toBeGreaterThanOrEqual(14);
    expect(report.loudspeaker?.delaySeconds).toBeCloseTo(DELAY / RATE, 3);
    expect(loudspeaker.heard?.levelDb).toBeLessThan(0);

    // [LI92] definition: what is left of the loudspeaker beside the student's own sound, in the four bars
    const from = Math.round((performance.countInSeconds + 0.3) * RATE);
    const left = Float32Array.from(cleaned.slice(from), (sample, i) => sample - student[from + i]!);
    const before = added.slice(from, from + left.length);
    expect(powerToDb(energyOf(left)) - powerToDb(energyOf(before))).toBeLessThan(-6);
  });

  it('[LI92] leaves a sound as it is where no loudspeaker is heard in it, less than a block behind', () => {
    const loudspeaker = new LiveLoudspeaker(RATE);
    const random = seededRandom('hiss');
    const hiss = Float32Array.from({ length: 3 * RATE }, () => random.next() - 0.5);
    const own = [...loudspeaker.push(hiss, model.subarray(0, hiss.length))];
    expect(own).toEqual([...hiss.subarray(0, own.length)]);
    expect(hiss.length - own.length).toBeLessThan(BLOCK);
    expect(loudspeaker.heard).toBeNull();
    expect(loudspeaker.isDoubtful(1)).toBe(false);
  });

  it('[LI1200] puts nothing into the sound of a microphone that no longer hears it', () => {
    const loudspeaker = new LiveLoudspeaker(RATE);
    const half = BLOCK * Math.floor(echo.length / 2 / BLOCK);
    const heard = echo.map((sample, i) => (i < half ? sample : 0));
    const cleaned = [...loudspeaker.push(heard, model.subarray(0, heard.length))];
    expect(loudspeaker.heard).not.toBeNull();
    // definition: of silence nothing can be taken out; a third of a second is left to find out
    const silence = cleaned.slice(half + RATE / 3);
    expect(silence.length).toBeGreaterThan(3 * RATE);
    expect(silence.every((sample) => sample === 0)).toBe(true);
  });

  it('[LI61] is all there is where nobody plays beside it', () => {
    const { strokes, listener } = hear(echo);
    // definition: nobody played
    expect(listener.loopReport(0).refusal?.fact).toBe('only-the-loudspeaker');
    expect(strokes.filter(({ written }) => written).length).toBeLessThanOrEqual(2);
  });
});
