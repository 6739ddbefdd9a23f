/**
 * Numbers of exercises: one row through the lesson, or anew in each of its sections. Anew, an exercise goes by the letter
 * of its section and its place there, "B3", as rehearsal letters stand over the parts of a score: no two exercises
 * of a lesson go by one name, on the page, in a message or said aloud.
 *
 * Conventions: a number is a whole number from 1 that rises through the lesson either way, so that it finds and orders
 * exercises; what a person reads is `exerciseLabel`. Sections have letters in their order, those without exercises none.
 */

/** How exercises are numbered. */
export const NUMBERINGS = ['through', 'anew'] as const;
/** One of them. */
export type Numbering = (typeof NUMBERINGS)[number];

/** Numbers that a section has of its own: ten times as many as a lesson may have exercises. */
const OF_A_SECTION = 10_000;

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';

/** The letters of a section (from 1): A to Z, then AA, AB and so on. */
function lettersOf(section: number): string {
  const last = LETTERS.charAt((section - 1) % LETTERS.length);
  const before = Math.floor((section - 1) / LETTERS.length);
  return before === 0 ? last : lettersOf(before) + last;
}

function sectionOfLetters(letters: string): number {
  return [...letters].reduce((section, letter) => section * LETTERS.length + LETTERS.indexOf(letter) + 1, 0);
}

/**
 * The number of each section's first exercise; where a section has none, the one that its first would have.
 * @param counts how many exercises each section has
 */
export function firstNumbers(counts: readonly number[], numbering: Numbering): readonly number[] {
  let [next, lists] = [1, 1];
  return counts.map((count) => {
    const first = numbering === 'anew' ? lists * OF_A_SECTION + 1 : next;
    next += count;
    if (count > 0) lists += 1;
    return first;
  });
}

/** Whether a number is that of a lesson's first exercise. */
export function isFirstNumber(number: number): boolean {
  return number === 1 || number === OF_A_SECTION + 1;
}

/**
 * The number of an exercise as people read it.
 * @example exerciseLabel(12) // '12'
 * @example exerciseLabel(20003) // 'B3'
 */
export function exerciseLabel(number: number): string {
  const section = Math.floor(number / OF_A_SECTION);
  return section === 0 ? String(number) : `${lettersOf(section)}${number % OF_A_SECTION}`;
}

/**
 * The number that a person wrote as they read it; null where it is none.
 * @example readExerciseLabel('b3') // 20003
 */
export function readExerciseLabel(text: string): number | null {
  const [, letters = '', digits = ''] = /^\s*([A-Z]{0,2})([1-9]\d{0,6})\s*$/i.exec(text) ?? [];
  if (digits === '') return null;
  return sectionOfLetters(letters.toUpperCase()) * OF_A_SECTION + Number(digits);
}
