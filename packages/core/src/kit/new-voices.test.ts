import { expect, it } from 'vitest';
import { parseLesson } from '../document/parse.ts';
import { printLesson } from '../document/print.ts';
import { perform } from '../groove/perform.ts';
import { homeOf, strikeOf } from './strike.ts';

it('[LE2903] splash, china, cowbell and floor tom are played, printed and read like any other voice', () => {
  const text =
    'title: T\ngroove: {cowbell: x x x x, hihat-foot: o . o .}\n' +
    'exercises: [{pattern: {tom-floor: f . d ., splash: . X . ., china: . . . x}}]\n';
  const { lesson, problems } = parseLesson(text, 'voices');
  if (!lesson) throw new Error(JSON.stringify(problems));
  expect(parseLesson(printLesson(lesson), 'again').lesson).toEqual(lesson);
  const form = {
    name: 'once',
    sections: [{ play: 'pattern' as const, bars: 1, ending: null }],
    repeat: 1,
    countInBars: 0,
  };
  const struck = perform(lesson, { exercise: 1, form }).strokes.map(
    ({ voice, articulation }) => `${voice} ${articulation}`,
  );
  expect(new Set(struck)).toEqual(
    new Set([
      'cowbell normal',
      'hihat-foot splash',
      'tom-floor flam',
      'tom-floor drag',
      'splash normal',
      'china normal',
    ]),
  );
  expect(strikeOf('hihat-foot', 'o')).toMatchObject({ voice: 'hihat-foot', articulation: 'splash' });
  expect([homeOf('splash'), homeOf('sidestick')]).toEqual([null, 'snare']);
});
