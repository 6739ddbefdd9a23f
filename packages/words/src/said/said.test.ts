import { compose } from '@shedbook/composer';
import { parseLesson } from '@shedbook/core';
import { SAID_GERMAN, Translator } from '@shedbook/words';
import { expect, it } from 'vitest';

const german = new Translator(SAID_GERMAN);

it('[ST105] has the same places to fill in every phrase and its translation', () => {
  const places = (text: string) => (text.match(/\{\w+[*!~]?\}/g) ?? []).toSorted();
  expect(SAID_GERMAN.phrases.length).toBeGreaterThan(20);
  for (const [english, translated] of SAID_GERMAN.phrases) {
    expect(places(translated), english).toEqual(places(english));
  }
});

it('[ST105] says every note of a composed page in German', () => {
  const asked = [
    'vocabulary: []',
    'vocabulary: [x..]\ncompose: {count: 3}',
    'vocabulary: [x.., ..x, ..., x.x, xxx]\ncompose: {count: 2, limits: {start: [.xx], beats: {"9": [x..]}}}',
    'vocabulary: [x.., ..x, ..., x.x, xxx]\ncompose: {count: 2}',
  ];
  const notes = asked.flatMap((text) => {
    const { lesson } = parseLesson(`title: a\n${text}\n`, 'lesson');
    return lesson ? compose(lesson, {}).report.notes : [];
  });
  expect(notes.length).toBeGreaterThan(3);
  expect([...new Set(notes.filter((text) => german.find(text) === null))]).toEqual([]);
});

it('[ST105] leaves alone what it does not know', () => {
  expect([german.say('"..y"'), german.find('an idea of its own')]).toEqual(['"..y"', null]);
});
