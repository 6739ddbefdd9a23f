/**
 * Takes of known truth, as the benches of the ear need them: exercises of the demo lessons played on a kit that no training
 * has heard, by somebody who is a few milliseconds off, with what else may sound in a room.
 *
 * Conventions: mono samples of RATE; seconds from the first of them. The kit is the product's own with the seed `ten`, which
 * the lab keeps for measuring: the family of its sounds is known to the network, its samples are not.
 */
import { readFileSync } from 'node:fs';
import { Bpm, Hertz, ontoPad, parseLesson, perform, Seconds, seededRandom } from '@shedbook/core';
import { dbToGain, rootMeanSquare } from '@shedbook/signal';
import { createKit, render } from '@shedbook/sound';

export const RATE = Hertz(44_100);
/** Lead-in of a take, and what is recorded after its last stroke. */
const BEFORE_SECONDS = 0.5;
const AFTER_SECONDS = 1.5;
/** A stroke lies up to so far before or after its place. */
const SPREAD_SECONDS = 0.015;
/** Samples from what the page says to what the microphone takes: 70 ms. */
const DELAY = 3087;
const ROOM_SAMPLES = 9000;
const REFLECTIONS = 400;

const kits = new Map();

/** @param {string} seed */
function kitOf(seed) {
  const made = kits.get(seed) ?? createKit({ sampleRateHz: RATE, seed });
  kits.set(seed, made);
  return made;
}

/** The demo's exercises that the table is of, each with a limb that is left out where one is. */
export const DEMO = /** @type {const} */ ([
  { name: 'first-swing', exercise: 10, other: 20, limb: 'snare' },
  { name: 'bossa', exercise: 5, other: 11, limb: 'bass' },
  { name: 'funk', exercise: 5, other: 11, limb: 'snare' },
  { name: 'jazz-waltz', exercise: 7, other: 14, limb: 'hihat-foot' },
  { name: 'shuffle', exercise: 11, other: 4, limb: 'snare' },
]);

/** @param {string} name */
export function demoLesson(name) {
  const { lesson } = parseLesson(
    readFileSync(new URL(`../demo/${name}.lesson.yaml`, import.meta.url), 'utf8'),
    name,
  );
  if (!lesson) throw new Error(`the demo's lesson ${name} cannot be read`);
  return lesson;
}

/** @param {number} bars @returns {import('@shedbook/core').Form} */
const loopOf = (bars) => ({
  name: 'loop',
  sections: [{ play: 'pattern', bars, ending: null }],
  repeat: 1,
  countInBars: 0,
});

/**
 * What is asked of one of the demo's exercises.
 * @param {{ name: string, exercise: number, bpm?: number, bars?: number, onPad?: boolean }} what
 */
export function askedOf({ name, exercise, bpm, bars = 8, onPad = false }) {
  const lesson = demoLesson(name);
  const asked = { lesson, exercise, form: loopOf(bars), bpm: Bpm(bpm ?? lesson.tempo.startBpm) };
  return onPad ? ontoPad(asked) : asked;
}

/**
 * @param {readonly import('@shedbook/core').Stroke[]} strokes
 * @param {{ seed?: string, room?: boolean, durationSeconds: number }} options
 */
function sounded(strokes, { seed = 'ten', room = true, durationSeconds }) {
  const audio = render({ strokes, durationSeconds: Seconds(durationSeconds) }, { kit: kitOf(seed), room });
  return audio.left.map((sample, i) => (sample + (audio.right[i] ?? 0)) / 2);
}

/**
 * A take: what was played when, what is written there, and how it sounds.
 * @param {ReturnType<typeof askedOf>} asked
 * @param {{ without?: string, only?: readonly string[], room?: boolean, pauseSeconds?: number, leftOut?: number }} how `leftOut`
 *   is the share of strokes that are left out here and there, 0 to 1
 */
export function playedTake(asked, { without, only, room = true, pauseSeconds = 0, leftOut = 0 } = {}) {
  const performance = perform(asked.lesson, asked);
  const random = seededRandom(`${asked.lesson.title} ${asked.exercise}`);
  const lost = seededRandom(`left out of ${asked.lesson.title} ${asked.exercise}`);
  const middle = performance.durationSeconds / 2;
  const strokes = performance.strokes
    .filter(({ voice }) => voice !== 'click' && voice !== without && (!only || only.includes(voice)))
    .filter(() => lost.next() >= leftOut)
    .map((stroke) => ({
      ...stroke,
      timeSeconds: Seconds(
        stroke.timeSeconds +
          BEFORE_SECONDS +
          (stroke.timeSeconds >= middle ? pauseSeconds : 0) +
          (2 * random.next() - 1) * SPREAD_SECONDS,
      ),
    }))
    .toSorted((a, b) => a.timeSeconds - b.timeSeconds);
  const durationSeconds = performance.durationSeconds + pauseSeconds + BEFORE_SECONDS + AFTER_SECONDS;
  const written = performance.strokes
    .filter(({ voice }) => voice !== 'click')
    .map(({ voice, timeSeconds }) => ({ voice, timeSeconds: timeSeconds + BEFORE_SECONDS }));
  return { strokes, written, samples: sounded(strokes, { room, durationSeconds }) };
}

