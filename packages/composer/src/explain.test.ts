import { describe, expect, it } from 'vitest';
import { exerciseOf, lessonOf } from '../test/lessons.ts';
import { compose } from './compose.ts';
import { compare, explain } from './explain.ts';
import { gradeExercise } from './grade.ts';

const lesson = lessonOf('swing');

describe('explaining', () => {
  it('[CO27] says what makes a bar hard, in facts and points that add up', () => {
    for (const exercise of compose(lesson, { count: 24, seed: 1 }).exercises) {
      const { grade, reasons } = explain(lesson, exercise);
      // definition: the grade is the sum of its reasons
      expect(reasons.reduce((sum, each) => sum + each.points, 0)).toBeCloseTo(grade.points, 6);
      expect(grade).toEqual(gradeExercise(lesson, exercise));
    }
    const { pattern, reasons } = explain(lesson, exerciseOf(lesson, '..x ..x ... ...', 14));
    const of = (part: string) => reasons.find((reason) => reason.part === part);
    expect(pattern).toBe('..x ..x ... ...');
    // definition: the last triplet of 1 alone, that of 2 with the ride; 1 silent; two strokes; 3/T + 6/T at T = 1/3
    const places = (beat: number) => [{ fact: 'syllable', syllable: 'let', beat }];
    expect(of('alone')?.why).toEqual({ fact: 'fall-alone', strokes: 1, places: places(1) });
    expect(of('lead')?.why).toEqual({ fact: 'fall-with', strokes: 1, voices: ['ride'], places: places(2) });
    expect(of('silence')).toMatchObject({ points: 0.25, why: { fact: 'silence', bars: 1 } });
    expect(of('wnbd')?.why).toMatchObject({ fact: 'part-wnbd' });
    expect(of('wnbd')?.why).toHaveProperty('count', expect.closeTo(9, 9));
  });

  it('[CO27] names the bar of a stroke where there are two', () => {
    const { reasons } = explain(lesson, exerciseOf(lesson, '... ... ... ... | ..x ... ... ...'));
    const why = reasons.map((reason) => reason.why);
    const place = { fact: 'syllable', syllable: 'let', beat: 1 };
    expect(why).toContainEqual({
      fact: 'fall-alone',
      strokes: 1,
      places: [{ fact: 'in-bar', place, bar: 2 }],
    });
    expect(why).toContainEqual({ fact: 'silence', bars: 2 });
  });

  it('[CO28] says why one bar is harder than another', () => {
    const { text, points } = compare(
      lesson,
      exerciseOf(lesson, 'x.. x.. ... ...', 13),
      exerciseOf(lesson, 'x.. x.. ..x ...', 14),
    );
    expect(text).toMatch(
      /^14 is harder than 13 because it says less of the pulse \(\+1\.6\), one more stroke falls alone \(the let of 3\) \(\+1\.0\)/,
    );
    // definition: alone 1, syncopation 3 · 0.05, one stroke 0.1, one more change 0.15, two more changes of company 0.3,
    // a beat hung over 4 · 0.4
    expect(points).toBeCloseTo(3.3, 9);
  });

  it('[CO28] is the same the other way round, and says when bars are alike', () => {
    const first = exerciseOf(lesson, '... ... ..x ...', 1);
    const second = exerciseOf(lesson, 'x.. ... ... x..', 2);
    const there = compare(lesson, first, second);
    const back = compare(lesson, second, first);
    // definition: differences change sign
    expect(back.points).toBeCloseTo(-there.points, 9);
    expect(there.text).toContain('2 is easier than 1 because');
    expect(there.text).toContain('1 is played (−0.3)');
    expect(back.text).toContain('1 is silent (+0.3)');
    expect(compare(lesson, first, { ...first, number: 3 }).text).toBe('3 is as hard as 1: 0.0 points apart.');
  });

  it('[CO28] accounts for the whole difference', () => {
    const page = compose(lesson, { count: 24, seed: 6 }).exercises;
    expect(page.length).toBe(24);
    page.slice(1).forEach((exercise, i) => {
      const { points, reasons } = compare(lesson, page[i] ?? exercise, exercise);
      // definition: a page never gets easier
      expect(points).toBeGreaterThanOrEqual(-1e-6);
      expect(reasons.reduce((sum, each) => sum + each.points, 0)).toBeCloseTo(points, 1);
    });
  });
});
