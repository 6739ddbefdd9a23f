import { describe, expect, it } from 'vitest';
import { exerciseOf, lessonOf } from '../test/lessons.ts';
import { compose } from './compose.ts';
import { compare, explain, saidReasons } from './explain.ts';
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
    const { fact, points } = compare(
      lesson,
      exerciseOf(lesson, 'x.. x.. ... ...', 13),
      exerciseOf(lesson, 'x.. x.. ..x ...', 14),
    );
    const places = [{ fact: 'syllable', syllable: 'let', beat: 3 }];
    // definition: a beat hung over 4 · 0.4, and a stroke alone that weighs 1
    expect(fact).toMatchObject({
      fact: 'harder',
      number: 14,
      other: 13,
      why: [
        { fact: 'worth-more', what: { fact: 'more-of-pulse' }, points: expect.closeTo(1.6, 9) },
        {
          fact: 'worth-more',
          what: { fact: 'more-alone', strokes: 1, places },
          points: expect.closeTo(1, 9),
        },
        { fact: 'worth-more' },
      ],
    });
    // definition: alone 1, syncopation 3 · 0.05, one stroke 0.1, one more change 0.15, two more changes of company 0.3,
    // a beat hung over 4 · 0.4
    expect(points).toBeCloseTo(3.3, 9);
  });

  it('[CO28] is the same the other way round, and says when bars are alike', () => {
    const first = exerciseOf(lesson, '... ... ..x ...', 1);
    const second = exerciseOf(lesson, 'x.. ... ... x..', 2);
    const there = compare(lesson, first, second);
    const back = compare(lesson, second, first);
    const named = ({ fact }: typeof there) => ('why' in fact ? fact.why.map(({ what }) => what.fact) : []);
    // definition: differences change sign
    expect(back.points).toBeCloseTo(-there.points, 9);
    expect(there.fact).toMatchObject({ fact: expect.stringMatching(/^easier/), number: 2, other: 1 });
    expect(named(there)).toContain('less-of-silence');
    expect(named(back)).toContain('more-of-silence');
    expect(compare(lesson, first, { ...first, number: 3 }).fact).toMatchObject({
      fact: 'as-hard',
      number: 3,
      other: 1,
    });
  });

  it('[CO3401] names no reason that one decimal would write as 0.0', () => {
    const page = compose(lesson, { count: 24, seed: 6 }).exercises;
    const facts = page.flatMap((one) => page.map((other) => compare(lesson, one, other).fact));
    const worth = facts.flatMap((fact) => [
      ...('why' in fact ? fact.why : []),
      ...('but' in fact ? fact.but : []),
    ]);
    const said = page.flatMap((exercise) => saidReasons(explain(lesson, exercise).reasons));
    expect(worth.length).toBeGreaterThan(1_000);
    // definition: what rounds to a tenth is a twentieth at least
    for (const { points } of [...worth, ...said]) expect(points).toBeGreaterThanOrEqual(0.05);
    // definition: whoever is harder or easier has a reason
    for (const fact of facts) if ('why' in fact) expect(fact.why).not.toEqual([]);
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
