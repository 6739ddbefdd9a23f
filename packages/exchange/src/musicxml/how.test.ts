import { handsOf, type Lesson, parseLesson, perform } from '@shedbook/core';
import { expect, it } from 'vitest';
import { onceThrough } from '../../test/lessons.ts';
import { schemaValidator } from '../../test/schema.ts';
import { readMidi } from '../midi/read.ts';
import { writeMidi } from '../midi/write.ts';
import { readMusicXml } from './read.ts';
import { writeMusicXml } from './write.ts';

const lesson = parseLesson(
  `title: How
groove: {ride: {pattern: x x x x, how: tip}, bass: {pattern: x x x x, how: heel down}}
exercises:
  - {pattern: x . x ., how: centre, above: softly}
  - {pattern: x x . ., how: {ride: bell}, name: The bell}
sections:
  - {heading: The feet, exercises: [. . . x]}
`,
  'how.lesson.yaml',
).lesson as Lesson;

it('[EX2100] MusicXML says how voices are played, and reads no name out of it', () => {
  const text = writeMusicXml(lesson, { lessonText: null });
  const words = [...text.matchAll(/<words([^>]*)>([^<]*)/g)].map(([, style, said]) => [style?.trim(), said]);
  const italic = 'font-style="italic"';
  expect(words).toEqual([
    [italic, 'ride: tip'],
    [italic, 'bass drum: heel down'],
    [italic, 'snare: centre'],
    [italic, 'softly'],
    ['', 'The bell'],
    [italic, 'ride: bell'],
    ['', 'The feet'],
    [italic, 'ride: tip'],
  ]);
  // standard: MusicXML 4.0, stick-location-value: center, cymbal bell
  expect(text.match(/<stick-location>[^<]*/g)).toEqual([
    '<stick-location>center',
    '<stick-location>cymbal bell',
  ]);
  expect(schemaValidator()(text, 'how.musicxml')).toEqual([]);
  expect(readMusicXml(text).exercises.map(({ name }) => name)).toEqual([null, 'The bell', null]);
});

it('[EX2100] MIDI strikes the ride on its bell', () => {
  const keysOf = (exercise: number) => {
    const form = onceThrough(lesson.exercises[exercise - 1] as Lesson['exercises'][number], 1);
    const bytes = writeMidi(perform(lesson, { exercise, form }), { title: 'A', meter: lesson.meter });
    return new Set(readMidi(bytes).notes.map(({ key }) => key));
  };
  // standard: General MIDI 1, percussion keys: 51 ride cymbal 1, 53 ride bell
  expect([keysOf(1).has(51), keysOf(1).has(53)]).toEqual([true, false]);
  expect([keysOf(2).has(51), keysOf(2).has(53)]).toEqual([false, true]);
});

it('[EX2102] MusicXML brings the hands of every voice back', () => {
  const text = `title: Hands
groove: {hihat-foot: . x . x}
exercises:
  - {pattern: {snare: x. .x x. .., tom-high: .x x. .. xx}, sticking: {snare: R L R, tom-high: L R L R}}
`;
  const handed = parseLesson(text, 'hands.lesson.yaml').lesson as Lesson;
  const [back] = readMusicXml(writeMusicXml(handed, { lessonText: null })).exercises;
  const hands = back?.parts.map(({ voice }, part) => `${voice} ${handsOf(back, part)?.join('') ?? '-'}`);
  expect(hands?.toSorted()).toEqual(['hihat-foot -', 'snare RLR', 'tom-high LRLR']);
});
