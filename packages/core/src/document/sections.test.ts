import fc from 'fast-check';
import { expect, it } from 'vitest';
import { arbitraryDividedLesson } from '../../../../internal/testing/arbitrary-lesson.ts';
import { problemsOf, read } from '../../test/reading.ts';
import { perform } from '../groove/perform.ts';
import { defaultForm } from '../lesson/default-form.ts';
import type { Lesson } from '../lesson/lesson.ts';
import { inSection, sectionOf, sectionsOf } from '../lesson/section.ts';
import { formatPattern } from '../rhythm/pattern.ts';
import { editLesson, sectionPath, setExercises } from './edit.ts';
import { printLesson } from './print.ts';
import { formatFeel } from './read-feel.ts';

const DIVIDED = `title: First swing
tempo: {start: 72, goal: 120}
feel: triplet
groove:
  ride: x x.x x x.x
  hihat-foot: {pattern: . x . x, level: -9}
  bass: {pattern: x x x x, level: feathered}
balance: {snare: -3}
lead: ride
layers: [ride, bass, hihat-foot]
vocabulary: [..., ..x, x..]
exercises:
  - x.. ... ... ...   # before all else
sections:
  - heading: The other hand # comping
    text: |
      Soft, and *behind* the ride.

      - first on the beat
    exercises:
      - ..x ... ..x ...
      # harder
      - x.. ..x x.. ..x
  - heading: The feet alone
    tempo: 60
    groove: {bass: x x x x, hihat-foot: . x . x}
    balance: {snare: -6}
    limbs: {snare: lead hand}
    forms: {answer: {sections: [{rest: 1}, {pattern: 1}]}}
    vocabulary: []
    comping: tom-low
    exercises:
      - x . x .
`;

const voices = (lesson: Lesson) => lesson.groove.map((part) => part.voice);

it('[LE17] takes from the lesson what a section leaves out', () => {
  const lesson = read(DIVIDED);
  const [opening, hand, feet] = sectionsOf(lesson) as [Lesson, Lesson, Lesson];
  expect([opening.heading, hand.heading, feet.heading]).toEqual([null, 'The other hand', 'The feet alone']);
  expect(hand.text).toBe('Soft, and *behind* the ride.\n\n- first on the beat');
  for (const section of [opening, hand]) {
    expect(section).toMatchObject({ tempo: lesson.tempo, groove: lesson.groove, layers: lesson.layers });
    expect(section.vocabulary).toEqual(lesson.vocabulary);
  }
  expect(feet.title).toBe('First swing');
  expect([feet.tempo.startBpm, formatFeel(feet.feel), feet.comping]).toEqual([60, 'triplet', 'tom-low']);
  expect(feet.vocabulary).toEqual([]);
});

it('[LE17] joins levels, limbs and forms, and leads with what the own groove has', () => {
  const [, , feet] = sectionsOf(read(DIVIDED)) as [Lesson, Lesson, Lesson];
  expect([voices(feet), feet.lead]).toEqual([['bass', 'hihat-foot'], 'bass']);
  // definition: levels count from the lead voice; feathered is -18, so the hi-hat foot lies 9 over it
  expect([feet.balance.bass, feet.balance['hihat-foot'], feet.balance.snare]).toEqual([0, 9, 12]);
  expect([feet.limbs.snare, feet.limbs.bass]).toEqual(['lead hand', 'lead foot']);
  expect(feet.forms.map((form) => form.name)).toEqual(['answer', 'loop', 'four and two', 'time']);
  expect(feet.layers.map((layer) => layer.joins)).toEqual([['bass'], ['hihat-foot'], ['pattern']]);
});

it('[LE17][LE2] prints a divided lesson so that it reads back the same', () => {
  expect(sectionsOf(read(printLesson(read(DIVIDED))))).toEqual(sectionsOf(read(DIVIDED)));
  fc.assert(
    fc.property(arbitraryDividedLesson, (lesson) => {
      expect(read(printLesson(lesson))).toEqual(lesson);
    }),
    { numRuns: 60 },
  );
});

it('[LE18] asks for a groove in the meter of the section', () => {
  const waltz = (more: string) => `${DIVIDED}  - heading: Three\n    meter: 3/4\n${more}`;
  expect(problemsOf(waltz('')).filter((each) => each.includes('error'))).toEqual([
    '35:12: error: sections[3].meter: found "3/4", expected a groove of the section in this meter, since that of the lesson is in another',
  ]);
  const three = sectionsOf(read(waltz('    groove: {ride: x x.x x}\n'))).at(-1) as Lesson;
  expect([three.meter.text, voices(three), three.lead]).toEqual(['3/4', ['ride'], 'ride']);
  // A lesson that has written none has a default groove in every meter.
  const plain = read('title: T\nsections:\n  - meter: 3/4\n');
  expect(sectionsOf(plain)[0]?.groove.map((part) => formatPattern(part.pattern))).toEqual([
    'x x.x x',
    '. x .',
    'x x x',
  ]);
});

it('[LE18] leaves a form behind that does not fit', () => {
  const form = 'forms: {four: {sections: [{pattern: 4, ending: {voices: crash, beat: 4}}]}}\n';
  const lesson = read(`title: T\n${form}sections:\n  - heading: Four\n  - meter: 3/4\n`);
  const names = sectionsOf(lesson).map((section) => section.forms.map(({ name }) => name));
  expect(names).toEqual([
    ['four', 'loop', 'four and two', 'time'],
    ['loop', 'four and two', 'time'],
  ]);
});

