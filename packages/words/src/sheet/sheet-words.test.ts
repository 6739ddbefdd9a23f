import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { formNamed, parseLesson } from '@shedbook/core';
import { createFonts, FONT_MODULES, layOutSheet, loadEngraver } from '@shedbook/engrave';
import { expect, it } from 'vitest';
import { LANGUAGE_TAGS } from '../language/languages.ts';
import { SHEET_WORDS } from './sheet-words.ts';

const LESSON = `title: First swing
feel: "1.8:1"
tempo: {start: 80, goal: 120}
setUp: left-handed
forms: {Warm up: {sections: [{time: 1}, {pattern: 1, ending: {beat: 2, cell: ".x.", voices: snare}}], repeat: 3}}
exercises:
  - {pattern: "x.. ..g X.x ...", sticking: RLRL}
`;

function lesson() {
  const read = parseLesson(LESSON, 'first.lesson.yaml');
  if (!read.lesson) throw new Error(JSON.stringify(read.problems));
  return read.lesson;
}

it('[WO9] a form is told in a sentence of the language', () => {
  const told = ['four and two', 'Warm up'].map((name) => {
    const form = formNamed(lesson(), name);
    if (!form) throw new Error(`no form ${name}`);
    return LANGUAGE_TAGS.map((tag) => `${SHEET_WORDS[tag].formName(name)}: ${SHEET_WORDS[tag].form(form)}`);
  });
  expect(told).toEqual([
    [
      'four and two: 4 bars of the pattern, the last ending on rim shot + crash on the last triplet of 4; then 2 bars of time; all of it twice.',
      'vier und zwei: 4 Takte Pattern, am Ende des letzten Rimshot + Crash auf der letzten Triole der 4; dann 2 Takte Time; das Ganze zweimal.',
    ],
    [
      'Warm up: 1 bar of time; then 1 bar of the pattern, ending on snare on the middle triplet of 2; all of it 3 times.',
      'Warm up: 1 Takt Time; dann 1 Takt Pattern, am Ende Snare auf der mittleren Triole der 2; das Ganze 3-mal.',
    ],
  ]);
});

it('[WO3500] a form says where it clicks', () => {
  const { lesson: read } = parseLesson(
    'title: T\nforms: {thin: {sections: [{pattern: 2, click: [2, 4]}, {rest: 1, click: none}]}}\n',
    'x.lesson.yaml',
  );
  const form = read && formNamed(read, 'thin');
  expect(form && LANGUAGE_TAGS.map((tag) => SHEET_WORDS[tag].form(form))).toEqual([
    '2 bars of the pattern with a click on 2 and 4; then 1 bar of rest without click.',
    '2 Takte Pattern mit Klick auf 2 und 4; dann 1 Takt Pause ohne Klick.',
  ]);
});

it('[WO9] a sheet prints no word of another language', async () => {
  const bytes = (face: keyof typeof FONT_MODULES) =>
    new Uint8Array(readFileSync(createRequire(import.meta.url).resolve(FONT_MODULES[face])));
  const fonts = createFonts({ regular: bytes('regular'), bold: bytes('bold'), italic: bytes('italic') });
  const engraver = await loadEngraver();
  const [english, german] = LANGUAGE_TAGS.map((tag) => {
    const { pages } = layOutSheet(lesson(), { engraver, fonts, words: SHEET_WORDS[tag], counts: true });
    return pages.flatMap(({ svg }) =>
      [...svg.matchAll(/>([^<>{]*\p{L}{3}[^<>{]*)</gu)].map(([, text]) => text as string),
    );
  });
  if (!english || !german) throw new Error('two languages');
  expect(german.length).toBe(english.length);
  // common practice: words that German drummers use as they are, and counts
  const same = english.filter((text, index) => text === german[index]);
  expect(new Set(same)).toEqual(new Set(['First swing', 'Groove', 'Warm up']));
  expect(german).toEqual(
    expect.arrayContaining([
      'Ziel 120',
      'Swing 1,8:1',
      'Linkshänder',
      'Schicht um Schicht',
      'rechte, linke Hand',
    ]),
  );
});
