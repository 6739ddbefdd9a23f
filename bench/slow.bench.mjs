/**
 * Drums at half their speed, ours beside FFmpeg's two ways (`atempo`, and Rubber Band where it is built in): where the
 * strokes lie, how sharp they are, and how often something sounds like a stroke that is none.
 */
import { execFileSync } from 'node:child_process';
import { Bpm, Hertz, perform, Seconds } from '@shedbook/core';
import { median, nearestQuantile } from '@shedbook/signal';
import { createKit, render, slowDown } from '@shedbook/sound';
import { barsOnce, lessonOf } from './material.mjs';

export const name = 'slow';

const RATE = Hertz(44_100);
const SPEED = 0.5;

/** @param {Float32Array} samples */
function differences(samples) {
  return samples.map((value, i) => value - (samples[i - 1] ?? 0));
}

/**
 * Power of each half millisecond of what changes from sample to sample.
 * @param {Float32Array} samples
 */
function powersOf(samples) {
  const changes = differences(samples);
  const startOf = (/** @type {number} */ step) => Math.round((step * RATE) / 2000);
  return Float64Array.from({ length: Math.floor((samples.length * 2000) / RATE) }, (_, step) => {
    let sum = 0;
    for (let i = startOf(step); i < startOf(step + 1); i += 1) sum += (changes[i] ?? 0) ** 2;
    return sum / (startOf(step + 1) - startOf(step));
  });
}

/** Half milliseconds before a stroke and after it that are compared, and how far it is looked for. */
const [BEFORE, AFTER, REACH] = [20, 40, 60];
/** Half milliseconds in which the delay is looked for that a way has throughout. */
const DELAY_REACH = 240;

/**
 * How a stroke of the original sounds near a moment of what is slower: how far it lies from the moment in ms, where its
 * envelope is most like the original's, and how much less its first 5 ms stand out of the 8 ms before it there, in dB.
 * @param {Float64Array} original
 * @param {number} seconds
 * @param {Float64Array} slow
 * @param {number} delay half milliseconds by which everything comes later
 * @param {number} reach
 */
function strokeNear(original, seconds, slow, delay, reach) {
  const [from, to] = [Math.round(seconds * 2000), Math.round((seconds / SPEED) * 2000) + delay];
  const height = (/** @type {Float64Array} */ powers, /** @type {number} */ i) => Math.sqrt(powers[i] ?? 0);
  let [best, most] = [0, Number.NEGATIVE_INFINITY];
  for (let lag = -reach; lag <= reach; lag += 1) {
    let [dot, one, other] = [0, 1e-12, 1e-12];
    for (let i = -BEFORE; i < AFTER; i += 1) {
      const [x, y] = [height(original, from + i), height(slow, to + lag + i)];
      dot += x * y;
      one += x * x;
      other += y * y;
    }
    const alike = dot / Math.sqrt(one * other);
    if (alike > most) [best, most] = [lag, alike];
  }
  const standsOut = (/** @type {Float64Array} */ powers, /** @type {number} */ at) => {
    const sum = (/** @type {number} */ first, /** @type {number} */ last) =>
      powers.subarray(first, last).reduce((all, value) => all + value, 1e-12) / (last - first);
    return 10 * Math.log10(sum(at, at + 10) / sum(at - 18, at - 2));
  };
  return {
    lag: best,
    errorMs: Math.abs(best) / 2,
    softerDb: standsOut(original, from) - standsOut(slow, to + best),
    alike: most,
  };
}

/**
 * Rises of 9 dB and more that lie further than 15 ms from every stroke: strokes heard twice.
 * @param {Float64Array} powers
 * @param {readonly number[]} times
 */
function extras(powers, times) {
  let count = 0;
  let last = Number.NEGATIVE_INFINITY;
  for (let i = 8; i + 8 < powers.length; i += 1) {
    const before = powers.subarray(i - 8, i).reduce((sum, value) => sum + value, 1e-9);
    const after = powers.subarray(i, i + 4).reduce((sum, value) => sum + value, 0) * 2;
    const isNear = times.some((time) => Math.abs(time * 2000 - i) < 30);
    if (after > 8 * before && !isNear && i - last > 40) {
      count += 1;
      last = i;
    }
  }
  return count;
}

/**
 * @param {Float32Array} samples
 * @param {string} filter
 */
function byFfmpeg(samples, filter) {
  const form = ['-f', 'f32le', '-ar', `${RATE}`, '-ac', '1'];
  const args = ['-v', 'error', ...form, '-i', 'pipe:0', '-af', filter, ...form, '-'];
  const input = Buffer.from(samples.buffer, samples.byteOffset, samples.byteLength);
  const out = execFileSync('ffmpeg', args, { input, maxBuffer: 2 ** 30 });
  return new Float32Array(out.buffer.slice(out.byteOffset, out.byteOffset + out.length));
}

/** Runs the bench. */
export async function run() {
  const lesson = lessonOf(
    JSON.stringify({
      title: 'Slow',
      feel: 'triplet',
      groove: { ride: 'x x.x x x.x', 'hihat-foot': '. x . x', bass: 'x x x x' },
      exercises: ['x.. ..x x.x .x.'],
    }),
  );
  const { strokes } = perform(lesson, { exercise: 1, form: barsOnce(4), bpm: Bpm(120) });
  const shifted = strokes.map((stroke) => ({ ...stroke, timeSeconds: Seconds(stroke.timeSeconds + 0.3) }));
  const kit = createKit({ sampleRateHz: RATE, seed: 'slow' });
  const { left, right } = render({ strokes: shifted, durationSeconds: Seconds(9) }, { kit });
  const plain = left.map((value, i) => (value + (right[i] ?? 0)) / 2);
  const times = [...new Set(shifted.map(({ timeSeconds }) => timeSeconds.toFixed(4)))].map(Number);
  const onsets = times;
  const ways = {
    ours: slowDown([plain], { rateHz: RATE, speed: SPEED, onsets })[0] ?? plain,
    'ours, onsets unknown': slowDown([plain], { rateHz: RATE, speed: SPEED, onsets: [] })[0] ?? plain,
    atempo: byFfmpeg(plain, 'atempo=0.5'),
    'Rubber Band': byFfmpeg(plain, 'rubberband=tempo=0.5:transients=crisp'),
  };
  const original = powersOf(plain);
  return Object.entries(ways).flatMap(([way, slow]) => {
    const powers = powersOf(slow);
    const lags = times.map((time) => strokeNear(original, time, powers, 0, DELAY_REACH).lag);
    const delay = Math.round(median(lags));
    const own = times.map((time) => strokeNear(original, time, powers, delay, REACH));
    const errors = own.map(({ errorMs }) => errorMs);
    const softer = own.map(({ softerDb }) => softerDb);
    const slowTimes = times.map((time) => time / SPEED + delay / 2000);
    return [
      { what: `${way}: delay throughout`, value: delay / 2, unit: 'ms' },
      { what: `${way}: onset from where it should be, median`, value: median(errors), unit: 'ms' },
      { what: `${way}: onset, 95 %`, value: nearestQuantile(errors, 0.95), unit: 'ms' },
      { what: `${way}: attack stands out less than as struck, median`, value: median(softer), unit: 'dB' },
      {
        what: `${way}: likeness of attacks, 5 %`,
        value: nearestQuantile(
          own.map(({ alike }) => alike),
          0.05,
        ),
        unit: '',
      },
      {
        what: `${way}: strokes that nobody struck, of ${times.length}`,
        value: extras(powers, slowTimes),
        unit: '',
      },
    ];
  });
}