it('[LE19] numbers exercises through all sections', () => {
  const lesson = read(DIVIDED);
  expect(lesson.exercises.map((each) => each.number)).toEqual([1, 2, 3, 4]);
  expect(sectionsOf(lesson).map((each) => each.exercises.map(({ number }) => number))).toEqual([
    [1],
    [2, 3],
    [4],
  ]);
  // The same pattern over another groove is another exercise; in one section it is one too many.
  expect(problemsOf(DIVIDED.replace('- x . x .', '- x.. ... ... ...'))).toEqual([]);
  expect(problemsOf(DIVIDED.replace('- x.. ..x x.. ..x', '- ..x ... ..x ...'))).toEqual([
    '23:9: warning: sections[1].exercises[2]: found the same pattern again, expected each pattern once; it is exercise 2 already',
  ]);
});

it('[LE20] edits one key of one section', () => {
  expect(editLesson(DIVIDED, ['sections', 1, 'tempo'], 66)).toBe(DIVIDED.replace('tempo: 60', 'tempo: 66'));
  expect(editLesson(DIVIDED, ['sections', 0, 'heading'], 'Left')).toBe(
    DIVIDED.replace('heading: The other hand', 'heading: Left'),
  );
  expect(editLesson(DIVIDED, ['sections', 0, 'tempo'], 80)).toBe(
    DIVIDED.replace('x.. ..x\n  - heading', 'x.. ..x\n    tempo: 80\n  - heading'),
  );
  expect(editLesson(DIVIDED, ['sections', 1, 'groove', 'bass'], 'x . x .')).toBe(
    DIVIDED.replace('bass: x x x x, hihat', 'bass: x . x ., hihat'),
  );
});

it('[LE20][LE6] writes the exercises of one section and keeps the comments', () => {
  const lesson = read(DIVIDED);
  const [, hand, feet] = sectionsOf(lesson) as [Lesson, Lesson, Lesson];
  expect([0, 1, 2].map((section) => sectionPath(DIVIDED, section))).toEqual([
    [],
    ['sections', 0],
    ['sections', 1],
  ]);
  const turned = setExercises(DIVIDED, hand.exercises.toReversed(), hand.comping, 1);
  expect(turned).toContain(
    '    exercises:\n      # harder\n      - x.. ..x x.. ..x\n      - ..x ... ..x ...\n',
  );
  const outside = (text: string) => [
    text.slice(0, text.indexOf('    exercises:')),
    text.slice(text.indexOf('  - heading: The feet')),
  ];
  expect(outside(turned)).toEqual(outside(DIVIDED));
  const none = setExercises(DIVIDED, [], feet.comping, 2);
  expect(sectionsOf(read(none)).map((each) => each.exercises.length)).toEqual([1, 2, 0]);
});

it('[LE21] plays an exercise over the groove of its section, in its tempo and meter', () => {
  const lesson = read(
    DIVIDED.replace('tempo: 60', 'meter: 2/4\n    tempo: 60')
      .replace('{bass: x x x x, hihat-foot: . x . x}', '{bass: x x, hihat-foot: . x}')
      .replace('- x . x .', '- x .'),
  );
  const form = defaultForm(lesson);
  const strokes = (exercise: number | null) => perform(lesson, { exercise, form }).strokes;
  const played = (exercise: number | null) =>
    [...new Set(strokes(exercise).map((each) => each.voice))].toSorted();
  expect(played(2)).toEqual(['bass', 'click', 'hihat-foot', 'ride', 'snare']);
  expect(played(4)).toEqual(['bass', 'click', 'hihat-foot', 'tom-low']);
  expect(played(null)).toEqual(['bass', 'click', 'hihat-foot', 'ride']);
  // definition: four bars of the loop and one of count-in, in 4/4 at 72 and in 2/4 at 60 quarter notes a minute
  expect(perform(lesson, { exercise: 2, form }).durationSeconds).toBeCloseTo((5 * 4 * 60) / 72, 9);
  expect(perform(lesson, { exercise: 4, form }).durationSeconds).toBeCloseTo(5 * 2, 9);
});

it('[LE21] knows the section of an exercise, and a section as its own', () => {
  const lesson = read(DIVIDED);
  expect(sectionOf(lesson, 4).heading).toBe('The feet alone');
  expect(sectionOf(lesson, null)).toBe(lesson.sections[0]);
  const feet = sectionOf(lesson, 4);
  expect([sectionOf(feet, 4), sectionOf(feet, null), sectionsOf(feet)]).toEqual([feet, feet, [feet]]);
  expect(inSection({ lesson, exercise: 4, form: 'loop' })).toEqual({
    lesson: feet,
    exercise: 4,
    form: 'loop',
  });
  const plain = read('title: T\nexercises: [x . x .]\n');
  expect(inSection({ lesson: plain, exercise: 1 }).lesson).toBe(plain);
});

it('[LE22] tells a fault once, where it is written', () => {
  const broken = DIVIDED.replace('bass: {pattern: x x x x, level: feathered}', 'bass: x x x')
    .replace('vocabulary: [..., ..x, x..]', 'vocabulary: [y]')
    .replace('tempo: 60', 'temp: 60')
    .replace('{bass: x x x x, hihat', '{bass: x x x, hihat')
    .replace('rest: 1}', 'rest: none}');
  expect(problemsOf(broken).map((each) => each.split(', expected')[0])).toEqual([
    '7:9: error: groove.bass: found 3 beats',
    '11:14: error: vocabulary[1]: found "y"',
    '25:5: error: sections[2].temp: found unknown key "temp"',
    '26:20: error: sections[2].groove.bass: found 3 beats',
    '29:40: error: sections[2].forms.answer.sections[1].rest: found "none"',
  ]);
});
