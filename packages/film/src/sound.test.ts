import { FullScaleDb, Hertz, Seconds, seededRandom } from '@shedbook/core';
import {
  amplify,
  limitTruePeak,
  normaliseLoudness,
  RECORDING_LUFS,
  render,
  type SpokenWords,
  type StereoAudio,
} from '@shedbook/sound';
import { expect, it } from 'vitest';
import { lightKit } from '../../../internal/testing/kept-kit.mjs';
import { swingLesson } from '../../../internal/testing/played-notes.ts';
import { type FilmRequest, planScenes } from './scenes.ts';
import { findMastering, master, renderScene } from './sound.ts';

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

it('[FI5401] is as loud as recordings are, whose peaks come down by 2 dB at most', async () => {
  const sampleRateHz = Hertz(8000);
  const random = seededRandom('as loud');
  // Quiet noise with bursts as drums have them, longer than a part; softer bursts leave room for −16 LUFS.
  const burst = (most: number) =>
    Float32Array.from({ length: 45 * sampleRateHz }, (_, i) => {
      const since = (i % 4000) / 80;
      return (2 * random.next() - 1) * (0.05 + most * Math.exp(-since));
    });
  for (const most of [0.9, 0.05]) {
    const left = burst(most);
    const read = async (from: number, to: number) => {
      const channel = left.slice(from, to);
      return { left: channel, right: channel, sampleRateHz };
    };
    const kept = { samples: left.length, sampleRateHz, read };
    const whole = normaliseLoudness({ left, right: left, sampleRateHz }, RECORDING_LUFS);
    // definition: one rule for both; the meter's steps meet where parts do
    expect((await findMastering(kept, FullScaleDb(-1))).gainDb).toBeCloseTo(whole.gainDb, 1);
    expect(whole.limited).toBe(most > 0.1);
    expect(Math.abs(whole.loudnessLufs - RECORDING_LUFS) < 0.5).toBe(most < 0.1);
    // a codec that lets peaks grow is given room by less gain, not by softer accents
    const { gainDb } = await findMastering(kept, FullScaleDb(-2));
    expect(whole.gainDb - gainDb).toBeCloseTo(most > 0.1 ? 1 : 0, 1);
  }
});

it('[FI5400] says a word at the frame of every click, of the groove as of exercises, and nothing over a performance', () => {
  const lesson = swingLesson();
  const request: FilmRequest = {
    ...{ lesson, exercises: [1], form: null, tempi: [], framesPerSecond: RATE, buildUp: true },
    ...{ click: {}, countAloud: 'en' },
  };
  // A word that is one sample long, felt at once, where every recorded word begins.
  const samples = new Float32Array(13 * kit.sampleRateHz).fill(1);
  const words: SpokenWords = { language: 'en', samples, sampleRateHz: kit.sampleRateHz };
  const scenes = planScenes(request).filter((scene) => scene.kind !== 'title');
  expect(scenes.map(({ kind }) => kind)).toEqual(['groove', 'exercise']);
  for (const scene of scenes) {
    const clicks = scene.strokes.filter(({ voice }) => voice === 'click');
    const beats = scene.program.beats.length;
    // definition: a click on each beat of a bar of count-in and of every bar
    expect(clicks).toHaveLength(4 + beats);
    const spoken = joined([...renderScene(scene, { request }, { kit, recording: null, words })]);
    const plain = joined([...renderScene(scene, { request }, { kit, recording: null })]);
    const said = spoken.map((value, i) => value - (plain[i] as number));
    const start = (scene.leadFrames * kit.sampleRateHz) / RATE;
    for (const { timeSeconds } of clicks)
      expect(said[Math.round(start + timeSeconds * kit.sampleRateHz)]).toBeGreaterThan(0.1);
    // the first word begins before the first click, in the stillness before it
    const first = said.findIndex((value) => value > 0.1);
    expect(first).toBeLessThan(start);
    expect(first).toBeGreaterThan(start - 0.2 * kit.sampleRateHz);
  }
});
