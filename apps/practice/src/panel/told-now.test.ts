import { expect, it } from 'vitest';
import { isToldNow } from './told-now.ts';

type Is = Parameters<typeof isToldNow>[0][number]['judgement']['verdict']['is'];

/** Which of some rounds, from 1, are told when each is the last. */
function told(rounds: readonly Is[]): readonly number[] {
  const all = rounds.map((is) => ({ judgement: { verdict: { is } } }));
  return all.flatMap((_, index) => (isToldNow(all.slice(0, index + 1)) ? [index + 1] : []));
}

it('[ST140] is told after every round at first, then now and then, then on asking', () => {
  const clean = Array.from({ length: 10 }, (): Is => 'clean');
  // definition: the first three, then every fourth, none from the eighth on
  expect(told(clean)).toEqual([1, 2, 3, 4]);
  expect(told(['nearly', ...clean])).toEqual([1, 2, 3, 4, 5]);
  expect(told([...clean, 'not yet', 'clean'])).toEqual([1, 2, 3, 4, 11, 12]);
});
