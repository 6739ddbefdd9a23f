import { FullScaleDb, Hertz, Seconds, seededRandom } from '@shedbook/core';
import { amplify, limitTruePeak, render, type StereoAudio } from '@shedbook/sound';
import { expect, it } from 'vitest';
import { lightKit } from '../../../internal/testing/kept-kit.mjs';
import { swingLesson } from '../../../internal/testing/played-notes.ts';
import { type FilmRequest, planScenes } from './scenes.ts';
import { master, renderScene } from './sound.ts';

const kit = lightKit({ sampleRateHz: Hertz(44_100) });
const RATE = 30;

function joined(blocks: readonly StereoAudio[]): Float32Array {
  const whole = new Float32Array(blocks.reduce((sum, { left }) => sum + left.length, 0));
  let at = 0;
  for (const { left } of blocks) {
    whole.set(left, at);
    at += left.length;
  }
  return whole;
}

it('[FI2004] renders a scene bit by bit, and all bits together are the scene as it sounds whole', () => {
  const lesson = swingLesson();
  const request: FilmRequest = {
    ...{ lesson, exercises: [1], form: null, tempi: [], framesPerSecond: RATE, buildUp: false },
  };
  const scene = planScenes(request)[1];
  if (scene?.kind !== 'exercise') throw new Error('no exercise');
  const blocks = [...renderScene(scene, { request }, { kit, recording: null })];
  // definition: memory does not grow with a scene: no bit is longer than two seconds
  expect(Math.max(...blocks.map(({ left }) => left.length))).toBeLessThan(2 * kit.sampleRateHz);
  const bits = joined(blocks);
  expect(bits).toHaveLength((scene.frames * kit.sampleRateHz) / RATE);
  const { strokes, durationSeconds } = scene;
  const whole = render({ strokes, durationSeconds }, { kit, setUp: lesson.setUp, seed: 1 }).left;
  const start = (scene.leadFrames * kit.sampleRateHz) / RATE;
  const [from, to] = [0.01 * kit.sampleRateHz, durationSeconds * kit.sampleRateHz].map(Math.round);
  const apart = whole
    .subarray(from, to)
    .map((value, i) => Math.abs(value - (bits[start + (from as number) + i] as number)));
  expect(apart.reduce((most, value) => Math.max(most, value), 0)).toBeLessThan(1e-6);
});

it('[FI2004] masters sound in parts that meet without a seam', async () => {
  const sampleRateHz = Hertz(8000);
  const random = seededRandom('master');
  const seconds = Seconds(45);
  // Loud noise whose peaks must be held down, where parts meet as well.
  const left = Float32Array.from({ length: seconds * sampleRateHz }, () => random.next() - 0.5);
  const audio = { left, right: left.slice(), sampleRateHz };
  const kept = {
    samples: left.length,
    sampleRateHz,
    read: async (from: number, to: number) => ({
      ...{ left: audio.left.slice(from, to), right: audio.right.slice(from, to), sampleRateHz },
    }),
  };
  const mastering = { gainDb: 8, ceilingDbtp: FullScaleDb(-2) };
  const parts: StereoAudio[] = [];
  for await (const part of master(kept, mastering)) parts.push(part);
  expect(parts.length).toBeGreaterThan(2);
  const whole = limitTruePeak(amplify(audio, mastering.gainDb), mastering.ceilingDbtp).left;
  const apart = joined(parts).map((value, i) => Math.abs(value - (whole[i] as number)));
  // A thousandth of full scale: what the limiter still remembers from more than a second before.
  expect(apart.reduce((most, value) => Math.max(most, value), 0)).toBeLessThan(1e-3);
});
