/** Which names of exercises are headings: what stands over a run of exercises, not over one alone. */
import { type Exercise, type Lesson, sectionsOf } from '@shedbook/core';

/**
 * Numbers of the exercises whose names head those after them: the first one has a name, and after every name there is at
 * least one exercise without. Else none: each name is its own exercise's.
 */
export function headingsOf(exercises: readonly Exercise[]): ReadonlySet<number> {
  const named = exercises.map(({ name }) => name !== null);
  const isRun = named[0] === true && named.every((has, i) => !has || named[i + 1] === false);
  return new Set(isRun ? exercises.filter(({ name }) => name !== null).map(({ number }) => number) : []);
}

/**
 * A lesson laid out with headings that begin rows where that takes no page more, else with rows that are full.
 * @param pagesOf number of pages, or null where they cannot be made
 */
export function apartWhereFree<Laid>(
  lesson: Lesson,
  layOut: (blocksApart: boolean) => Laid,
  pagesOf: (laid: Laid) => number | null,
): Laid {
  const close = layOut(false);
  if (sectionsOf(lesson).every(({ exercises }) => headingsOf(exercises).size === 0)) return close;
  const apart = layOut(true);
  const [few, more] = [pagesOf(close), pagesOf(apart)];
  return more !== null && (few === null || more <= few) ? apart : close;
}
