import { Bpm, Hertz, type Lesson, ontoPad, parseLesson, perform, Seconds, turnedForm } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { createLiveListener } from '../live/live-listener.ts';
import { PadListener } from './pad-listener.ts';
import { TapFinder } from './tap-finder.ts';

const RATE = Hertz(44_100);

interface Sounding {
  readonly level?: number;
  /** Level of the noise of the room. */
  readonly hiss?: number;
  readonly seconds?: number;
}

/** Taps on a table: a thud of noise that dies away within some milliseconds. */
function taps(
  times: readonly number[],
  { level = 0.4, hiss = 0.001, seconds = 4 }: Sounding = {},
): Float32Array {
  let state = 1;
  const noise = () => {
    state = (state * 48_271) % 2_147_483_647;
    return (2 * state) / 2_147_483_647 - 1;
  };
  const samples = Float32Array.from({ length: Math.round(RATE * seconds) }, () => hiss * noise());
  for (const time of times) {
    const from = Math.round(time * RATE);
    for (let i = 0; i < 0.08 * RATE; i += 1) {
      samples[from + i] = (samples[from + i] ?? 0) + level * noise() * Math.exp(-i / (0.012 * RATE));
    }
  }
  return samples;
}

function found(samples: Float32Array, block = 1024): readonly number[] {
  const finder = new TapFinder(RATE);
  const all = [];
  for (let at = 0; at < samples.length; at += block)
    all.push(...finder.push(samples.subarray(at, at + block)));
  return all.map(({ seconds }) => seconds);
}

describe('taps', () => {
  it.each([
    ['in a quiet room', 0.5, 0.0005],
    ['soft, in hiss', 0.1, 0.003],
  ])('[LI79] are found to a few milliseconds, each once: %s', (_, level, hiss) => {
    // sixteenths at 150 lie 100 ms apart
    const times = [0.5, 0.75, 1, 1.1, 1.2, 1.3, 2, 2.6, 3.1];
    const heard = found(taps(times, { level, hiss }));
    expect(heard).toHaveLength(times.length);
    for (const [i, time] of times.entries()) expect(Math.abs((heard[i] ?? 0) - time)).toBeLessThan(0.004);
  });

  it('[LI79] are the same however the sound comes in blocks', () => {
    const samples = taps([0.5, 0.9, 1.4]);
    expect(found(samples, 128)).toEqual(found(samples, 4096));
  });

  it('[LI79] are none in hiss, hum and silence', () => {
    expect(found(new Float32Array(RATE))).toEqual([]);
    expect(found(taps([], { hiss: 0.01 }))).toEqual([]);
    const hum = Float32Array.from(
      { length: RATE * 2 },
      (_, i) => 0.05 * Math.sin((2 * Math.PI * 100 * i) / RATE),
    );
    expect(found(hum)).toEqual([]);
  });
});

const LESSON = parseLesson(
  'title: Pad\ntempo: 120\nfeel: triplet\nexercises:\n  - "x.. ..x x.x ..x"\n  - "x.x .x. ... xx."\n',
  'pad.lesson.yaml',
).lesson as Lesson;
const COUNT_IN = 1.3;

function askedFor(name: string) {
  return ontoPad({ lesson: LESSON, exercise: 1, form: LESSON.forms.find((form) => form.name === name)! });
}

/** When the exercise is struck, from the first bar line on, some times through the form. */
function written(asked: ReturnType<typeof askedFor>, times: number) {
  const { strokes, durationSeconds } = perform(asked.lesson, {
    ...asked,
    form: { ...asked.form, countInBars: 0 },
  });
  const once = strokes.map(({ timeSeconds }) => Number(timeSeconds));
  const all = Array.from({ length: times }, (_, turn) => once.map((time) => time + turn * durationSeconds));
  return { times: all.flat(), seconds: times * durationSeconds };
}

function heardOf(times: readonly number[], seconds: number, asked: ReturnType<typeof askedFor>) {
  const listener = new PadListener(RATE);
  // four sticks count in before, and something falls after
  const count = [0, 1, 2, 3].map((beat) => 0.2 + 0.25 * beat);
  const all = [...count, ...times.map((time) => time + COUNT_IN), COUNT_IN + seconds + 1.2];
  const samples = taps(all, { seconds: COUNT_IN + seconds + 2 });
  for (let at = 0; at < samples.length; at += 16_384) listener.push(samples.subarray(at, at + 16_384));
  return listener.finish(asked);
}

