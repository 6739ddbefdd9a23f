import { exerciseLabel, type Lesson, parseLesson } from '@shedbook/core';
import { expect, it } from 'vitest';
import { LABELS_ANEW, NUMBERED_ANEW } from '../../../../internal/testing/numbered-anew.ts';
import { readMusicXml } from './read.ts';
import { writeMusicXml } from './write.ts';

it('[EX7004] numbers that begin anew stand in their boxes with their letter, and come back', () => {
  const written = writeMusicXml(parseLesson(NUMBERED_ANEW, 'anew').lesson as Lesson);
  // standard: MusicXML 4.0, rehearsal: what stands in the box is a text
  const boxes = [...written.matchAll(/<rehearsal enclosure="square">([^<]*)</g)].map(([, text]) => text);
  expect(boxes).toEqual(LABELS_ANEW);
  const { exercises } = readMusicXml(written);
  expect(exercises.map(({ number }) => exerciseLabel(number))).toEqual(LABELS_ANEW);
});
