import fc from 'fast-check';
import { expect, it } from 'vitest';
import { arbitraryLesson } from '../../../../internal/testing/arbitrary-lesson.ts';
import { problemsOf, read } from '../../test/reading.ts';
import { printLesson } from '../document/print.ts';
import { exerciseKey } from '../lesson/identity.ts';
import type { Form, Lesson } from '../lesson/lesson.ts';
import { perform } from './perform.ts';
import { orderOf } from './place.ts';
import { grooveUnder } from './silence.ts';

const GROOVE = `tempo: 60
groove:
  hihat: x x x x
  hihat-foot: . x . x
  bass: x . x .
`;

function played(lesson: Lesson, number: number, sections: Form['sections']) {
  const form = { name: 'f', sections, repeat: 1, countInBars: 0 };
  return perform(lesson, { exercise: number, form }).strokes;
}

const once = (bars: number): Form['sections'] => [{ play: 'pattern', bars, ending: null }];

it('[LE45] dynamics, texts, fills and rests are read, and printed as they are meant', () => {
  const text = `title: T
exercises:
  - pattern: x x x x | x x x x
    dynamics: p | < . . f
    above: softly | and build
    below: "| brighter"
    fill: {bar: 2, beat: 3, silences: lead hand + bass}
    rests: hihat-foot
  - {pattern: x x x x, fill: 3}
`;
  const [first, second] = read(text).exercises;
  expect(first).toMatchObject({
    dynamics: [
      { bar: 0, beat: 0, mark: 'p', hairpin: null },
      { bar: 1, beat: 0, mark: null, hairpin: 'louder' },
      { bar: 1, beat: 3, mark: 'f', hairpin: null },
    ],
    above: ['softly', 'and build'],
    below: [null, 'brighter'],
    fill: { bar: 1, beat: 2, silences: ['lead hand', 'bass'] },
    rests: ['hihat-foot'],
  });
  expect(second?.fill).toEqual({ bar: 0, beat: 2, silences: null });
  expect(printLesson(read(text))).toContain('dynamics: p | < . . f');
  expect(read(printLesson(read(text))).exercises).toEqual(read(text).exercises);
});

it('[LE45] what is wrong with them is said with its place', () => {
  const wrong = (more: string) => problemsOf(`title: T\nexercises:\n  - {pattern: x x x x, ${more}}\n`);
  expect(wrong('dynamics: p . loud')).toEqual([expect.stringMatching(/^3:38: .*"loud".*ppp to fff/)]);
  expect(wrong('dynamics: p . . . f')).toEqual([expect.stringMatching(/^3:42: .*"f".*1 to 4/)]);
  expect(wrong('above: a | b')).toEqual([expect.stringMatching(/text for 1 bar/)]);
  expect(wrong('fill: 5')).toEqual([expect.stringMatching(/beat 5.*1 to 4/)]);
  expect(wrong('fill: {bar: 2}')).toEqual([expect.stringMatching(/bar 2.*1 to 1/)]);
  expect(wrong('rests: left foot')).toEqual([expect.stringMatching(/left foot.*did you mean "lead foot"/)]);
});

it('[GR15] a dynamic is the level of what the exercise plays; a hairpin goes evenly to the next', () => {
  const lesson = read(
    `title: T\n${GROOVE}exercises:\n  - {pattern: x x x x | x x x x, dynamics: "p | < . . f"}\n  - {pattern: x x x x, dynamics: "f>"}\n  - x x x x\n`,
  );
  const levels = (number: number, bars: number) =>
    played(lesson, number, once(bars))
      .filter(({ role }) => role === 'pattern')
      .map(({ levelDb }) => Math.round(levelDb * 100) / 100);
  // definition: p is -13 dB, f 0 dB relative to the lead voice; a third of the way each beat
  expect(levels(1, 2)).toEqual([-13, -13, -13, -13, -13, -8.67, -4.33, 0]);
  // our choice: a hairpin without a mark at its end goes 6 dB, here in four quarters
  expect(levels(2, 1)).toEqual([0, -1.5, -3, -4.5]);
  expect(levels(3, 1)).toEqual([0, 0, 0, 0]);
  // The groove goes on as it was, and each time round begins anew.
  const groove = (number: number) =>
    played(lesson, number, once(2))
      .filter(({ role }) => role === 'groove')
      .map(({ levelDb }) => levelDb);
  expect(groove(1)).toEqual(groove(3));
  expect(levels(1, 4).slice(8)).toEqual(levels(1, 2));
});

it('[GR16] a fill silences the groove, or named limbs of it, from its beat to its end; a rest throughout', () => {
  const lesson = read(
    `title: T\n${GROOVE}exercises:\n  - {pattern: x . . . | . . x x, fill: 3}\n  - {pattern: . . x x, fill: {beat: 2, silences: lead hand + bass}}\n  - {pattern: x x x x, rests: other foot}\n`,
  );
  const places = (number: number, bars: number, voice: string) =>
    played(lesson, number, [...once(bars), { play: 'time', bars: 1, ending: null }])
      .filter((stroke) => stroke.voice === voice)
      .map(({ written: { bar, beat } }) => `${bar}.${beat}`);
  expect(places(1, 2, 'hihat')).toEqual([
    '1.1',
    '1.2',
    '1.3',
    '1.4',
    '2.1',
    '2.2',
    '3.1',
    '3.2',
    '3.3',
    '3.4',
  ]);
  expect(places(1, 2, 'hihat-foot')).toEqual(['1.2', '1.4', '2.2', '3.2', '3.4']);
  expect(places(2, 1, 'hihat')).toEqual(['1.1', '2.1', '2.2', '2.3', '2.4']);
  expect(places(2, 1, 'hihat-foot')).toEqual(['1.2', '1.4', '2.2', '2.4']);
  expect(places(3, 1, 'hihat-foot')).toEqual(['2.2', '2.4']);
  expect(places(3, 1, 'hihat')).toHaveLength(8);
});

it('[GR16] what is printed under an exercise is what sounds under it', () => {
  fc.assert(
    fc.property(arbitraryLesson, (lesson) => {
      for (const exercise of lesson.exercises) {
        const parts = grooveUnder(lesson, exercise);
        const bars = exercise.parts[0]?.pattern.bars.length ?? 1;
        const strokes = played(lesson, exercise.number, once(bars)).filter(({ role }) => role === 'groove');
        const printed = parts.flatMap(({ pattern }) =>
          orderOf(exercise).flatMap((bar) => pattern.bars[bar % pattern.bars.length] ?? []),
        );
        const struck = printed.reduce(
          (sum, { marks }) => sum + marks.filter((mark) => mark !== '.').length,
          0,
        );
        expect(strokes).toHaveLength(struck);
      }
    }),
    { numRuns: 100, seed: 16 },
  );
});

it('[LE45] the same strokes with other dynamics or a fill are another exercise', () => {
  const { exercises } = read(
    'title: T\nexercises: [x . . ., {pattern: x . . ., dynamics: p}, {pattern: x . . ., fill: 3}, {pattern: x . . ., above: softly}]\n',
  );
  expect(exercises.map(exerciseKey)).toEqual([
    'snare x . . .',
    'snare x . . . dynamics p',
    'snare x . . . fill 1 3',
    'snare x . . .',
  ]);
});
