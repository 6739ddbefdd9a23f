import { Bpm, LOOP_VERDICTS, type LoopVerdict } from '@shedbook/core';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { climb, type LadderState, ladderOf, startLadder } from './ladder.ts';

const rule = ladderOf({ startBpm: Bpm(72), goalBpm: Bpm(120), stepBpm: Bpm(8) });

function run(verdicts: readonly LoopVerdict[], from = startLadder(rule)): LadderState {
  return verdicts.reduce((state, verdict) => climb(state, verdict, rule).state, from);
}

it('[CH10] three clean loops climb one step', () => {
  const two = run(['clean', 'clean']);
  expect(two).toMatchObject({ bpm: 72, clean: 2 });
  // definition: start 72, step 8
  expect(climb(two, 'clean', rule)).toEqual({
    state: { bpm: Bpm(80), clean: 0, loose: 0, arrived: false },
    move: 'up',
  });
});

it('[CH10] clean loops have to be in a row', () => {
  expect(run(['clean', 'clean', 'loose', 'clean', 'clean'])).toMatchObject({ bpm: 72, clean: 2 });
});

it('[CH10] the last step ends on the goal, and clean loops there arrive', () => {
  const uneven = ladderOf({ startBpm: Bpm(100), goalBpm: Bpm(115), stepBpm: Bpm(10) }, 1);
  const first = climb(startLadder(uneven), 'clean', uneven);
  const second = climb(first.state, 'clean', uneven);
  const third = climb(second.state, 'clean', uneven);
  // definition: 100, 110, then the goal 115 rather than 120
  expect([first.state.bpm, second.state.bpm, third.state.bpm]).toEqual([110, 115, 115]);
  expect(third).toMatchObject({ move: 'arrived' });
});

it('[CH11] a stumble comes down one step; on the first rung it stays', () => {
  const up = startLadder(rule, 96);
  expect(climb(up, 'stumble', rule)).toMatchObject({
    state: { bpm: Bpm(88), clean: 0 },
    move: 'down',
  });
  expect(climb(startLadder(rule), 'stumble', rule)).toMatchObject({ state: { bpm: 72 }, move: 'stay' });
});

it('[CH11] one loose loop stays, four in a row come down', () => {
  const up = startLadder(rule, 96);
  expect(run(['loose', 'loose', 'loose'], up).bpm).toBe(96);
  expect(run(['loose', 'loose', 'loose', 'loose'], up).bpm).toBe(88);
  expect(run(['loose', 'loose', 'loose', 'clean', 'loose'], up).bpm).toBe(96);
});

it('[CH11] a loop that was not heard changes nothing', () => {
  const state = run(['clean', 'loose', 'clean']);
  expect(climb(state, 'unheard', rule).state).toEqual(state);
});

it('[CH12] the ladder never leaves its bounds, whatever happens and wherever it starts', () => {
  const bpm = fc.integer({ min: 20, max: 400 }).map(Bpm);
  fc.assert(
    fc.property(
      fc.record({ startBpm: bpm, goalBpm: bpm, stepBpm: fc.integer({ min: 1, max: 60 }).map(Bpm) }),
      bpm,
      fc.array(fc.constantFrom(...LOOP_VERDICTS), { maxLength: 80 }),
      (tempo, from, verdicts) => {
        const ladder = ladderOf(tempo, 2);
        let state = startLadder(ladder, from);
        for (const verdict of verdicts) {
          const before = state.bpm;
          state = climb(state, verdict, ladder).state;
          expect(state.bpm).toBeLessThanOrEqual(tempo.goalBpm);
          expect(state.bpm).toBeGreaterThanOrEqual(Math.min(tempo.startBpm, tempo.goalBpm));
          expect(Math.abs(state.bpm - before)).toBeLessThanOrEqual(tempo.stepBpm);
        }
      },
    ),
    { numRuns: 300, seed: 3 },
  );
});

it('[CH12] better loops never lead to a lower rung', () => {
  const worse = fc.array(fc.constantFrom<LoopVerdict>('stumble', 'loose', 'clean'), { maxLength: 40 });
  fc.assert(
    fc.property(worse, fc.nat(40), (verdicts, at) => {
      const better = verdicts.map((verdict, i) => (i >= at ? 'clean' : verdict));
      expect(run(better).bpm).toBeGreaterThanOrEqual(run(verdicts).bpm);
    }),
    { numRuns: 300, seed: 4 },
  );
});
