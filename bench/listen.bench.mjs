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
import { fileURLToPath } from 'node:url';
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
const ROUNDS = 5;
const COMMAND = fileURLToPath(new URL('../bin/shedbook.mjs', import.meta.url));

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

/** Processor seconds of a program with all of its threads, from its start to its end. */
function programSeconds(...command) {
  const script = '{ TIMEFORMAT="%U %S"; time "$0" "$@" > /dev/null; } 2>&1';
  return timedSeconds(execFileSync('bash', ['-c', script, ...command], { encoding: 'utf8' }));
}

/**
 * Processor seconds of the whole command for a take, and of Debian's voice-blind onset detector in turn with it; that is null
 * where it is not installed.
 */
function coldSeconds(audio) {
  const folder = mkdtempSync(join(tmpdir(), 'shedbook-bench-'));
  const [take, path] = [join(folder, 'take.wav'), join(folder, 'take.lesson.yaml')];
  writeFileSync(take, encodeWav(audio, { format: 'int16', seed: 'bench' }));
  writeFileSync(path, `${TEXT}forms: {take: {sections: [{pattern: ${BARS}}], repeat: 1, countIn: 0}}\n`);
  const asked = ['listen', take, '--lesson', path, '--exercise', '1', '--form', 'take'];
  const hasAubio = !spawnSync('aubioonset', ['--help']).error;
  let [command, aubio] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (let round = 0; round < ROUNDS; round += 1) {
    command = Math.min(command, programSeconds(process.execPath, COMMAND, ...asked));
    if (hasAubio) aubio = Math.min(aubio, programSeconds('aubioonset', take));
  }
  rmSync(folder, { recursive: true });
  return { command, aubio: hasAubio ? aubio : null };
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
  const seconds = quickest(ROUNDS, () => listen(mono, RATE, asked));
  const { command, aubio } = coldSeconds(audio);
  const beside = (value) => (aubio === null ? {} : { ratio: value / aubio, ratioTo: "aubioonset's time" });
  return [
    { what: 'a take of a minute to a report, warm', value: seconds, unit: 's', ...beside(seconds) },
    { what: 'the same, cold: the command `listen`', value: command, unit: 's', ...beside(command) },
    { what: 'live, in blocks of 128 samples', value: 100 * liveShare(mono), unit: '% of a core' },
    ...memoryRows(mono),
  ];
}