describe('a take that is clapped', () => {
  it('[LI3500] is heard in the bars that its form leaves, while the click thins out', () => {
    const lesson = parseLesson(
      `title: T
tempo: 120
feel: triplet
groove: {}
comping: clap
exercises: [x.x x.x x.x x.x]
forms: {loop: {sections: [{pattern: 1, click: all}, {rest: 1, click: [2, 4]}, {rest: 1, click: none}]}}
`,
      'clap.lesson.yaml',
    ).lesson as Lesson;
    const [form] = lesson.forms;
    if (!form) throw new Error('no form');
    const asked = ontoPad({ lesson, exercise: 1, form: turnedForm(form) });
    const { strokes } = perform(asked.lesson, asked);
    const claps = strokes.filter(({ voice }) => voice === 'clap').map((each) => Number(each.timeSeconds));
    // definition: two bars of four beats, two claps a beat
    expect(claps).toHaveLength(16);
    const listen = (times: readonly number[]) => {
      const listener = new PadListener(RATE);
      listener.push(taps(times, { seconds: 10 }));
      const { report, refusal } = listener.finish(asked);
      if (!report) throw new Error(refusal?.fact);
      return report;
    };
    const whole = listen(claps);
    expect([whole.missed, whole.strokes.length]).toEqual([[], 16]);
    expect(whole.strokes.every(({ voice, written: place }) => voice === 'clap' && place !== null)).toBe(true);
    expect(listen(claps.filter((_, index) => index !== 5)).missed).toHaveLength(1);
  });
});

describe('a take on a pad', () => {
  it.each(['loop', 'four and two'])('[LI80] is heard whole, and nothing before or after it: %s', (form) => {
    const asked = askedFor(form);
    const { times, seconds } = written(asked, 2);
    const { report } = heardOf(times, seconds, asked);
    expect(report?.missed).toEqual([]);
    expect(report?.strokes.map(({ written: place }) => place !== null)).toEqual(times.map(() => true));
    expect(report?.take.kind).toBe('audio');
    // definition: 120 quarter notes a minute
    expect(report?.alignment.bpm).toBeCloseTo(120, 0);
  });

  it('[LI80] tells a stroke left out, one too many and the tempo that was played', () => {
    const asked = askedFor('loop');
    const { times, seconds } = written(asked, 3);
    const played = times.filter((_, i) => i !== 9).map((time) => time * 1.1);
    const extra = (times[20]! + 0.167) * 1.1;
    const { report } = heardOf(
      [...played, extra].toSorted((a, b) => a - b),
      seconds * 1.1,
      asked,
    );
    expect(report?.missed).toHaveLength(1);
    expect(report?.strokes.filter((stroke) => !stroke.written)).toHaveLength(1);
    expect(report?.alignment.bpm).toBeCloseTo(120 / 1.1, 0);
  });

  it('[LI80] is named as the other exercise that it is', () => {
    const two = ontoPad({ ...askedFor('loop'), exercise: 2 });
    const { times, seconds } = written(two, 3);
    expect(heardOf(times, seconds, askedFor('loop')).report?.exercise?.rather).toBe(2);
  });

  it('[LI80] says why there is no report', () => {
    const factOf = (samples: Float32Array) => {
      const listener = new PadListener(RATE);
      listener.push(samples);
      return listener.finish(askedFor('loop')).refusal?.fact;
    };
    expect(factOf(new Float32Array(0))).toBe('no-sound');
    expect(factOf(new Float32Array(RATE))).toBe('silent-recording');
    expect(factOf(taps([], { hiss: 0.01 }))).toBe('no-taps');
  });

  it('[LI80] is heard live as well, each tap as a stroke of the exercise', () => {
    const asked = askedFor('loop');
    const { times, seconds } = written(asked, 1);
    const listener = createLiveListener(asked, { sampleRateHz: RATE, onPad: true });
    const loop = listener.startLoop(Seconds(COUNT_IN), Bpm(120));
    const samples = taps(
      times.map((time) => time + COUNT_IN),
      { seconds: COUNT_IN + seconds + 0.5 },
    );
    const strokes = listener.push(samples);
    expect(strokes.map(({ voice, written: place }) => [voice, place !== null])).toEqual(
      times.map(() => ['snare', true]),
    );
    expect(listener.loopReport(loop).report?.missed).toEqual([]);
  });
});
