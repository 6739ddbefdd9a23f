import { expect, it } from 'vitest';
import { read } from '../../test/reading.ts';
import { perform } from '../groove/perform.ts';
import { defaultForm } from './default-form.ts';
import { handsOf } from './hands.ts';
import { exerciseKey } from './identity.ts';
import { inSetUp } from './in-set-up.ts';
import { sectionOf, sectionsOf } from './section.ts';

const LESSON = read(`title: Hands
exercises:
  - {pattern: xx xx xx xx, sticking: R L R R L R L L}
sections:
  - heading: Over the kit
    exercises:
      - {pattern: {snare: x . x ., tom-low: . x . x}, sticking: {snare: L R, tom-low: R B}}
      - x . x .
`);

it('[LE7011] written hands change sides with the limbs, in every section, and back', () => {
  const left = inSetUp(LESSON, 'left-handed');
  // common practice: a paradiddle begins with the hand that leads, which is a left-hander's left
  expect(handsOf(left.exercises[0]!, 0)?.join('')).toBe('LRLLRLRR');
  const [, kit] = sectionsOf(left);
  expect(kit?.exercises.map((each) => [handsOf(each, 0), handsOf(each, 1)])).toEqual([
    [
      ['R', 'L'],
      ['L', 'B'],
    ],
    [null, null],
  ]);
  expect(sectionsOf(left).map(({ setUp }) => setUp)).toEqual(['left-handed', 'left-handed']);
  const names = ({ exercises }: typeof LESSON) => exercises.map(exerciseKey);
  expect(names(left)).toEqual(names(LESSON));
  expect(names(inSetUp(left, 'right-handed'))).toEqual(names(LESSON));
  expect(inSetUp(LESSON, null)).toBe(LESSON);
  expect(inSetUp(LESSON, 'right-handed')).toBe(LESSON);
});

it('[LE7011] a stroke stays with the limb that it was written for', () => {
  const limbs = (lesson: typeof LESSON) =>
    lesson.exercises.map(({ number }) => {
      const section = sectionOf(lesson, number);
      const { strokes } = perform(section, { exercise: number, form: defaultForm(section) });
      return strokes.map(({ voice, limb }) => `${voice} ${limb}`);
    });
  expect(limbs(inSetUp(LESSON, 'left-handed'))).toEqual(limbs(LESSON));
});
