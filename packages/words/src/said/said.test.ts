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

it('[ST105] leaves alone what it does not know', () => {
  expect([german.say('"..y"'), german.find('an idea of its own')]).toEqual(['"..y"', null]);
});
