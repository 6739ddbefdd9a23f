import type { LeadDb } from '@shedbook/core';
import { expect, it } from 'vitest';
import type { Place } from './places.ts';
import { softPlaces } from './soft-places.ts';

const at = (levelDb: number) => ({ expected: { stroke: { levelDb: levelDb as LeadDb } } }) as Place;

it('[LI7800] ghost notes are those 12 dB under the plain strokes of their voice, and no plain ones beside accents', () => {
  const [plain, accent, ghost] = [at(0), at(6), at(-12)];
  // definition: GLOSSARY, an accent is 6 dB over a plain stroke and a ghost note 12 dB under it
  expect([...softPlaces([plain, ghost, accent])]).toEqual([ghost]);
  expect([...softPlaces([plain, accent])]).toEqual([]);
  expect([...softPlaces([ghost])]).toEqual([]);
});
