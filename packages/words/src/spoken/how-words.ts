/** How limbs play, in words. */
import { type How, type HowWord, isHowWord } from '@shedbook/core';

/** The words in a language; a teacher's own stay as they are. */
export function sayHow(how: How, words: Readonly<Record<HowWord, string>>): string {
  return how.map((word) => (isHowWord(word) ? words[word] : word)).join(', ');
}
