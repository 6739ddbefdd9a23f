import { compose } from '@shedbook/composer';
import { type InputProblem, parseLesson } from '@shedbook/core';
import { SAID_GERMAN, Translator } from '@shedbook/words';
import { expect, it } from 'vitest';

const german = new Translator(SAID_GERMAN);

/** Lessons in which something is wrong, each in its own way. */
const FAULTY = [
  'title: [',
  'title: a\n\tmeter: 4/4\n',
  'title: a\ntitle: b\n',
  'title: a: b\n',
  'title: a\nmeter\ntempo: 80\n',
  'title: "a\n',
  'title: *x\n',
  '- a\n',
  'title: ""\n',
  'title: 5\nby: []\nversion: 9\n',
  'title: a\nversion: x\nmetre: 4/4\nzebra: 1\n',
  'title: a\nmeter: five\nfeel: swingy\ntempo: fast\n',
  'title: a\ntempo: {start: 120, goal: 80}\n',
  'title: a\ntempo: {start: 1000}\n',
  'title: a\nsetUp: lefthanded\nlead: rode\ncomping: 3\n',
  'title: a\ngroove: {ride: 1, bass: {pattern: x x x x, level: loud}, snare: {level: 3}}\n',
  'title: a\ngroove: {bass: x x x x, ride: "x x"}\nlead: hihat\n',
  'title: a\ngroove: []\nlimbs: {ride: nose}\nbalance: {ride: 99}\n',
  'title: a\nexercises:\n  - x.. ..y x.x ...\n  - xxxxx x x x\n  - x x x\n  - x x x x x\n  - ""\n  - 3\n',
  'title: a\nexercises:\n  - "x x x x |"\n  - {}\n  - { pattern: {} }\n  - { pattern: x x x x, sticking: R Q L }\n',
  'title: a\nexercises:\n  - { pattern: x x x x, sticking: R L }\n  - { pattern: { snare: x x x x, bass: "x x x x | x x x x" } }\n',
  'title: a\nexercises:\n  - x x x x\n  - x x x x\n  - o x x x\n  - 1 x x x\n',
  'title: a\nexercises: 3\nvocabulary: 3\nforms: 3\nlayers: 3\nsheet: 3\n',
  'title: a\nvocabulary: [..x, ..x, "nope nope", {cell: 3}]\nexercises: [xx. ... ... ...]\n',
  'title: a\nforms: {x: {sections: []}, y: {sections: 3}, z: {sections: [{bars: 3}]}}\n',
  'title: a\nforms: {x: {sections: [{pattern: 4, time: 2}]}, y: {repeat: x, sections: [{}]}}\n',
  'title: a\nforms: {x: {sections: [{pattern: 2, ending: kazoo}, {pattern: 2, ending: {voices: crash, beat: 9, cell: ...}}]}}\n',
  'title: a\nlayers: [ride, kazoo, []]\nsheet: {paper: A5, scale: 9, counts: yes, staff: wide}\n',
  'title: a\ncompose: {count: -1, limits: {strokes: {least: 3, most: 1}, beats: {x: []}, start: [q]}}\n',
  'title: a\ngroove: {ride: x x x x, hihat: x x x x}\ncomping: tom-high\nexercises: ["{ snare: x, tom-high: x }"]\n',
  'title: a\ngroove: { ride: x x x x }\nexercises:\n  - { pattern: { snare: x . . ., tom-high: x . . . } }\n',
];

function said({ found, expected, repair }: InputProblem): readonly string[] {
  return [found, expected, ...(repair ? [repair] : [])];
}

it('[ST105] has the same places to fill in every phrase and its translation', () => {
  const places = (text: string) => (text.match(/\{\w+[*!~]?\}/g) ?? []).toSorted();
  for (const [english, translated] of SAID_GERMAN.phrases) {
    expect(places(translated), english).toEqual(places(english));
  }
});

it('[ST105] says every problem of a lesson in German', () => {
  const problems = FAULTY.flatMap((text) => parseLesson(text, 'lesson').problems);
  expect(problems.length).toBeGreaterThan(60);
  const left = problems.flatMap(said).filter((text) => german.find(text) === null);
  expect([...new Set(left)]).toEqual([]);
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
