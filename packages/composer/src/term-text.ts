/**
 * Writing a term into a lesson: each page is a section, with its heading and what it brings.
 *
 * Conventions: exercises that the lesson has written make way; everything else of its text stays as it was.
 */
import { editLesson, type Lesson, setExercises } from '@shedbook/core';
import { withHeadings } from './heading.ts';
import type { ThemeFact } from './idea-fact.ts';
import { type TermPage, termFacts } from './term.ts';
import type { TermFact } from './term-fact.ts';

/** Says a heading or a sentence. */
export type SayTerm = (fact: TermFact | ThemeFact) => string;

/**
 * The text of an undivided lesson with a term's pages as its sections.
 * @throws RangeError when the lesson is divided already: a term would take its sections' place.
 */
export function withTerm(text: string, lesson: Lesson, pages: readonly TermPage[], say: SayTerm): string {
  if (lesson.sections.length > 0) throw new RangeError('Internal error: a term for a lesson that is divided');
  const sections = pages.map((page) => {
    const heading = say({ fact: 'term-page', page: page.page });
    const told = termFacts(page).map(say).join(' ');
    return told === '' ? { heading } : { heading, text: told };
  });
  const divided = editLesson(editLesson(text, ['exercises'], undefined), ['sections'], sections);
  return pages.reduce((written, { exercises, report }, index) => {
    const named = lesson.compose.headings ? withHeadings(exercises, report.blocks, say) : exercises;
    return setExercises(written, named, lesson.comping, index);
  }, divided);
}
