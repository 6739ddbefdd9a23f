import { formatPattern, parsePattern } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { factInEnglish } from '../../../internal/testing/in-english.ts';
import { exerciseOf, lessonOf } from '../test/lessons.ts';
import { composeGoal } from './goal.ts';
import { gradeExercise } from './grade.ts';
import { barsNear, DIRECTIONS } from './like.ts';
import { withComping } from './page.ts';

const swing = lessonOf('swing');

describe('bars near a bar', () => {
  it('[CO52] are easier, harder or as hard, keep to the vocabulary, and say what changes', () => {
    const bar = exerciseOf(swing, 'x.. ..x x.x ...');
    const points = gradeExercise(swing, bar).points;
    for (const direction of DIRECTIONS) {
      const near = barsNear(swing, bar, direction);
      expect(near).toHaveLength(4);
      for (const each of near) {
        const text = formatPattern(each.pattern);
        const by = each.points - points;
        // definition: a quarter of a point is as hard; every cell is one of the four
        if (direction === 'like') expect(Math.abs(by)).toBeLessThanOrEqual(0.25);
        else expect(Math.sign(by)).toBe(direction === 'harder' ? 1 : -1);
        expect(each.points).toBeCloseTo(gradeExercise(swing, exerciseOf(swing, text)).points, 6);
        expect(text.split(' ').every((cell) => ['...', 'x..', '..x', 'x.x'].includes(cell))).toBe(true);
        expect(text).not.toBe('x.. ..x x.x ...');
        expect(factInEnglish(each.what).length).toBeGreaterThan(5);
      }
    }
  });

  it('[CO3404] keep what other voices of the exercise play, and are graded with it', () => {
    const rhythm = (text: string) => parsePattern(text);
    const parts = [
      { voice: 'snare', pattern: rhythm('... ..x ..x ...') },
      { voice: 'bass', pattern: rhythm('... ..x ... x..') },
    ] as const;
    const dialogue = { ...exerciseOf(swing, '... ..x ..x ...'), parts };
    const { points } = gradeExercise(swing, dialogue);
    for (const direction of DIRECTIONS) {
      const near = barsNear(swing, dialogue, direction);
      expect(near.length).toBeGreaterThan(0);
      for (const { pattern, points: found } of near) {
        const made = { ...dialogue, parts: withComping(swing, dialogue, pattern) };
        // definition: the comping voice alone is changed, and all voices together are easier, harder or as hard
        expect(made.parts).toEqual([{ voice: 'snare', pattern }, parts[1]]);
        expect(found).toBeCloseTo(gradeExercise(swing, made).points, 6);
        if (direction === 'like') expect(Math.abs(found - points)).toBeLessThanOrEqual(0.25);
        else expect(Math.sign(found - points)).toBe(direction === 'harder' ? 1 : -1);
      }
    }
  });

  it('[CO3404] ask no limb for a stroke where another voice of the exercise has it', () => {
    const tom = { voice: 'tom-high', pattern: parsePattern('... ... x.. ...') } as const;
    const parts = [{ voice: 'snare', pattern: parsePattern('x.. ... ... x..') } as const, tom];
    // definition: one hand plays snare and toms, and the tom has it on 3
    const three = DIRECTIONS.flatMap((direction) =>
      barsNear(swing, { ...exerciseOf(swing, 'x.. ... ... x..'), parts }, direction, 99),
    ).filter(({ pattern }) => formatPattern(pattern).split(' ')[2]?.startsWith('x'));
    expect(three).toEqual([]);
  });
});

describe('a goal', () => {
  const goal = { ...exerciseOf(swing, '..x x.x ..x ..x', 9), name: 'The goal' };

  it('[CO53] is led to by rising bars, each with as few new things as can be, and comes last', () => {
    const page = composeGoal(swing, goal, []);
    const points = page.exercises.map((exercise) => gradeExercise(swing, exercise).points);
    expect(page.exercises.at(-1)).toMatchObject({ name: 'The goal', parts: goal.parts });
    expect(points).toEqual(points.toSorted((a, b) => a - b));
    // definition: five strokes on let and 1, six things in all: moves ..x x.x, x.x ..x and ..x ..x, a let with the lead
    // hand, a let alone, a 1 with it; two at a time they need three bars
    expect(page.skills).toBe(6);
    expect(page.news).toEqual([2, 2, 2]);
    expect(page.news.reduce((sum, each) => sum + each, 0)).toBe(page.skills);
  });

  it('[CO53] leaves out what the student has', () => {
    const half = exerciseOf(swing, '..x x.x ..x x.x', 1);
    const page = composeGoal(swing, goal, [half]);
    expect(page.mastered).toBeGreaterThan(0);
    // definition: only the move from one let to the next is missing
    expect(page.news).toEqual([1]);
    // definition: nothing is left to learn
    expect(composeGoal(swing, goal, [goal])).toMatchObject({ mastered: page.skills, news: [0] });
  });

  it('[CO53] takes no more bars than two new things a bar ask for, where bars for that exist', () => {
    const wide = lessonOf('swing of five cells');
    for (const text of ['..x x.x .x. ..x', 'x.x .x. .x. ..x', '.x. x.x ..x x..', '..x ..x x.x .x.']) {
      const page = composeGoal(wide, exerciseOf(wide, text, 9), []);
      // definition: two things a bar at most, so half of them, rounded up, is the least
      expect(page.exercises.length).toBe(Math.ceil(page.skills / 2));
      expect(Math.max(...page.news)).toBeLessThanOrEqual(2);
    }
  });

  it('[CO53] may be a phrase', () => {
    const phrase = { ...exerciseOf(swing, 'x.. ..x ... ..x | x.. ..x ... ...', 1) };
    const page = composeGoal(swing, phrase, []);
    expect(Math.max(...page.news)).toBeLessThanOrEqual(2);
    expect(page.exercises.at(-1)?.parts[0]?.pattern).toEqual(
      parsePattern('x.. ..x ... ..x | x.. ..x ... ...'),
    );
  });
});
