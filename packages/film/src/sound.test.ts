import { spawnSync } from 'node:child_process';
import { FullScaleDb, Hertz, Seconds, seededRandom } from '@shedbook/core';
import { energyOf, mean, powerToDb } from '@shedbook/signal';
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
import { findMastering, type KeptSound, master, renderScene } from './sound.ts';

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

/** Both channels of blocks that follow each other. */
function wholeOf(blocks: readonly StereoAudio[]): StereoAudio {
  const right = blocks.map((block) => ({ ...block, left: block.right }));
  return { left: joined(blocks), right: joined(right), sampleRateHz: kit.sampleRateHz };
}

function keep({ left, right, sampleRateHz }: StereoAudio): KeptSound {
  const read = async (from: number, to: number) => ({
    ...{ left: left.slice(from, to), right: right.slice(from, to), sampleRateHz },
  });
  return { samples: left.length, sampleRateHz, read };
}

/** What FFmpeg's meter says of sound: integrated loudness in LUFS and true peak in dBTP. */
function metered({ left, right, sampleRateHz }: StereoAudio): readonly [number, number] {
  const input = Float32Array.from({ length: 2 * left.length }, (_, i) => (i % 2 ? right : left)[i >> 1] ?? 0);
  const raw = ['-f', 'f32le', '-ar', `${sampleRateHz}`, '-ac', '2', '-i', '-'];
  const meter = [...raw, '-af', 'ebur128=peak=true:framelog=verbose', '-f', 'null', '-'];
  const { stderr } = spawnSync('ffmpeg', ['-hide_banner', ...meter], { input, maxBuffer: 1 << 28 });
  const last = (pattern: RegExp) => Number([...`${stderr}`.matchAll(pattern)].at(-1)?.[1]);
  return [last(/I: +([-\d.]+) LUFS/g), last(/Peak: +([-\d.]+) dBFS/g)];
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
  const mastering = { gainDb: 8, ceilingDbtp: FullScaleDb(-2) };
  const parts: StereoAudio[] = [];
  for await (const part of master(keep(audio), mastering)) parts.push(part);
  expect(parts.length).toBeGreaterThan(2);
  const whole = limitTruePeak(amplify(audio, mastering.gainDb), mastering.ceilingDbtp).left;
  const apart = joined(parts).map((value, i) => Math.abs(value - (whole[i] as number)));
  // A thousandth of full scale: what the limiter still remembers from more than a second before.
  expect(apart.reduce((most, value) => Math.max(most, value), 0)).toBeLessThan(1e-3);
});

it('[FI5401] is as loud as recordings are, and no stroke loses more than 1.5 dB to the limiter', async () => {
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
    const audio = { left, right: left, sampleRateHz };
    const kept = keep(audio);
    const whole = normaliseLoudness(audio, RECORDING_LUFS);
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

it('[FI7200] is at −16 LUFS under −1 dBTP with a swing, and each limb is as loud beside the others as it was struck', async () => {
  const lesson = swingLesson();
  const request: FilmRequest = {
    ...{ lesson, exercises: [1], form: null, tempi: [], framesPerSecond: RATE, buildUp: true },
  };
  const scenes = planScenes(request);
  const blocks = scenes.map((scene) => [...renderScene(scene, { request }, { kit, recording: null })]);
  const plain = wholeOf(blocks.flat());
  const parts: StereoAudio[] = [];
  for await (const part of master(keep(plain), await findMastering(keep(plain), FullScaleDb(-1.2))))
    parts.push(part);
  const mastered = wholeOf(parts);
  // library: FFmpeg's meter, ebur128 (EBU R 128); definition: −16 LUFS within 0.5 LU, −1 dBTP
  const [lufs, peak] = metered(mastered);
  expect(Math.abs(lufs + 16)).toBeLessThanOrEqual(0.5);
  expect(peak).toBeLessThanOrEqual(-1);
  const rate = kit.sampleRateHz;
  const energy = ({ left, right }: StereoAudio, at: number) =>
    energyOf(left.subarray(at, at + 0.1 * rate)) + energyOf(right.subarray(at, at + 0.1 * rate));
  const changes = new Map<string, readonly number[]>();
  for (const scene of scenes.filter((each) => each.kind !== 'title'))
    for (const { voice, timeSeconds } of scene.strokes) {
      const at = Math.round(rate * ((scene.startFrame + scene.leadFrames) / RATE + timeSeconds));
      const change = powerToDb(energy(mastered, at) / energy(plain, at));
      changes.set(voice, [...(changes.get(voice) ?? []), change]);
    }
  expect([...changes.keys()].toSorted()).toEqual(['bass', 'click', 'hihat-foot', 'ride', 'snare']);
  const means = [...changes.values()].map(mean);
  expect(Math.max(...means) - Math.min(...means)).toBeLessThan(1.5);
});
