/**
 * How long listening takes, and how much memory, for a student's take.
 *
 * Conventions: processor time of one core, the quickest of some runs; memory is what is still held (heap and array
 * buffers) once nothing else is, in MB of 2^20 bytes.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { Hertz, perform, Seconds, seededRandom } from '@shedbook/core';
import { createLiveListener, listen, TakeListener } from '@shedbook/listen';
import { createKit, encodeWav, render } from '@shedbook/sound';
import { barsOnce, lessonOf, processorSeconds, quickest, timedSeconds } from './material.mjs';

export const name = 'listen';

const RATE = Hertz(44_100);
const SECONDS = Seconds(60);
const BARS = 25;
const BLOCK = 16_384;
const LIVE_BLOCK = 128;
const MINUTES = [1, 10, 60];

const TEXT = `title: Swing
tempo: 100
feel: triplet
exercises:
  - x.. ..x x.x ..x
groove: {ride: "x x.x x x.x", hihat-foot: ". x . x", bass: "x x x x"}
`;

const lesson = lessonOf(TEXT);
const asked = { lesson, exercise: 1, form: barsOnce(BARS) };

/** One minute as a person would play it: up to 10 ms off. */
function minute() {
  const random = seededRandom('bench');
  const { strokes } = perform(lesson, asked);
  const played = strokes
    .map((stroke) => ({ ...stroke, timeSeconds: Seconds(stroke.timeSeconds + 0.02 * random.next()) }))
    .toSorted((a, b) => a.timeSeconds - b.timeSeconds);
  return render({ strokes: played, durationSeconds: SECONDS }, { kit: createKit({ sampleRateHz: RATE }) });
}

/** Processor seconds of Debian's voice-blind onset detector on the same take, or null where it is not installed. */
function aubioSeconds(audio) {
  if (spawnSync('aubioonset', ['--help']).error) return null;
  const folder = mkdtempSync(join(tmpdir(), 'shedbook-bench-'));
  const path = join(folder, 'take.wav');
  writeFileSync(path, encodeWav(audio, { format: 'int16', seed: 'bench' }));
  const script = '{ TIMEFORMAT="%U %S"; time aubioonset "$0" > /dev/null; } 2>&1';
  const run = () => timedSeconds(execFileSync('bash', ['-c', script, path], { encoding: 'utf8' }));
  const seconds = Math.min(run(), run(), run());
  rmSync(folder, { recursive: true });
  return seconds;
}

function heldMegabytes() {
  setFlagsFromString('--expose-gc');
  runInNewContext('gc')();
  const { heapUsed, arrayBuffers } = process.memoryUsage();
  return (heapUsed + arrayBuffers) / 2 ** 20;
}

/** How much more a listener holds the longer the same minute goes on. */
function memoryRows(mono) {
  const listener = new TakeListener(RATE);
  const held = new Map();
  const first = Math.min(...MINUTES);
  const last = Math.max(...MINUTES);
  for (let done = 1; done <= last; done += 1) {
    for (let at = 0; at < mono.length; at += BLOCK) listener.push(mono.subarray(at, at + BLOCK));
    if (MINUTES.includes(done)) held.set(done, heldMegabytes());
  }
  return MINUTES.slice(1).map((minutes) => ({
    what: `memory held, from ${first} to ${minutes} minutes`,
    value: held.get(minutes) - held.get(first),
    unit: 'MB more',
  }));
}

/** Seconds of processor time that a live listener takes for a second of sound. */
function liveShare(mono) {
  const listener = createLiveListener(asked, { sampleRateHz: RATE });
  listener.startLoop(Seconds(0), lesson.tempo.startBpm);
  const seconds = processorSeconds(() => {
    for (let at = 0; at < mono.length; at += LIVE_BLOCK) listener.push(mono.subarray(at, at + LIVE_BLOCK));
  });
  return seconds / SECONDS;
}

/** Rows of the table. */
export async function run() {
  const audio = minute();
  const mono = audio.left.map((sample, i) => 2 * (sample + (audio.right[i] ?? 0)));
  listen(mono, RATE, asked);
  const seconds = quickest(5, () => listen(mono, RATE, asked));
  const aubio = aubioSeconds(audio);
  const against = aubio === null ? {} : { ratio: seconds / aubio, ratioTo: "aubioonset's time" };
  return [
    { what: 'a take of a minute to a report', value: seconds, unit: 's', ...against },
    { what: 'live, in blocks of 128 samples', value: 100 * liveShare(mono), unit: '% of a core' },
    ...memoryRows(mono),
  ];
}