/**
 * What the page plays of an exercise, from the take's first sample on.
 * @param {ReturnType<typeof askedOf>} asked
 */
export function pagePlays(asked) {
  const performance = perform(asked.lesson, asked);
  const strokes = performance.strokes.map((stroke) => ({
    ...stroke,
    timeSeconds: Seconds(stroke.timeSeconds + BEFORE_SECONDS - DELAY / RATE),
  }));
  const durationSeconds = performance.durationSeconds + BEFORE_SECONDS + AFTER_SECONDS;
  return sounded(strokes, { seed: 'set', durationSeconds });
}

/**
 * A sound as it comes out of a small loudspeaker through a room to the microphone.
 * @param {Float32Array} sound
 */
export function throughRoom(sound) {
  const random = seededRandom('room');
  const heard = new Float32Array(sound.length);
  const taps = Array.from({ length: REFLECTIONS }, () => {
    const late = random.below(ROOM_SAMPLES);
    return { late, gain: (random.next() - 0.5) * 0.5 * Math.exp(-late / 2500) };
  });
  for (const { late, gain } of [{ late: 0, gain: 1 }, ...taps]) {
    for (let i = 0; i + late + DELAY < heard.length; i += 1)
      heard[i + late + DELAY] = (heard[i + late + DELAY] ?? 0) + gain * (sound[i] ?? 0);
  }
  // A low pass and a high pass of the first order, of some 6000 and 200 Hz.
  let [low, high, before] = [0, 0, 0];
  return heard.map((sample) => {
    low += 0.6 * (sample - low);
    high = 0.97 * (high + low - before);
    before = low;
    return high;
  });
}

/**
 * A sound with another one so many decibels under it.
 * @param {Float32Array} samples @param {Float32Array} other @param {number} underDb
 */
export function withOther(samples, other, underDb) {
  const gain = dbToGain(-underDb) * (rootMeanSquare(samples) / rootMeanSquare(other));
  return samples.map((sample, i) => sample + gain * (other[i] ?? 0));
}

/** A tone of many partials that rings off. @param {Float32Array} into */
function tone(into, { at, hz, seconds, partials }) {
  const from = Math.round(at * RATE);
  for (let i = 0; i < 4 * seconds * RATE && from + i < into.length; i += 1) {
    const time = i / RATE;
    let sum = 0;
    for (let k = 1; k <= partials; k += 1) sum += Math.sin(2 * Math.PI * hz * k * time) / k ** 1.3;
    into[from + i] = (into[from + i] ?? 0) + sum * Math.exp(-time / seconds) * (1 - Math.exp(-time / 0.004));
  }
}

/** A walking bass under a chord now and then. @param {number} count samples @param {number} beatSeconds */
export function musicOf(count, beatSeconds) {
  const random = seededRandom('music');
  const music = new Float32Array(count);
  for (let beat = 0; BEFORE_SECONDS + beat * beatSeconds < count / RATE; beat += 1) {
    const at = BEFORE_SECONDS + beat * beatSeconds;
    tone(music, { at, hz: 45 + 65 * random.next(), seconds: 0.25, partials: 7 });
    if (beat % 4 !== 0) continue;
    for (let k = 0; k < 3; k += 1)
      tone(music, { at, hz: 180 + 420 * random.next(), seconds: 0.8, partials: 7 });
  }
  return music;
}

/** Syllables of a voice: a gliding tone of many partials, through two of its throat's tones. @param {number} count samples */
export function talkOf(count) {
  const random = seededRandom('talk');
  const talk = new Float32Array(count);
  for (let at = 1; at < count / RATE - 1; at += 0.16 + 0.2 * random.next()) {
    if (random.next() < 0.25) at += 0.5;
    const [hz, glide] = [100 + 60 * random.next(), 1 + 0.2 * (random.next() - 0.5)];
    const throat = [300 + 500 * random.next(), 900 + 1400 * random.next()];
    const from = Math.round(at * RATE);
    const length = Math.round((0.1 + 0.12 * random.next()) * RATE);
    for (let i = 0; i < length && from + i < count; i += 1) {
      let sum = 0;
      for (let k = 1; k <= 25; k += 1) {
        const near = throat.reduce((all, tone) => all + Math.exp(-(((k * hz - tone) / 180) ** 2)), 0.02);
        sum += near * Math.sin((2 * Math.PI * hz * k * glide ** (i / length) * i) / RATE);
      }
      talk[from + i] = (talk[from + i] ?? 0) + sum * Math.sin((Math.PI * i) / length);
    }
  }
  return talk;
}
