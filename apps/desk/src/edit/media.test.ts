import { parseLesson } from '@shedbook/core';
import { expect, it } from 'vitest';
import { findMedium } from '../shared/find-medium.ts';
import { setMedia } from './media.ts';
import { withMedia } from './said.ts';

const TEXT =
  'title: The grip\nexercises:\n  - x x x x\nsections:\n  - heading: Feet # slowly\n    exercises:\n      - . x . x\n';
const GRIP = { path: 'media/a.png', says: 'The grip' };
const SLOW = { path: 'media/b.mp3', says: null };

function read(text: string) {
  const { lesson } = parseLesson(text, 'lesson');
  if (!lesson) throw new Error(text);
  return lesson;
}

it('[ST4206] files go beside the lesson, a section, exercises outside of one, and an exercise, and away again', () => {
  const lesson = setMedia(TEXT, null, [GRIP, SLOW]);
  expect(read(lesson).media).toEqual([GRIP, SLOW]);
  const section = setMedia(TEXT, 1, [SLOW]);
  expect(read(section).sections.map(({ media }) => media)).toEqual([undefined, [SLOW]]);
  expect(section).toContain('Feet # slowly');
  expect(section).toContain('media: media/b.mp3');
  expect(read(setMedia(section, 1, []))).toEqual(read(TEXT));
  const opening = setMedia(TEXT, 0, [GRIP]);
  expect(read(opening).sections.map(({ media }) => media)).toEqual([[GRIP], undefined]);
  expect(setMedia(TEXT, 0, [])).toBe(TEXT);
  const [exercise] = read(TEXT).exercises;
  if (!exercise) throw new Error(TEXT);
  expect(withMedia({ ...withMedia(exercise, [GRIP]), number: 1 }, [])).toEqual(exercise);
});

it('[ST4206] a file is asked for where the server keeps it, and nowhere else', () => {
  expect(findMedium('media/a.png')?.href).toBe('/api/media/a.png');
  for (const path of ['pictures/a.png', 'media/x/a.png', '../media/a.png'])
    expect(findMedium(path)).toBeNull();
});
