import { Bpm, formatPattern, Hertz, perform, Seconds, TakeDb } from '@shedbook/core';
import { judge, judgeTaskOf } from '@shedbook/judge';
import { createLiveListener } from '@shedbook/listen';
import { describe, expect, it } from 'vitest';
import { formOnce, HEARING_LESSON, lessonOf } from '../../../../internal/testing/hearing.ts';
import { TapFinder } from '../ear/tap-finder.ts';
import { ontoPad, padLimbs, padVoice } from './pad.ts';

const lesson = lessonOf(HEARING_LESSON);
const BPM = Bpm(160);
const pad = ontoPad(lesson);
const task = { lesson: pad, exercise: 1, form: formOnce(pad), layers: pad.layers.length, bpm: BPM, mine: [] };

/** When the exercise is struck, in seconds from the bar line. */
const written = perform(pad, { exercise: 1, form: formOnce(pad), bpm: BPM })
  .strokes.filter(({ voice }) => voice === 'snare')
  .map(({ timeSeconds }) => Number(timeSeconds));

/** The verdict on strokes at some moments. */
function verdictOn(times: readonly number[]) {
  const listener = createLiveListener({ lesson: pad, exercise: 1, form: formOnce(pad), bpm: BPM });
  const loop = listener.startLoop(Seconds(1), BPM);
  for (const time of times) listener.note(Seconds(1 + time), 'snare', TakeDb(-12));
  return judge(judgeTaskOf(task), listener.loopReport(loop), 'beginner').verdict;
}

describe('one surface', () => {
  it('[ST149] asks for the exercise alone, on one voice, also where it has several', () => {
    const two = lessonOf(`title: Two
exercises:
  - pattern: {snare: "x.. ... x.x ...", bass: "... x.. ..x ..x"}
`);
    // definition: what either voice strikes, once where both do
    expect(ontoPad(two).exercises[0]?.parts.map(({ pattern }) => formatPattern(pattern))).toEqual([
      'x.. x.. x.x ..x',
    ]);
    expect(padVoice(two, 1)).toBe('snare');
    expect(padLimbs(two, 1).toSorted()).toEqual(['lead foot', 'other hand']);
    expect(pad.groove).toEqual([]);
  });

  it('[ST149] is clean where the rhythm was played, and not where it was not', () => {
    expect(verdictOn(written).is).toBe('clean');
    expect(verdictOn(written.slice(0, Math.ceil(written.length / 2))).is).not.toBe('clean');
    // every beat of two bars of four at 160
    expect(verdictOn(Array.from({ length: 8 }, (_, beat) => beat * 0.375)).is).not.toBe('clean');
    expect(verdictOn([]).is).toBe('not judged');
  });
});

const RATE = 44_100;

/** Taps on a table: a thud of noise that dies away within some milliseconds. */
function taps(times: readonly number[], level: number, hiss: number): Float32Array {
  let state = 1;
  const noise = () => {
    state = (state * 48_271) % 2_147_483_647;
    return (2 * state) / 2_147_483_647 - 1;
  };
  const samples = Float32Array.from({ length: RATE * 4 }, () => hiss * noise());
  for (const time of times) {
    const from = Math.round(time * RATE);
    for (let i = 0; i < 0.08 * RATE; i += 1) {
      samples[from + i] = (samples[from + i] ?? 0) + level * noise() * Math.exp(-i / (0.012 * RATE));
    }
  }
  return samples;
}

function found(samples: Float32Array, block = 1024): readonly number[] {
  const finder = new TapFinder(Hertz(RATE));
  const all = [];
  for (let at = 0; at < samples.length; at += block)
    all.push(...finder.push(samples.subarray(at, at + block)));
  return all.map(({ seconds }) => seconds);
}

describe('taps', () => {
  it.each([
    ['in a quiet room', 0.5, 0.0005],
    ['soft, in hiss', 0.1, 0.003],
  ])('[ST149] are found to a few milliseconds, each once: %s', (_, level, hiss) => {
    // sixteenths at 150 lie 100 ms apart
    const times = [0.5, 0.75, 1, 1.1, 1.2, 1.3, 2, 2.6, 3.1];
    const heard = found(taps(times, level, hiss));
    expect(heard).toHaveLength(times.length);
    for (const [i, time] of times.entries()) expect(Math.abs((heard[i] ?? 0) - time)).toBeLessThan(0.004);
  });

  it('[ST149] are the same however the sound comes in blocks', () => {
    const samples = taps([0.5, 0.9, 1.4], 0.4, 0.001);
    expect(found(samples, 128)).toEqual(found(samples, 4096));
  });

  it('[ST149] are none in hiss, hum and silence', () => {
    expect(found(new Float32Array(RATE))).toEqual([]);
    expect(found(taps([], 0, 0.01))).toEqual([]);
    const hum = Float32Array.from(
      { length: RATE * 2 },
      (_, i) => 0.05 * Math.sin((2 * Math.PI * 100 * i) / RATE),
    );
    expect(found(hum)).toEqual([]);
  });
});
