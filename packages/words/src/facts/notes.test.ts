import { compose } from '@shedbook/composer';
import { parseLesson } from '@shedbook/core';
import { expect, it } from 'vitest';
import { ENGLISH } from '../english/english.ts';
import { GERMAN } from '../german/german.ts';
import { say } from './say.ts';

function notesOn(text: string) {
  const { lesson } = parseLesson(`title: a\n${text}\n`, 'lesson');
  if (!lesson) throw new Error('the lesson has problems');
  return compose(lesson, {}).report.notes.map((note) => [say(note, ENGLISH), say(note, GERMAN)]);
}

it('[WO1] what a composed page could not have is said with its moves, numbers and bounds', () => {
  expect(notesOn('vocabulary: []')).toEqual([
    [
      'The vocabulary is empty: add cells such as "..x" to it.',
      'Der Wortschatz ist leer: Zellen wie „..x“ hineintun.',
    ],
  ]);
  // definition: one cell makes one bar
  expect(notesOn('vocabulary: [x..]\ncompose: {count: 3}')).toEqual([
    [
      '3 exercises asked for, but the vocabulary and its limits leave only 1 different.',
      '3 Übungen verlangt, aber Wortschatz und Grenzen lassen nur 1 verschiedene zu.',
    ],
  ]);
  const limits = '{start: [.xx], beats: {"9": [x..]}}';
  expect(notesOn(`vocabulary: [x.., ..x]\ncompose: {count: 2, limits: ${limits}}`).slice(0, 2)).toEqual([
    [
      'The limits name the cell ".xx", which is not in the vocabulary.',
      'Die Grenzen nennen die Zelle „.xx“, die nicht im Wortschatz ist.',
    ],
    [
      'The limits name beat 9, but a bar of 4/4 has 4.',
      'Die Grenzen nennen Schlag 9, aber ein 4/4-Takt hat 4.',
    ],
  ]);
  // definition: five cells have 25 moves, four in a bar: at least seven bars
  const [[english, german] = []] = notesOn('vocabulary: [x.., ..x, ..., x.x, xxx]\ncompose: {count: 2}');
  expect(english).toMatch(
    /^Moves not on the page: (\S+ to \S+, )+\S+ to \S+; all of them need at least 7 exercises\.$/,
  );
  expect(german).toMatch(
    /^Wechsel, die auf der Seite fehlen: (\S+ zu \S+, )+\S+ zu \S+; für alle braucht es mindestens 7 Übungen\.$/,
  );
});

it('[WO1] steps in difficulty are said to a tenth of a point', () => {
  const step = { fact: 'large-step', step: 2, bound: 1.25 } as const;
  expect(say(step, ENGLISH)).toBe('The largest step in difficulty is 2.0, above 1.3.');
  expect(say(step, GERMAN)).toBe('Der größte Schritt in der Schwierigkeit ist 2,0, über 1,3.');
});
