import { expect, it } from 'vitest';
import { readHearingSettings } from './hearing-settings.ts';

it('[JU2] settings that were kept with the former names of levels are read', () => {
  // definition: as practice pages kept them before levels had one scale
  const kept = '{"level":"growing","handsFree":true,"comfortableLoops":8,"keepAll":false}';
  expect(readHearingSettings(kept)).toEqual({
    ...{ level: 'intermediate', handsFree: true, comfortableLoops: 8, keepAll: false },
  });
  const levels = ['first steps', 'fluent', 'advanced', 'unknown', 3].map(
    (level) => readHearingSettings(JSON.stringify({ level })).level,
  );
  expect(levels).toEqual(['beginner', 'advanced', 'advanced', 'beginner', 'beginner']);
  expect([readHearingSettings(''), readHearingSettings('null')].map(({ level }) => level)).toEqual([
    'beginner',
    'beginner',
  ]);
});
