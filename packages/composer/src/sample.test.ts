import { listPatterns, seededRandom } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { lessonOf } from '../test/lessons.ts';
import { gradeSettingsOf } from './grade.ts';
import { readGround } from './ground.ts';
import { rulesOf, vocabularyOf } from './rules.ts';
import { tiltedDraw } from './sample.ts';
import { pointTables } from './tables.ts';

const lesson = lessonOf('waltz');
const ground = readGround(lesson, 1);
const vocabulary = vocabularyOf(lesson);
const tables = pointTables(ground, vocabulary, gradeSettingsOf(lesson));
const rules = { ...rulesOf(ground, vocabulary, lesson.compose.limits), strokes: { least: 0, most: null } };
const bars = [...listPatterns(rules)];

/** How often each bar is drawn, against how often it should be: chi-squared. */
function chiSquared(tilt: number, draws: number): number {
  const weights = bars.map((bar) => Math.exp(-tilt * tables.points(bar)));
  const total = weights.reduce((sum, each) => sum + each, 0);
  const drawn = new Map<string, number>();
  const draw = tiltedDraw(tables, rules, tilt);
  const random = seededRandom(11);
  for (let i = 0; i < draws; i += 1) {
    const bar = draw?.(random).join() ?? '';
    drawn.set(bar, (drawn.get(bar) ?? 0) + 1);
  }
  return bars.reduce((sum, bar, i) => {
    const expected = (draws * (weights[i] ?? 0)) / total;
    return sum + ((drawn.get(bar.join()) ?? 0) - expected) ** 2 / expected;
  }, 0);
}

describe('drawing bars of a wanted difficulty', () => {
  it.each([0, 0.5, -0.5])('[CO26] draws each bar as often as its points say, with a tilt of %d', (tilt) => {
    expect(bars).toHaveLength(64);
    // published: chi-squared with 63 degrees of freedom is below 103.4 with probability 0.999 (tables)
    expect(chiSquared(tilt, 64_000)).toBeLessThan(103.4);
  });

  it('[CO26] a strong tilt draws the easiest bar, and no rules leave none to draw', () => {
    const easiest = Math.min(...bars.map((bar) => tables.points(bar)));
    const bar = tiltedDraw(tables, rules, 60)?.(seededRandom(1)) ?? [];
    // definition: e^(−60 · points) leaves nothing but the least
    expect(tables.points(bar)).toBeCloseTo(easiest, 9);
    expect(tiltedDraw(tables, { ...rules, allows: () => false }, 0)).toBeNull();
  });
});
