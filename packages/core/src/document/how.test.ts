import { expect, it } from 'vitest';
import { problemsOf, read } from '../../test/reading.ts';
import { perform } from '../groove/perform.ts';
import { exerciseKey, surroundingsOf } from '../lesson/identity.ts';
import type { Lesson } from '../lesson/lesson.ts';
import { printLesson } from './print.ts';

const LESSON = `title: How
groove:
  ride: {pattern: x x.x x x.x, how: 'tip,  bow'}
  hihat-foot: . x . x
  bass: {pattern: x x x x, level: feathered, how: heel down}
how: {snare: tip, hihat-foot: rocking heel and toe}
exercises:
  - x . x .
  - {pattern: x x . ., how: 'centre, half stroke'}
  - {pattern: {snare: x . . ., bass: . . x .}, how: 'heel up, tip'}
  - {pattern: . x . x, how: {snare: edge, ride: bell}}
sections:
  - {heading: Own, groove: {ride: x x x x, bass: {pattern: x . x ., how: heel up}}, exercises: [x x x x]}
  - {heading: Same, how: {ride: shoulder}, exercises: [x x x .]}
`;

function strokesOf(lesson: Lesson, exercise: number | null) {
  const form = lesson.forms.find(({ name }) => name === 'loop');
  if (!form) throw new Error('no loop');
  const { strokes } = perform(lesson, { exercise, form });
  const said = strokes.map(({ voice, how, articulation }) => {
    return `${voice}: ${how?.join(', ') ?? '-'}${articulation === 'normal' ? '' : ` (${articulation})`}`;
  });
  return [...new Set(said)].filter((each) => !each.startsWith('click')).toSorted();
}

it('[LE2100] is read beside a voice of the groove, a lesson, a section and an exercise, and comes back as it was', () => {
  const lesson = read(LESSON);
  expect(problemsOf(LESSON)).toEqual([]);
  expect(lesson.how).toEqual({
    ride: ['tip', 'bow'],
    'hihat-foot': ['rocking heel and toe'],
    bass: ['heel down'],
    snare: ['tip'],
  });
  expect(lesson.exercises.map(({ how }) => how)).toEqual([
    undefined,
    { snare: ['centre', 'half stroke'] },
    { snare: ['tip'], bass: ['heel up'] },
    { snare: ['edge'], ride: ['bell'] },
    undefined,
    undefined,
  ]);
  const [opening, own, same] = lesson.sections;
  expect([opening?.how.bass, own?.how.bass, own?.how.ride, same?.how.ride, same?.how.bass]).toEqual([
    ['heel down'],
    ['heel up'],
    ['tip', 'bow'],
    ['shoulder'],
    ['heel down'],
  ]);
  const again = read(printLesson(lesson));
  expect([again.how, again.exercises, again.sections.map(({ how }) => how)]).toEqual([
    lesson.how,
    lesson.exercises,
    lesson.sections.map(({ how }) => how),
  ]);
});

it('[LE2100] goes with each stroke; on the bell the ride is struck on its bell', () => {
  const lesson = read(LESSON);
  expect(strokesOf(lesson, 1)).toEqual([
    'bass: heel down',
    'hihat-foot: rocking heel and toe',
    'ride: tip, bow',
    'snare: tip',
  ]);
  expect(strokesOf(lesson, 3)).toContain('bass: heel up');
  expect(strokesOf(lesson, 4)).toEqual([
    'bass: heel down',
    'hihat-foot: rocking heel and toe',
    'ride: bell (bell)',
    'snare: edge',
  ]);
  expect(strokesOf(read('title: T\nexercises: [x . . .]\n'), 1).every((each) => each.endsWith(': -'))).toBe(
    true,
  );
});

it('[LE2100] is refused at its word where it does not go with the voice, or says two things at once', () => {
  const text = `title: T
groove:
  ride: {pattern: x x x x, how: 'tip, heel down'}
  bass: {pattern: x . x ., how: heel dwn}
how: {snare: 'centre, tip, edge'}
exercises:
  - {pattern: x . . ., how: bow}
  - {pattern: x . x ., how: ['tip']}
sections:
  - {groove: {bass: {pattern: x x x x, how: bell}}, exercises: [x x x x]}
`;
  expect(problemsOf(text)).toEqual([
    '3:39: error: groove.ride.how: found "heel down", expected a word that goes with ride: tip, shoulder, bow, bell, edge, low stroke, half stroke and full stroke, or words of your own',
    '4:33: warning: groove.bass.how: found "heel dwn", expected one of heel down, heel up, tip, shoulder, centre, edge, bow, bell, low stroke, half stroke, full stroke (did you mean "heel down"?)',
    '5:28: error: how.snare: found "edge", expected one of the two: it says centre already',
    '7:29: error: exercises[1].how: found "bow", expected a word that goes with snare: tip, centre, edge, low stroke, half stroke and full stroke, or words of your own',
    '8:29: error: exercises[2].how: found a list, expected words such as heel down, joined by commas',
    '10:45: error: sections[1].groove.bass.how: found "bell", expected a word that goes with bass drum: heel down and heel up, or words of your own',
  ]);
});

it('[LE2101] makes no bar a stranger', () => {
  const plain = read('title: T\nexercises: [x . x .]\n');
  const said = read(
    'title: T\nhow: {bass: heel down}\nexercises: [{pattern: x . x ., how: "tip, centre"}]\n',
  );
  const keyOf = ({ exercises: [first] }: Lesson) => first && exerciseKey(first);
  expect([keyOf(said), surroundingsOf(said)]).toEqual([keyOf(plain), surroundingsOf(plain)]);
});
