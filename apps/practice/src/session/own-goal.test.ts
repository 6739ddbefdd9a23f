import { Bpm, parseLesson } from '@shedbook/core';
import type { Pack } from '@shedbook/pack';
import { expect, it } from 'vitest';
import { readGoal, withGoal } from './own-goal.ts';

const { lesson } = parseLesson('title: Swing\ntempo: {start: 80, goal: 120, step: 8}\n', 'lesson');
const pack = { lesson } as Pack;

it('[ST148] the own goal takes the place of the teacher\u2019s, also under the start', () => {
  expect(withGoal(pack, { words: '', bpm: Bpm(100) }).lesson.tempo).toMatchObject({
    startBpm: 80,
    goalBpm: 100,
  });
  expect(withGoal(pack, { words: '', bpm: Bpm(60) }).lesson.tempo).toMatchObject({
    startBpm: 60,
    goalBpm: 60,
  });
  expect(withGoal(pack, { words: 'a', bpm: null })).toBe(pack);
});

it('[ST148] a goal that was damaged is none', () => {
  for (const text of [null, '', '3', '{"bpm":1e9}', '{"words":7}', '[]']) {
    expect(readGoal(text)).toEqual({ words: '', bpm: null });
  }
  expect(readGoal('{"words":"relaxed","bpm":96}')).toEqual({ words: 'relaxed', bpm: 96 });
});
