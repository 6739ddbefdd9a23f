import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { Bpm, Hertz, parseLesson, perform } from '@shedbook/core';
import { createProgram } from '@shedbook/playing';
import { SOUND_NAMES } from '@shedbook/sound';
import { KIT_SEED, type Order, type Report } from '@shedbook/stand';
import { expect, it } from 'vitest';
import { lightKit } from '../../../../internal/testing/kept-kit.mjs';
import { formOf } from './choice.ts';

const RATE = Hertz(44_100);
const MINUTES = 30;
const BLOCK = 128;

/** What double precision leaves of the place of a sample after half an hour, in samples. */
const FLOAT_SAMPLES = 1e-3;

/** What a sound thread is, as far as the player needs it. */
interface Thread {
  readonly port: {
    onmessage: ((event: { readonly data: Order }) => void) | null;
    postMessage: (report: Report) => void;
  };
  process(inputs: unknown, outputs: readonly (readonly Float32Array[])[]): boolean;
}

/** Starts the player's sound thread outside a browser; its clock goes on with every block. */
async function startThread(hear: (report: Report) => void) {
  let made: (new () => Thread) | null = null;
  const scope = globalThis as unknown as Record<string, unknown>;
  scope['sampleRate'] = RATE;
  scope['currentFrame'] = 0;
  scope['AudioWorkletProcessor'] = class {
    readonly port = { onmessage: null, postMessage: hear };
  };
  scope['registerProcessor'] = (_name: string, processor: new () => Thread) => {
    made = processor;
  };
  await import('@shedbook/stand/player.worklet');
  if (!made) throw new Error('the player was not registered');
  const thread = new (made as new () => Thread)();
  const tell = (data: Order) => thread.port.onmessage?.({ data });
  const output = [[new Float32Array(BLOCK), new Float32Array(BLOCK)]] as const;
  const goOn = () => {
    thread.process([], output);
    scope['currentFrame'] = (scope['currentFrame'] as number) + BLOCK;
  };
  return { tell, goOn };
}

/** Bytes that are in use after everything else has been given back. */
function bytesInUse(): number {
  setFlagsFromString('--expose-gc');
  const collect = runInNewContext('gc') as () => void;
  collect();
  const { heapUsed, arrayBuffers } = process.memoryUsage();
  return heapUsed + arrayBuffers;
}

it('[ST51] stays on the sample for thirty minutes, and keeps no more memory than before', async () => {
  const bpm = 97;
  const { lesson } = parseLesson('title: Long\nfeel: 1.7:1\nexercises: ["x.. ..x x.x ..."]\n', 'lesson');
  if (!lesson) throw new Error('the lesson has problems');
  const form = formOf(lesson, 'loop');
  const program = createProgram(lesson, { exercise: 1, form, layers: 9, bpm: Bpm(bpm) });
  const score = perform(lesson, { exercise: 1, form, bpm: Bpm(bpm) });
  const round = score.strokes.filter((each) => each.role !== 'count-in');
  const roundSeconds = score.durationSeconds - score.countInSeconds;
  let start = Number.NaN;
  let strokes = 0;
  let farthest = 0;
  const { tell, goOn } = await startThread((report) => {
    if (report.kind !== 'strokes') return;
    for (const { sample, pass, stroke } of report.strokes) {
      if (Number.isNaN(start)) start = sample;
      if (stroke.role === 'count-in') continue;
      // definition: the stroke of the score at t seconds of its round falls on sample t · rate, to the nearest
      const index = strokes % round.length;
      const seconds = (round[index]?.timeSeconds ?? Number.NaN) + pass * roundSeconds;
      farthest = Math.max(farthest, Math.abs(sample - start - seconds * RATE));
      strokes += 1;
    }
  });
  const kit = lightKit({ sampleRateHz: RATE, seed: KIT_SEED });
  const port = { onmessage: null as ((event: { data: unknown }) => void) | null };
  tell({ kind: 'kit port', port: port as unknown as MessagePort });
  for (const name of SOUND_NAMES) port.onmessage?.({ data: { name, sound: kit.sound(name) } });
  tell({
    ...{ kind: 'start', program, setUp: 'right-handed' },
    settings: { bpm: Bpm(bpm), click: false, mute: [], trimDb: {} },
  });
  const blocks = Math.ceil((MINUTES * 60 * RATE) / BLOCK);
  const minute = Math.ceil(blocks / MINUTES);
  for (let block = 0; block < minute; block += 1) goOn();
  const before = bytesInUse();
  for (let block = minute; block < blocks; block += 1) goOn();
  const grown = bytesInUse() - before;
  // definition: 30 minutes at 97 are 2910 quarter notes, a bar of count-in less
  expect(strokes).toBeGreaterThan((MINUTES * bpm - 4) * (round.length / 16) - round.length);
  // definition: half a sample is the nearest that a whole sample can be
  expect(farthest).toBeLessThanOrEqual(0.5 + FLOAT_SAMPLES);
  // measured: what the runtime itself keeps more of from one collection to the next, in bytes
  expect(grown).toBeLessThan(1_000_000);
}, 120_000);
