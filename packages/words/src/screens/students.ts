/** The catalogues of the desk's students: all of the desk's, and what is said of students alone. */
import type { studentsMessages } from '../english/desk-students.ts';
import type { Language } from '../facts/say.ts';
import type { ScreenFact } from '../facts/sayable.ts';
import type { LanguageTag } from '../language/languages.ts';
import { type Spoken, speak } from '../message/speak.ts';
import { type DeskWords, loadDesk } from './desk.ts';

/** The words of the desk's students. */
export type StudentsWords = DeskWords & Spoken<typeof studentsMessages>;

/** What is said of students in a language. */
export interface StudentsCatalogue {
  readonly tag: LanguageTag;
  readonly words: StudentsWords;
  /** The language in which facts are said. */
  readonly language: Language<ScreenFact>;
}

async function loadEnglish() {
  const [{ studentsMessages }, { ENGLISH_SCREENS }] = await Promise.all([
    import('../english/desk-students.ts'),
    import('../english/screens.ts'),
  ]);
  return { words: speak(studentsMessages, ENGLISH_SCREENS.tongue), language: ENGLISH_SCREENS };
}

async function loadGerman() {
  const [{ studentsMessages }, { GERMAN_SCREENS }] = await Promise.all([
    import('../german/desk-students.ts'),
    import('../german/screens.ts'),
  ]);
  return { words: speak(studentsMessages, GERMAN_SCREENS.tongue), language: GERMAN_SCREENS };
}

const LOADERS = { en: loadEnglish, de: loadGerman } as const satisfies Record<LanguageTag, unknown>;

/** The catalogue of the desk's students in a language. */
export async function loadStudents(tag: LanguageTag): Promise<StudentsCatalogue> {
  const [desk, own] = await Promise.all([loadDesk(tag), LOADERS[tag]()]);
  return { tag, words: { ...desk.words, ...own.words }, language: own.language };
}
