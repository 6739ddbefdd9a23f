import fc from 'fast-check';
import { expect, it } from 'vitest';
import { LABELS_ANEW, NUMBERED_ANEW } from '../../../../internal/testing/numbered-anew.ts';
import { problemsOf, read } from '../../test/reading.ts';
import { printLesson } from '../document/print.ts';
import { exerciseLabel, firstNumbers, readExerciseLabel } from './numbering.ts';
import { exerciseBeside, sectionOf, sectionsOf } from './section.ts';

const labelsOf = (text: string) => read(text).exercises.map(({ number }) => exerciseLabel(number));

it('[LE7000] exercises begin anew in each section, with its letter before', () => {
  expect(labelsOf(NUMBERED_ANEW)).toEqual(LABELS_ANEW);
  expect(labelsOf(NUMBERED_ANEW.replace('anew', 'through'))).toEqual(['1', '2', '3', '4', '5']);
  expect(labelsOf(NUMBERED_ANEW.slice(0, NUMBERED_ANEW.indexOf('sections:')))).toEqual(['1']);
  const lesson = read(NUMBERED_ANEW);
  expect(read(printLesson(lesson))).toEqual(lesson);
  expect(sectionsOf(lesson).map(({ exercises }) => exercises.length)).toEqual([1, 0, 3, 1]);
  expect(sectionOf(lesson, readExerciseLabel('C1')).heading).toBe('The feet');
  // definition: where it is written, in the second list
  expect(problemsOf(NUMBERED_ANEW.replace('x x . .', 'x . x .'))).toEqual([
    '8:58: warning: sections[2].exercises[3]: found the same pattern again, expected each pattern once; it is exercise B1 already',
  ]);
});

it('[LE7000] no two exercises of a lesson are read alike', () => {
  const counts = fc.array(fc.integer({ min: 0, max: 1000 }), { minLength: 1, maxLength: 101 });
  fc.assert(
    fc.property(counts, fc.constantFrom('through' as const, 'anew' as const), (all, numbering) => {
      const firsts = firstNumbers(all, numbering);
      const numbers = all.flatMap((count, at) =>
        Array.from({ length: count }, (_, i) => (firsts[at] ?? 0) + i),
      );
      expect(numbers.toSorted((a, b) => a - b)).toEqual(numbers);
      const labels = numbers.map(exerciseLabel);
      expect(new Set(labels).size).toBe(labels.length);
      expect(labels.map(readExerciseLabel)).toEqual(numbers);
    }),
    { numRuns: 20 },
  );
  // common practice: columns of spreadsheets, rehearsal letters after Z
  const lettered = firstNumbers(Array(53).fill(1), 'anew').map(exerciseLabel);
  expect([0, 25, 26, 51, 52].map((at) => lettered[at])).toEqual(['A1', 'Z1', 'AA1', 'AZ1', 'BA1']);
});

it('[LE7001] finds exercises by what is read, and what is beside them in any section', () => {
  expect(readExerciseLabel(' b3 ')).toBe(readExerciseLabel('B3'));
  expect(['', 'B', 'B0', '3B', '-1', '1.5', 'ABC1'].map(readExerciseLabel)).toEqual(Array(7).fill(null));
  const lesson = read(NUMBERED_ANEW);
  const beside = (label: string, by: number) => {
    const number = exerciseBeside(lesson, readExerciseLabel(label), by);
    return number === null ? null : exerciseLabel(number);
  };
  expect(beside('A1', 1)).toBe('B1');
  expect(beside('C1', -1)).toBe('B3');
  expect([beside('A1', -1), beside('C1', 1)]).toEqual([null, null]);
  // from time alone, which stands before the page, the first one
  expect(exerciseLabel(exerciseBeside(lesson, null, 1) ?? 0)).toBe('A1');
  expect(exerciseBeside(lesson, null, -1)).toBe(null);
});
