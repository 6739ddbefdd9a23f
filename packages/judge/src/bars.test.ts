/** Bars of an exercise that never came, were left out, or came in another order; by oneself and beside a click. */
import type { Form, Lesson } from '@shedbook/core';
import { expect, it } from 'vitest';
import { hearStory, taskOf } from '../../../internal/testing/stories/hear.mjs';
import { sheetNamed } from '../../../internal/testing/stories/lessons.mjs';
import { type AdviceFact, adviceOn, type JudgeTask, judge, recordRound } from './index.ts';

interface Bars {
  readonly name: string;
  readonly sheet?: string;
  readonly exercise: number;
  /** The bars of the form that were played, one after the other. */
  readonly bars: readonly number[];
}

interface Wrong extends Bars {
  /** What is advised, with bars as they are written. */
  readonly advice: AdviceFact;
  /** The exercise that it may have been as well. */
  readonly or?: number;
}

const without = (...bars: readonly string[]): AdviceFact => ({ fact: 'do-play-bars', bars });
const withoutOne = (bar: string): AdviceFact => ({ fact: 'do-play-bar', bar });
const IN_ORDER: AdviceFact = { fact: 'do-play-in-order', bars: ['1', '3', '2'] };
const GROOVE = { sheet: 'two-bar-groove', exercise: 1 };

// definition: exercises A, A B C, A B C D, and A B A C, where B and C are first and second ending; a groove of two bars
const WRONG: readonly Wrong[] = [
  { name: 'the first of three', exercise: 2, bars: [1, 1, 1, 1, 1, 1], advice: without('2', '3'), or: 1 },
  { name: 'the first two of four', exercise: 3, bars: [1, 2, 1, 2, 1, 2, 1, 2], advice: without('3', '4') },
  { name: 'all but the second', exercise: 2, bars: [1, 3, 1, 3, 1, 3], advice: withoutOne('2') },
  { name: 'another order', exercise: 2, bars: [1, 3, 2, 1, 3, 2], advice: IN_ORDER },
  {
    name: 'the second ending alone',
    exercise: 4,
    bars: [1, 4, 1, 4, 1, 4, 1, 4],
    advice: withoutOne('2'),
  },
  { name: 'half of a groove', ...GROOVE, bars: [1, 1, 1, 1, 1, 1, 1, 1], advice: withoutOne('2') },
];
const RIGHT: readonly Bars[] = [
  { name: 'all three', exercise: 2, bars: [1, 2, 3, 1, 2, 3] },
  { name: 'both endings', exercise: 4, bars: [1, 2, 3, 4, 1, 2, 3, 4] },
  { name: 'the whole groove', ...GROOVE, bars: [1, 2, 3, 4, 1, 2, 3, 4] },
];

const FORM: Form = {
  ...{ name: 'loop', repeat: 1, countInBars: 0 },
  sections: [{ play: 'pattern', bars: 4, ending: null }],
};

function judged({ exercise, bars, sheet = 'bars', name }: Bars, click: boolean) {
  const lesson = sheetNamed(sheet) as Lesson;
  const count = exercise === 2 ? 3 : 4;
  // beside a click each loop asks for all bars, whatever is played
  const story = { name, sheet, exercise, level: 'beginner', click, is: 'clean' } as const;
  const heard = hearStory(lesson, FORM, {
    ...story,
    rounds: click ? bars.length / count : 1,
    play: { bars: click ? bars.slice(0, count) : bars, spreadMs: 9 },
  } as never);
  const task = taskOf(lesson, FORM, story as never) as JudgeTask;
  return [heard.take, ...heard.loops].map((each) => judge(task, each, 'beginner'));
}

const inBothWays = <T>(all: readonly T[]) =>
  all.flatMap((one) => [false, true].map((click) => ({ ...one, click })));

it.each(inBothWays(WRONG))('[JU800] $name of what was asked, beside a click: $click', (told) => {
  const said = judged(told, told.click).map(({ verdict: { is, about }, task }) => ({
    is,
    advice: about[0] && adviceOn(about[0], task),
    or: about[0]?.exercise,
    // what never came explains the rest: no stroke of it is held against anyone once more
    more: about.slice(1),
  }));
  const { advice, or } = told;
  expect(said).toEqual(said.map(() => ({ is: 'not yet', advice, or, more: [] })));
});

it.each(inBothWays(RIGHT))('[JU800] $name of what was asked, beside a click: $click', (told) => {
  expect(judged(told, told.click).map(({ verdict }) => verdict.about)).toEqual(
    judged(told, told.click).map(() => []),
  );
});

it('[JU800] three of four bars that are all of another exercise may have been that one', () => {
  const told = { name: 'the first three of four', exercise: 3, bars: [1, 2, 3, 1, 2, 3] };
  const [first] = judged(told, false)[0]?.verdict.about ?? [];
  expect(first).toMatchObject({ what: 'missing', times: 1, of: 4, exercise: 2 });
});

it('[JU800] a bar that never came is no limb’s fault in a log', () => {
  const told = { name: 'all but the second', exercise: 2, bars: [1, 3, 1, 3, 1, 3] };
  const rounds = judged(told, true)[0]?.rounds.map(recordRound) ?? [];
  expect(rounds.map(({ verdict, faults }) => [verdict, faults])).toEqual(rounds.map(() => ['stumble', []]));
  expect(rounds.length).toBeGreaterThan(0);
});
