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
  return events.reduce((step, event) => stepHandsFree(items, step.state, event), {
    state: startHandsFree(items),
    says: '',
  });
}

const FIVE_CLEAN = Array.from({ length: 5 }, (): HandsFreeEvent => 'clean');

it('[CH13] after enough comfortable loops it moves on and says so', () => {
  const step = run(FIVE_CLEAN);
  expect(step.state).toMatchObject({ item: 1, comfortable: 0, ladder: { bpm: 96 } });
  expect(step.says).toBe('2 clean loops at 80; 1 more to climb. Next: Exercise 7 at 96.');
});

it('[CH13] loops that are not clean do not count towards moving on', () => {
  expect(run(['clean', 'loose', 'stumble', 'clean', 'unheard', 'clean', 'clean']).state.item).toBe(0);
});

it('[CH13] it stays when told, and moves on again when told', () => {
  const stayed = run(['stay', ...FIVE_CLEAN, 'clean']);
  expect(stayed.state).toMatchObject({ item: 0, comfortable: 6 });
  expect(stayed.says).toContain('Staying with Exercise 4, as you asked.');
  expect(run(['stay', ...FIVE_CLEAN, 'go on', 'clean']).state.item).toBe(1);
});

it('[CH13] arriving at the goal moves on even before enough loops', () => {
  const short = [{ name: 'Fast', ladder, fromBpm: 120, comfortableLoops: 99 }];
  const step = FIVE_CLEAN.slice(0, 3).reduce((last, event) => stepHandsFree(short, last.state, event), {
    state: startHandsFree(short),
    says: '',
  });
  expect(step).toEqual({
    state: { item: 1, ladder: null, comfortable: 0, staying: false },
    says: '3 clean loops at 120: that is the goal. That was the last one.',
  });
});

it('[CH13] one can go to the next at any time, and after the last nothing more happens', () => {
  const done = run(['next', 'next']);
  expect(done.state.item).toBe(2);
  expect(stepHandsFree(items, done.state, 'clean')).toEqual({
    state: done.state,
    says: 'All items are played.',
  });
  expect(stepHandsFree(items, done.state, 'next').state).toEqual(done.state);
});
