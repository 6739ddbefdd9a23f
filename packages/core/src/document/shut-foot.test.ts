import { expect, it } from 'vitest';
import { problemsOf, read } from '../../test/reading.ts';
import { isFootShut } from '../groove/shut-foot.ts';
import { sectionsOf } from '../lesson/section.ts';

const lesson = (groove: string, exercises: string) =>
  `title: Feet\ngroove: {${groove}}\nexercises:\n${exercises}`;

const WARNING =
  'found the hi-hat foot at bar 1, beat 2, place 1, where the hand strikes the same hi-hat closed, expected the foot where the hand is elsewhere or strikes the hi-hat open, since nothing is heard of it while it holds the cymbals shut';

it('[LE7009] warns of a hi-hat foot under a hand that strikes the same hi-hat closed, where it is written', () => {
  const closed = 'hihat: xx xx xx xx, hihat-foot: . x . x';
  expect(problemsOf(lesson(closed, '  - x . x .\n  - . x . x\n'))).toEqual([
    `2:42: warning: groove.hihat-foot: ${WARNING}`,
  ]);
  // common practice: the foot between strokes of the hand, under open hats, or under the ride, is heard
  for (const groove of [
    'hihat: x . x ., hihat-foot: . x . x',
    'hihat: xx ox xx ox, hihat-foot: . x . x',
    'ride: xx xx xx xx, hihat-foot: . x . x',
    'hihat: xx xx xx xx',
  ])
    expect(problemsOf(lesson(groove, '  - x . x .\n'))).toEqual([]);
  // an exercise for the hand over the feet, and one for the foot under the hand; a fill silences the groove's foot
  expect(
    problemsOf(lesson('bass: x x x x, hihat-foot: . x . x', '  - {pattern: {hihat: . x . .}}\n')),
  ).toEqual([`4:5: warning: exercises[1]: ${WARNING}`]);
  expect(problemsOf(lesson('hihat: x x x x', '  - x . x .\n  - {pattern: {hihat-foot: . x . .}}\n'))).toEqual(
    [`5:5: warning: exercises[2]: ${WARNING}`],
  );
  expect(
    problemsOf(lesson('bass: x x x x, hihat-foot: . x . x', '  - {pattern: {hihat: . x . .}, fill: 1}\n')),
  ).toEqual([]);
});

it('[LE7009] tells it once for a groove that sections take over', () => {
  const text = `title: Feet
groove: {hihat: x x x x, hihat-foot: . x . .}
exercises: [x . . .]
sections:
  - heading: The same
    exercises: [x . x .]
  - heading: Its own
    groove: {hihat: x x x x | x x x x, hihat-foot: . . . . | . x . .}
    exercises: [x . x x]
`;
  expect(problemsOf(text).map((each) => each.split(', where')[0])).toEqual([
    '2:38: warning: groove.hihat-foot: found the hi-hat foot at bar 1, beat 2, place 1',
    '8:52: warning: sections[2].groove.hihat-foot: found the hi-hat foot at bar 2, beat 2, place 1',
  ]);
  const sections = sectionsOf(read(text));
  expect(isFootShut(sections)).toBe(true);
  expect(isFootShut(sectionsOf(read(text.replace('x . x x]', '{pattern: {hihat: . . x .}}]'))))).toBe(false);
  expect(isFootShut(sectionsOf(read('title: T\nexercises: [x . . .]\n')))).toBe(false);
});
