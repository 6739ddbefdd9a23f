import { Bpm } from '@shedbook/core';
import { expect, it } from 'vitest';
import { type HandsFreeEvent, startHandsFree, stepHandsFree } from './hands-free.ts';
import { ladderOf } from './ladder.ts';

const ladder = ladderOf({ startBpm: Bpm(72), goalBpm: Bpm(120), stepBpm: Bpm(8) });
const items = [
  { name: 'Exercise 4', ladder, fromBpm: 72, comfortableLoops: 5 },
  { name: 'Exercise 7', ladder, fromBpm: 96, comfortableLoops: 5 },
];

function run(events: readonly HandsFreeEvent[]) {
  return events.reduce((state, event) => stepHandsFree(items, state, event), startHandsFree(items));
}

const FIVE_CLEAN = Array.from({ length: 5 }, (): HandsFreeEvent => 'clean');

it('[CH13] after enough comfortable loops it moves on', () => {
  expect(run(FIVE_CLEAN)).toMatchObject({ item: 1, comfortable: 0, ladder: { bpm: 96 } });
});

it('[CH13] loops that are not clean do not count towards moving on', () => {
  expect(run(['clean', 'loose', 'stumble', 'clean', 'unheard', 'clean', 'clean']).item).toBe(0);
});

it('[CH13] it stays when told, and moves on again when told', () => {
  expect(run(['stay', ...FIVE_CLEAN, 'clean'])).toMatchObject({ item: 0, comfortable: 6 });
  expect(run(['stay', ...FIVE_CLEAN, 'go on', 'clean']).item).toBe(1);
});

it('[CH13] arriving at the goal moves on even before enough loops', () => {
  const short = [{ name: 'Fast', ladder, fromBpm: 120, comfortableLoops: 99 }];
  const after = FIVE_CLEAN.slice(0, 3).reduce(
    (state, event) => stepHandsFree(short, state, event),
    startHandsFree(short),
  );
  expect(after).toEqual({ item: 1, ladder: null, comfortable: 0, staying: false });
});

it('[CH13] one can go to the next at any time, and after the last nothing more happens', () => {
  const done = run(['next', 'next']);
  expect(done.item).toBe(2);
  expect(stepHandsFree(items, done, 'clean')).toEqual(done);
  expect(stepHandsFree(items, done, 'next')).toEqual(done);
});
