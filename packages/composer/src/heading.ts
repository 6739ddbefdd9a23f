/**
 * Headings of blocks: a block's first exercise is named after its theme.
 *
 * Conventions: blocks count lines from 1; the exercises of a later section have numbers that count on.
 */
import type { Exercise } from '@shedbook/core';
import type { ThemeFact } from './idea-fact.ts';
import type { ReportedBlock } from './report.ts';

/** The exercises of a page, the first one of every block named after its theme where it has no name. */
export function withHeadings(
  exercises: readonly Exercise[],
  blocks: readonly ReportedBlock[],
  nameOf: (theme: ThemeFact) => string,
): readonly Exercise[] {
  const headings = new Map(blocks.map((block) => [block.first, block.heading]));
  return exercises.map((exercise, place) => {
    const heading = headings.get(place + 1);
    return heading && exercise.name === null ? { ...exercise, name: nameOf(heading) } : exercise;
  });
}
