import { expect, it } from 'vitest';
import { sharedMakers } from '../../../../internal/testing/makers.ts';
import { summarise } from '../store/summary.ts';

const { imports } = sharedMakers;

/** How often something else has its turn while a lesson is summed up. */
async function turnsDuring(text: string): Promise<number> {
  let turns = 0;
  const turning = setInterval(() => {
    turns += 1;
  }, 1);
  await imports.sumUp(text, { of: 'a' });
  clearInterval(turning);
  return turns;
}

it('[SE5000] a long lesson is read beside everything else, a short one at once, both alike', async () => {
  const bars = (count: number) => `title: T\nexercises:\n${'  - x x x x\n'.repeat(count)}`;
  for (const text of [bars(10), `${bars(10)}${'#'.repeat(20_000)}`])
    expect(await imports.sumUp(text, { of: 'a' })).toEqual(summarise(text));
  expect(await turnsDuring(bars(10))).toBe(0);
  // lines that open a list and never close it take the reader of YAML a tenth of a second
  expect(await turnsDuring(`title: T\n${'\t- x: [\n'.repeat(4000)}`)).toBeGreaterThan(5);
});
