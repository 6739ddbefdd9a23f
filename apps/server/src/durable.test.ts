import { expect, it } from 'vitest';
import { killRounds } from '../../../internal/testing/hard/kill-rounds.mjs';
import { chance } from '../../../internal/testing/hard/random.mjs';
import { temporaryFolder } from '../test/temporary.ts';

it('[SE7] loses nothing that it acknowledged, killed again and again under several writers', async () => {
  const { next } = chance(7);
  // the bench of hard use kills it two hundred times
  const told = await killRounds({ dataDir: temporaryFolder(), rounds: 3, writers: 3, next });
  expect(told.lost).toEqual([]);
  expect(told.rounds).toBe(3);
  expect(told.acknowledged).toBeGreaterThan(3 * 3);
});
