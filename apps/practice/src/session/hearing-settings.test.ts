import { expect, it, onTestFinished, vi } from 'vitest';
import { rememberedOwn, rememberOwn } from '../kept/students.ts';
import { readHearingSettings, takeSetLevel } from './hearing-settings.ts';

it('[JU2] settings that were kept with the former names of levels are read', () => {
  // definition: as practice pages kept them before levels had one scale
  const kept = '{"level":"growing","handsFree":true,"comfortableLoops":8,"keepAll":false}';
  expect(readHearingSettings(kept)).toEqual({
    ...{ level: 'intermediate', handsFree: true, comfortableLoops: 8, keepAll: false, setLevel: null },
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

it('[ST1900] the level that the teacher sets reaches the page, and what the student chooses since stays', () => {
  const kept = new Map<string, string>();
  vi.stubGlobal('window', {
    localStorage: {
      getItem: (name: string) => kept.get(name) ?? null,
      setItem: (name: string, value: string) => kept.set(name, value),
    },
  });
  onTestFinished(() => {
    vi.unstubAllGlobals();
  });
  const settings = () => readHearingSettings(rememberedOwn('hearing') ?? '');
  takeSetLevel('advanced');
  expect(settings()).toMatchObject({ level: 'advanced', handsFree: false });
  rememberOwn('hearing', JSON.stringify({ ...settings(), level: 'intermediate', handsFree: true }));
  takeSetLevel('advanced');
  expect(settings()).toMatchObject({ level: 'intermediate', handsFree: true });
  takeSetLevel('beginner');
  expect(settings()).toMatchObject({ level: 'beginner', handsFree: true });
});
