import fc from 'fast-check';
import { expect, it } from 'vitest';
import { arbitraryLessonText } from '../../../../internal/testing/arbitrary-lesson.ts';
import { parseLesson } from '../document/parse.ts';
import { formatPattern } from '../rhythm/pattern.ts';
import { handedParts, withoutSlots } from './handed.ts';
import { handsOf } from './hands.ts';
import type { Exercise, Lesson } from './lesson.ts';
import { ontoPad } from './onto-pad.ts';
import { withinItsBars } from './said-at.ts';
import { inBarOrder, writtenOut } from './written-out.ts';

function lessonOf(exercise: string): Lesson {
  const { lesson, problems } = parseLesson(`title: T\nexercises:\n  - ${exercise}\n`, 'lesson');
  if (!lesson?.exercises[0]) throw new Error(JSON.stringify(problems));
  return lesson;
}

const first = (exercise: string) => lessonOf(exercise).exercises[0] as Exercise;
const handsIn = (of: Exercise) => of.parts.map((_, part) => handsOf(of, part)?.join('') ?? null);
const textsIn = (of: Exercise) => of.parts.map(({ pattern }) => formatPattern(pattern));

it('[LE2901] an exercise as slots with hands is the same exercise', () => {
  const property = fc.property(arbitraryLessonText, (text) => {
    for (const exercise of parseLesson(text, 'lesson').lesson?.exercises ?? []) {
      expect({ ...exercise, ...withoutSlots(handedParts(exercise)) }).toEqual(exercise);
      expect(withinItsBars(exercise)).toEqual(exercise);
    }
  });
  fc.assert(property, { seed: 29, numRuns: 60 });
});

it('[LE2901] what is written out has every bar as often as it is played, with its hands and all that is said of it', () => {
  const repeated = first(
    '{pattern: {snare: x . . . | . x . . | . . x . | . . . x, tom-high: . x . . | x . . . | x . . . | x . . .}, ' +
      'sticking: {snare: R L L R, tom-high: L R L R}, repeats: {bars: 1-2, endings: [3, 4]}, ' +
      'dynamics: p | . | f, above: a | | b, fill: {bar: 4, beat: 3}}',
  );
  const out = writtenOut(repeated);
  // definition: 1 2 3 1 2 4
  expect(textsIn(out)[0]).toBe('x . . . | . x . . | . . x . | x . . . | . x . . | . . . x');
  expect(handsIn(out)).toEqual(['RLLRLR', 'LRLLRR']);
  expect(out.above).toEqual(['a', null, 'b', 'a']);
  expect(out.dynamics?.map(({ bar, mark }) => `${bar} ${mark}`)).toEqual(['0 p', '2 f', '3 p']);
  expect([out.fill?.bar, out.repeats]).toEqual([5, undefined]);
  expect(textsIn(inBarOrder(repeated, [1, 0]))[0]).toBe('. x . . | x . . .');
});

it('[LE2901] hands of all voices go onto the pad; where two strike at once, both hands or the same one do', () => {
  const lesson = lessonOf(
    '{pattern: {snare: x . x ., tom-high: x x . .}, sticking: {snare: R L, tom-high: L R}}',
  );
  const form = lesson.forms[0] as Lesson['forms'][number];
  const onPad = ontoPad({ lesson, exercise: 1, form }).lesson.exercises[0] as Exercise;
  expect([textsIn(onPad), handsIn(onPad)]).toEqual([['x x x .'], ['BRL']]);
  const withFoot = lessonOf('{pattern: {snare: x . x ., bass: . x . .}, sticking: R L}');
  const plain = ontoPad({ lesson: withFoot, exercise: 1, form }).lesson.exercises[0] as Exercise;
  expect(handsIn(plain)).toEqual([null]);
});
