import { expect, it } from 'vitest';
import { goodFiles, inputOf } from './kinds.mjs';
import { clearUp, READERS } from './read.mjs';

/** Inputs of each kind; the bench reads a hundred thousand. */
const INPUTS = 8;

it('[HO2] hostile files of every kind are read or refused, and none is our fault', async () => {
  const good = await goodFiles();
  const kinds = Object.keys(good) as (keyof typeof good)[];
  const ours: string[] = [];
  let accepted = 0;
  for (const kind of kinds) {
    expect(await READERS[kind](good[kind]), kind).toBe('accepted');
    for (let seed = 1; seed <= INPUTS; seed += 1) {
      const outcome = await READERS[kind](inputOf(good, kind, seed)).catch(
        (error: Error) => `${error.stack}`,
      );
      if (outcome === 'accepted') accepted += 1;
      else if (outcome !== 'refused') ours.push(`${kind} ${seed}: ${outcome}`);
    }
  }
  clearUp();
  expect(inputOf(good, 'midi', 1)).toEqual(inputOf(good, 'midi', 1));
  expect(ours).toEqual([]);
  // definition: inputs keep their structure, so that a part of them gets past every check
  expect(accepted).toBeGreaterThan(0.2 * kinds.length * INPUTS);
});
