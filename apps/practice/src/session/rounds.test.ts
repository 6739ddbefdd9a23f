import { Bpm, type LoopVerdict } from '@shedbook/core';
import { expect, it } from 'vitest';
import { atBar, goneBy, NO_ROUNDS, type Rounds, type Spoken, speak } from './rounds.ts';

type Step = LoopVerdict | 'round' | { readonly bar: number };

const BARS = 4;

/** Everything that was told in some steps, and the last answer. */
function run(steps: readonly Step[]) {
  const told: LoopVerdict[] = [];
  let rounds: Rounds = NO_ROUNDS;
  let last: Spoken | null = null;
  for (const step of steps) {
    if (step === 'round') {
      const gone = goneBy(rounds, Bpm(96));
      rounds = gone.rounds;
      if (gone.told) told.push(gone.told);
    } else if (typeof step === 'object') {
      rounds = atBar(rounds, step.bar, BARS);
    } else {
      const answer = speak(rounds, step);
      rounds = answer.rounds;
      last = answer.spoken;
      if (last.kind === 'told') told.push(last.verdict);
    }
  }
  return { told, last };
}

const presses = (count: number) => Array.from({ length: count }, (): Step => 'clean');

it('[ST113] a round is told once, however often the student says so, and none before it went by', () => {
  // the story: 21 presses in two seconds, nothing sounding
  expect(run(presses(21))).toEqual({ told: [], last: { kind: 'too early', why: 'no round yet' } });
  expect(run([{ bar: 1 }, ...presses(3)]).told).toEqual([]);
  expect(run([{ bar: 1 }, 'round', { bar: 1 }, ...presses(21)])).toEqual({
    told: ['clean'],
    last: { kind: 'too early', why: 'told already' },
  });
  expect(run(['round', 'clean', 'round', 'stumble', 'round', 'clean']).told).toEqual([
    'clean',
    'stumble',
    'clean',
  ]);
});

it('[ST113] what is said in the last bar of a round counts when the round has gone by, the last word of it', () => {
  expect(run([{ bar: 4 }, 'clean'])).toEqual({ told: [], last: { kind: 'waits' } });
  expect(run([{ bar: 4 }, 'clean', 'stumble', 'round', { bar: 1 }, 'clean']).told).toEqual(['stumble']);
  // In the last bar of the next round the one before is spoken of first, where nobody has yet.
  expect(run(['round', { bar: 4 }, 'clean', 'clean', 'round']).told).toEqual(['clean', 'clean']);
});
