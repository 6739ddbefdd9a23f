/** Performances as the command line names them. */
import { type Lesson, readExerciseLabel } from '@shedbook/core';
import type { PerformanceFile } from '@shedbook/host/film';
import { readExerciseList, refuseOption } from './options.ts';

/** The options that name performances. */
export interface PerformanceOptions {
  readonly exercise?: string;
  readonly performance?: readonly string[];
}

/** Performances with their exercises; the numbers before them may be left out where only one exercise is meant. */
export function readPerformances(options: PerformanceOptions, lesson: Lesson): readonly PerformanceFile[] {
  const asked = readExerciseList('exercise', options.exercise, lesson);
  return (options.performance ?? []).map((text): PerformanceFile => {
    const [, before = '', path = ''] = /^([^=]+)=(.+)$/.exec(text) ?? [];
    const number = readExerciseLabel(before);
    if (number !== null && asked.includes(number)) return { exercise: number, path };
    const [only] = asked;
    if (number === null && only !== undefined && asked.length === 1) return { exercise: only, path: text };
    return refuseOption('performance', text, (expected) => expected.performanceOf);
  });
}
