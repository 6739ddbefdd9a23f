import { expect, it } from 'vitest';
import { FILE, read } from '../../test/reading.ts';
import { perform } from '../groove/perform.ts';
import { exerciseKey } from '../lesson/identity.ts';
import { parseLesson } from './parse.ts';
import { printLesson } from './print.ts';

const BARS = 'x... | .x.. | ..x. | ...x'.replaceAll(/[x.]{4}/g, (bar) => [...bar].join(' '));

function lessonOf(said: string, pattern = BARS) {
  return read(
    `title: T\ngroove: {bass: x . . . | . . . x}\nexercises:\n  - {pattern: ${pattern}, ${said}}\n`,
  );
}

function barsPlayed(said: string, sections = 4) {
  const form = {
    name: 'f',
    sections: [{ play: 'pattern', bars: sections, ending: null }],
    repeat: 1,
    countInBars: 0,
  } as const;
  return perform(lessonOf(said), { exercise: 1, form });
}

const orderOf = (said: string) => barsPlayed(said).bars.map(({ patternBar }) => (patternBar ?? -1) + 1);

it('[LE380] repeats and signs of repeated bars are read, and printed as they are meant', () => {
  const again = ['1-4', '{bars: 1-2, endings: [3, 4]}', '[1, {bars: 2-3, times: 4}]', '{bars: 1, times: 3}'];
  for (const repeats of again) {
    const lesson = lessonOf(`repeats: ${repeats}`);
    expect(read(printLesson(lesson)).exercises).toEqual(lesson.exercises);
    expect(lesson.exercises[0]?.repeats).toBeDefined();
    // A pattern that is gone through otherwise is another exercise; how it is printed is none.
    expect(exerciseKey(lesson.exercises[0] as never)).not.toBe(
      exerciseKey(lessonOf('keep: false').exercises[0] as never),
    );
  }
  const same = lessonOf('barRepeats: [2, 3-4]', 'x x x x | x x x x | x x x x | x x x x');
  expect(same.exercises[0]?.barRepeats).toEqual([
    { from: 1, to: 2 },
    { from: 2, to: 4 },
  ]);
  expect(read(printLesson(same)).exercises).toEqual(same.exercises);
});

it('[LE380] what cannot be repeated is refused where it stands', () => {
  const found = (said: string, pattern = BARS) =>
    parseLesson(`title: T\nexercises:\n  - {pattern: ${pattern}, ${said}}\n`, FILE).problems.map(
      ({ path, expected }) => `${path} ${expected.fact}`,
    );
  const at = (key: string) => `exercises[1].${key}`;
  expect(found('repeats: 1-5')).toEqual([`${at('repeats')} bar-up-to`]);
  expect(found('repeats: three')).toEqual([`${at('repeats')} some-bars`]);
  expect(found('repeats: {bars: 1-2, endings: [4, 3]}')).toEqual([
    `${at('repeats.endings[1]')} ending-at-bar`,
  ]);
  expect(found('repeats: {bars: 1-2, endings: [3]}')).toEqual([`${at('repeats.endings')} endings-up-to`]);
  expect(found('repeats: {bars: 1-2, times: 2, ending: 3}')[0]).toContain('one-of');
  expect(found('repeats: [1-3, 3-4]')).toEqual([`${at('repeats[2]')} repeat-after-bar`]);
  expect(found('barRepeats: 2')).toEqual([`${at('barRepeats')} same-as-bars-before`]);
  expect(found('barRepeats: 1', 'x x x x | x x x x')).toEqual([`${at('barRepeats')} same-as-bars-before`]);
  expect(found('barRepeats: 1-3', 'x x x x | x x x x | x x x x')).toEqual([
    `${at('barRepeats')} one-or-two-bars`,
  ]);
  // The second time round, what is played before bar 2 is bar 3, which is another.
  expect(found('{repeats: 2-3, barRepeats: 2}'.slice(1, -1), 'x x x x | x x x x | x . . .')).toEqual([
    `${at('barRepeats')} same-as-bars-before`,
  ]);
});

it('[GR380] repeats are played as they are printed, with the groove that stands under each bar', () => {
  // definition: each from the reading of the signs
  expect(orderOf('repeats: 1-2')).toEqual([1, 2, 1, 2, 3, 4]);
  expect(orderOf('repeats: {bars: 1-2, endings: [3, 4]}')).toEqual([1, 2, 3, 1, 2, 4]);
  expect(orderOf('repeats: {bars: 1-2, endings: [3, 4], times: 3}')).toEqual([1, 2, 3, 1, 2, 3, 1, 2, 4]);
  expect(orderOf('repeats: [1, {bars: 2-4, times: 3}]')).toEqual([1, 1, 2, 3, 4, 2, 3, 4, 2, 3, 4]);
  const { strokes } = barsPlayed('repeats: {bars: 1, endings: [2, 3]}');
  const bass = strokes
    .filter(({ voice }) => voice === 'bass')
    .map(({ written }) => `${written.bar} ${written.beat}`);
  // definition: bars 1, 2, 1, 3, 4 as written; the groove has beat 1 under odd bars and beat 4 under even ones
  expect(bass).toEqual(['1 1', '2 4', '3 1', '4 1', '5 4']);
});

it('[GR380] a form plays whole times through', () => {
  // definition: six bars as played go once into four, and twice into ten
  const said = 'repeats: {bars: 1-2, endings: [3, 4]}';
  expect([barsPlayed(said, 4).bars.length, barsPlayed(said, 10).bars.length]).toEqual([6, 12]);
});
