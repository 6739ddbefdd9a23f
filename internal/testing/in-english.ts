/** Problems and sheets in the English that tests pin, for rooms under the words room. */
import type { ByteProblem } from '@shedbook/exchange';
import {
  ENGLISH,
  formatByteProblem,
  formatProblem,
  type RoomFact,
  type SayableProblem,
  SHEET_WORDS,
  say,
} from '@shedbook/words';

/** A problem of a text as one line. */
export function inEnglish(problem: SayableProblem): string {
  return formatProblem(problem, ENGLISH);
}

/** A problem of a binary file as one line. */
export function byteProblemInEnglish(file: string, problem: ByteProblem): string {
  return formatByteProblem(file, problem, ENGLISH);
}

/** A fact as a clause. */
export function factInEnglish(fact: RoomFact): string {
  return say(fact, ENGLISH);
}

/** What a sheet says. */
export const ENGLISH_SHEET = SHEET_WORDS.en;

/** The same in German. */
export const GERMAN_SHEET = SHEET_WORDS.de;
