import { formatPattern, type Lesson, parsePattern, struckSlots } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { factInEnglish } from '../../../internal/testing/in-english.ts';
import { lessonFrom, lessonOf } from '../test/lessons.ts';
import { compose, patternTexts } from './compose.ts';
import { composeQuestions } from './question-answer.ts';
import { composeReview } from './review.ts';
import { variationsOf } from './variations.ts';
import { composeWeakMove } from './weak-move.ts';

const swing = lessonOf('swing');

function pointsOf(page: ReturnType<typeof compose>): readonly number[] {
  return page.report.bars.map((bar) => bar.grade.points);
}

function expectRising(points: readonly number[]): void {
  expect(points.slice(1).every((each, i) => each >= (points[i] ?? 0) - 1e-6)).toBe(true);
}

/** Lessons that questions and answers are composed for. */
const PHRASED = ['swing', 'waltz', 'bossa'] as const;

describe('two bars', () => {
  it('[CO29] composes exercises of two bars', () => {
    const page = compose(lessonOf('bossa', 'compose: { bars: 2 }'), { count: 16, seed: 2 });
    // definition: two bars of four beats
    expect(
      page.exercises.map((exercise) => exercise.parts[0]?.pattern.bars.map((bar) => bar.length)),
    ).toEqual(new Array(16).fill([4, 4]));
    expectRising(pointsOf(page));
    expect(page.report.coverage.missed).toEqual([]);
  });

  it.each(PHRASED)('[CO30] %s: an answer begins like its question and comes to rest', (name) => {
    const lesson = lessonOf(name);
    const page = composeQuestions(lesson, { count: 12, seed: 3 });
    expect(page.exercises).toHaveLength(12);
    expectRising(pointsOf(page));
    for (const exercise of page.exercises) {
      const [question = [], answer = []] = exercise.parts[0]?.pattern.bars ?? [];
      const half = Math.ceil(question.length / 2);
      const last = (bar: typeof question) => struckSlots(bar.at(-1) ?? { text: '', marks: [] });
      // definition: the same first half; an off-beat at the end of the question, none at that of the answer
      expect(answer.slice(0, half)).toEqual(question.slice(0, half));
      expect(last(question).some((slot) => slot > 0)).toBe(true);
      expect(last(answer).some((slot) => slot > 0)).toBe(false);
    }
  });
});

describe('a weak move', () => {
  it('[CO31] is in every bar, from the simplest bar on', () => {
    const page = composeWeakMove(swing, { from: '..x', to: '...' }, { count: 12, seed: 1 });
    expectRising(pointsOf(page));
    for (const text of patternTexts(swing, page.exercises)) {
      // definition: the move, the bar looped
      expect(`${text} ${text}`).toContain('..x ...');
    }
    // definition: with the ride on 2 and no other stroke is the easiest place for it
    expect(patternTexts(swing, page.exercises)[0]).toBe('... ..x ... ...');
  });

  it('[CO31] refuses a cell that the vocabulary has not', () => {
    expect(() => composeWeakMove(swing, { from: '.x.', to: '...' })).toThrow(
      'the vocabulary has no cell ".x."; it has ..., x.., ..x, x.x',
    );
  });
});

describe('a review', () => {
  const sheet = (title: string, seed: number): Lesson => ({
    ...swing,
    title,
    exercises: compose(swing, { count: 16, seed }).exercises,
  });

  it('[CO32] mixes earlier sheets: none twice, no neighbours from one sheet, difficulty rising', () => {
    const sheets = [sheet('First', 1), sheet('Second', 2), sheet('Third', 3)];
    const review = composeReview(swing, sheets, { count: 12, seed: 1 });
    expect(review).toHaveLength(12);
    expectRising(review.map((each) => each.points));
    const texts = review.map(({ exercise }) => formatPattern(exercise.parts[0]?.pattern ?? { bars: [] }));
    expect(new Set(texts).size).toBe(12);
    // definition: neighbours come from different sheets
    expect(review.slice(1).every((each, i) => each.sheet !== review[i]?.sheet)).toBe(true);
    const [first] = review;
    expect(first?.exercise.name).toBe(`${sheets[first?.sheet ?? 0]?.title} ${first?.from}`);
    expect(review.map((each) => each.exercise.number)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
  });

  it('[CO32] leaves out sheets in another meter and gives what there is', () => {
    const waltz = lessonOf('waltz');
    const other = { ...waltz, exercises: compose(waltz, { count: 8 }).exercises };
    // definition: three bars in three four cannot be played over four four
    expect(composeReview(swing, [other], { count: 4, seed: 1 })).toEqual([]);
    expect(composeReview(swing, [sheet('Only', 4)], { count: 99, seed: 1 })).toHaveLength(16);
  });
});

describe('variations', () => {
  it('[CO33] adds, drops and shifts strokes', () => {
    const found = variationsOf(swing, parsePattern('x.. ..x ... ...'));
    const of = (kind: string) =>
      found
        .filter((each) => each.what.fact === `variation-${kind}`)
        .map((each) => formatPattern(each.pattern));
    // definition: by hand
    expect(of('fewer').toSorted()).toEqual(['... ..x ... ...', 'x.. ... ... ...']);
    expect(of('more')).toHaveLength(10);
    expect(of('slot-later')).toEqual(['.x. ... x.. ...']);
    expect(of('slot-earlier')).toEqual(['... .x. ... ..x']);
    expect(of('beat-later')).toEqual(['... x.. ..x ...']);
    expect(of('exchanged')).toEqual(['.xx xx. xxx xxx']);
    expect(of('backwards')).toEqual(['x.. ... .x. ...']);
    expect(
      found.some(
        ({ what }) => what.fact === 'variation-fewer' && factInEnglish(what) === 'without the let of 2',
      ),
    ).toBe(true);
    expectRising(found.map((each) => each.points));
  });

  it('[CO33] gives each once, never silence, never what cannot be played', () => {
    const fast = lessonFrom('tempo: { start: 120, goal: 200 }\nfeel: triplet\nvocabulary: [x..]');
    const texts = variationsOf(fast, parsePattern('x.. ... ... ...')).map((each) =>
      formatPattern(each.pattern),
    );
    // definition: one stroke leaves nothing to drop; triplets at 200 are ten a second, so pairs only
    expect(new Set(texts).size).toBe(texts.length);
    expect(texts).not.toContain('... ... ... ...');
    expect(
      variationsOf(fast, parsePattern('xx. ... ... ...')).map((each) => formatPattern(each.pattern)),
    ).not.toContain('xxx ... ... ...');
    // definition: no shift by a slot where beats have different slots
    expect(
      variationsOf(swing, parsePattern('x. ..x . .')).some(
        (each) => each.what.fact === 'variation-slot-later',
      ),
    ).toBe(false);
  });
});
