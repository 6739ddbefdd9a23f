/**
 * Writing a term into a lesson: each page is a section, with its heading and what it brings.
 *
 * Conventions: exercises that the lesson has written make way, or stay as its first section; everything else of its text
 * stays as it was.
 */
import { editLesson, type Lesson, setExercises } from '@shedbook/core';
import { withHeadings } from './heading.ts';
import type { ThemeFact } from './idea-fact.ts';
import { type TermPage, termFacts } from './term.ts';
import type { TermFact } from './term-fact.ts';

/** Says a heading or a sentence. */
export type SayTerm = (fact: TermFact | ThemeFact) => string;

/** Where a term goes: in the stead of what is written, or behind it. */
export type TermPlace = 'instead' | 'behind';

/**
 * The text of an undivided lesson with a term's pages as its sections; what is written makes way, or stays before them.
 * @throws RangeError when the lesson is divided already: a term would take its sections' place.
 */
export function withTerm(
  text: string,
  lesson: Lesson,
  pages: readonly TermPage[],
  say: SayTerm,
  place: TermPlace = 'instead',
): string {
  if (lesson.sections.length > 0) throw new RangeError('Internal error: a term for a lesson that is divided');
  const sections = pages.map((page) => {
    const heading = say({ fact: 'term-page', page: page.page });
    const told = termFacts(page).map(say).join(' ');
    return told === '' ? { heading } : { heading, text: told };
  });
  const stays = place === 'behind' && lesson.exercises.length > 0;
  const before = stays ? text : editLesson(text, ['exercises'], undefined);
  const divided = editLesson(before, ['sections'], sections);
  return pages.reduce((written, { exercises, report }, index) => {
    const named = lesson.compose.headings ? withHeadings(exercises, report.blocks, say) : exercises;
    return setExercises(written, named, lesson.comping, stays ? index + 1 : index);
  }, divided);
}
