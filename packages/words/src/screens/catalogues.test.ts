import { describe, expect, it } from 'vitest';
import { books as booksEnglish } from '../english/books.ts';
import { cli as cliEnglish } from '../english/cli.ts';
import { help as helpEnglish } from '../english/cli-help.ts';
import { deskMessages as deskEnglish } from '../english/desk.ts';
import { studentsMessages as studentsEnglish } from '../english/desk-students.ts';
import { ENGLISH } from '../english/english.ts';
import { film as filmEnglish } from '../english/film.ts';
import { hearingMessages as hearingEnglish } from '../english/hearing.ts';
import { lineCheck as lineCheckEnglish } from '../english/line-check.ts';
import { oldBrowser as oldEnglish } from '../english/old-browser.ts';
import { practiceMessages as practiceEnglish } from '../english/practice.ts';
import { report as reportEnglish } from '../english/report.ts';
import { school as schoolEnglish } from '../english/school.ts';
import * as sheetEnglish from '../english/sheet.ts';
import { soundCheck as checkEnglish } from '../english/sound-check.ts';
import { books as booksGerman } from '../german/books.ts';
import { cli as cliGerman } from '../german/cli.ts';
import { help as helpGerman } from '../german/cli-help.ts';
import { deskMessages as deskGerman } from '../german/desk.ts';
import { studentsMessages as studentsGerman } from '../german/desk-students.ts';
import { film as filmGerman } from '../german/film.ts';
import { GERMAN } from '../german/german.ts';
import { hearingMessages as hearingGerman } from '../german/hearing.ts';
import { lineCheck as lineCheckGerman } from '../german/line-check.ts';
import { oldBrowser as oldGerman } from '../german/old-browser.ts';
import { practiceMessages as practiceGerman } from '../german/practice.ts';
import { report as reportGerman } from '../german/report.ts';
import { school as schoolGerman } from '../german/school.ts';
import * as sheetGerman from '../german/sheet.ts';
import { soundCheck as checkGerman } from '../german/sound-check.ts';
import { LANGUAGES, pickLanguage } from '../language/languages.ts';
import { compile } from '../message/compiled.ts';
import type { Messages } from '../message/speak.ts';
import { loadDesk } from './desk.ts';
import { loadPractice } from './practice.ts';
import { SAME_WORDS } from './same-words.data.ts';

/** Every message by its path. */
function textsOf(messages: Messages, path: string): readonly (readonly [string, string])[] {
  if (typeof messages === 'string') return [[path, messages]];
  return Object.entries(messages).flatMap(([key, each]) => textsOf(each, `${path}.${key}`));
}

const ENGLISH_TEXTS = [
  ...textsOf(deskEnglish, 'desk'),
  ...textsOf(studentsEnglish, 'students'),
  ...textsOf(practiceEnglish, 'practice'),
  ...textsOf(oldEnglish, 'old'),
  ...textsOf(checkEnglish, 'check'),
  ...textsOf(lineCheckEnglish, 'lineCheck'),
  ...textsOf(booksEnglish, 'books'),
  ...textsOf(schoolEnglish, 'school'),
  ...textsOf(hearingEnglish, 'hearing'),
  ...textsOf(reportEnglish, 'report'),
  ...textsOf({ ...sheetEnglish }, 'sheet'),
  ...textsOf(filmEnglish, 'film'),
  ...textsOf(cliEnglish, 'cli'),
  ...textsOf(helpEnglish, 'help'),
  ...textsOf(ENGLISH.sentences, 'facts'),
];

const GERMAN_TEXTS = [
  ...textsOf(deskGerman, 'desk'),
  ...textsOf(studentsGerman, 'students'),
  ...textsOf(practiceGerman, 'practice'),
  ...textsOf(oldGerman, 'old'),
  ...textsOf(checkGerman, 'check'),
  ...textsOf(lineCheckGerman, 'lineCheck'),
  ...textsOf(booksGerman, 'books'),
  ...textsOf(schoolGerman, 'school'),
  ...textsOf(hearingGerman, 'hearing'),
  ...textsOf(reportGerman, 'report'),
  ...textsOf({ ...sheetGerman }, 'sheet'),
  ...textsOf(filmGerman, 'film'),
  ...textsOf(cliGerman, 'cli'),
  ...textsOf(helpGerman, 'help'),
  ...textsOf(GERMAN.sentences, 'facts'),
];

function sayNothing(): string {
  return '';
}

describe('catalogues', () => {
  it('[WO7002] say the number of an exercise as one, and not as an amount', () => {
    const amount = /(?:xercise|Übung) \{\$\w+ :(?:integer|number)|\{\$exercise :(?:integer|number)/;
    const named = [...ENGLISH_TEXTS, ...GERMAN_TEXTS].filter(([, text]) => / :exercise\}/.test(text));
    expect(named.length).toBeGreaterThan(80);
    expect([...ENGLISH_TEXTS, ...GERMAN_TEXTS].filter(([, text]) => amount.test(text))).toEqual([]);
  });

  it('[WO6] leave in English no more than the listed trade words, names and signs', () => {
    const english = new Map(ENGLISH_TEXTS);
    const same = GERMAN_TEXTS.filter(([path, text]) => english.get(path) === text).map(([path]) => path);
    expect(same.toSorted()).toEqual(SAME_WORDS.toSorted());
  });

  it('[WO7] are messages that can be read', () => {
    for (const [path, text] of ENGLISH_TEXTS) {
      expect(() => compile(text, ENGLISH.tongue, sayNothing), `${path}: ${text}`).not.toThrow();
    }
    for (const [path, text] of GERMAN_TEXTS) {
      expect(() => compile(text, GERMAN.tongue, sayNothing), `${path}: ${text}`).not.toThrow();
    }
    expect(() => compile('{$open', ENGLISH.tongue, sayNothing)).toThrow();
  });

  it('[WO8] speak the first language of the reader that there is one of', async () => {
    // standard: BCP 47: de-AT is German as in Austria
    expect(pickLanguage(['', 'fr', 'de-AT', 'en'])).toBe('de');
    expect([pickLanguage([]), pickLanguage(['ja']), pickLanguage(['toString'])]).toEqual(['en', 'en', 'en']);
    for (const tag of ['en', 'de'] as const) {
      const [desk, practice] = await Promise.all([loadDesk(tag), loadPractice(tag)]);
      expect([desk.tag, practice.tag]).toEqual([tag, tag]);
      expect([desk.words.language, practice.words.language]).toEqual([LANGUAGES[tag], LANGUAGES[tag]]);
    }
  });
});

it('[WO1800] calls a feel without swing alike on paper, on the desk and where one practises', () => {
  const english = [deskEnglish.heading.feels.even, practiceEnglish.sheet.feels.even];
  expect(english).toEqual([sheetEnglish.sheet.straight, sheetEnglish.sheet.straight]);
  const german = [deskGerman.heading.feels.even, practiceGerman.sheet.feels.even];
  expect(german).toEqual([sheetGerman.sheet.straight, sheetGerman.sheet.straight]);
});
