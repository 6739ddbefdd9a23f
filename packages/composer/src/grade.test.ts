import {
  cell,
  counterEvidence,
  DEFAULT_COMPOSE_SETTINGS,
  keithSyncopation,
  longuetHigginsLee,
  noteToBeatDistance,
  offBeatness,
  parsePattern,
  toNumber,
} from '@shedbook/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lessonFrom, lessonOf, withoutGroove } from '../test/lessons.ts';
import { pageSource } from './compose.ts';
import {
  DEFAULT_GRADE_SETTINGS,
  type GradeSettings,
  gradeCells,
  gradePattern,
  gradeSettingsOf,
  patternGrader,
} from './grade.ts';
import { readGround } from './ground.ts';
import type { PartName } from './parts.data.ts';
import { pointTables } from './tables.ts';

const swing = lessonOf('swing');
const swingGround = readGround(swing, 1);
const points = (text: string, ground = swingGround, settings = DEFAULT_GRADE_SETTINGS) =>
  gradePattern(ground, parsePattern(text), settings).points;

/** A bar of `beats` cells with `slots` slots each, as struck or not. */
const bits = (beats: number, slots: number) =>
  fc.array(fc.boolean(), { minLength: beats * slots, maxLength: beats * slots });

function textOf(struck: readonly boolean[], slots: number): string {
  const marks = struck.map((each) => (each ? 'x' : '.')).join('');
  return (marks.match(new RegExp(`.{${slots}}`, 'g')) ?? []).join(' ');
}

const GROOVES = [
  swing,
  lessonOf('bossa'),
  lessonOf('sixteenths'),
  lessonOf('shuffle'),
  lessonOf('waltz'),
  withoutGroove(lessonFrom('tempo: 60\nvocabulary: [x...]')),
];

describe('the grade', () => {
  it('[CO5] is the sum of its parts, each a count times its weight in the lesson', () => {
    const lesson = lessonOf('swing', 'compose: { weights: { alone: 2, lead: 0, lhl: 0.5 } }');
    const settings = gradeSettingsOf(lesson);
    const grade = gradePattern(readGround(lesson, 1), parsePattern('..x x.. x.. ...'), settings);
    // definition: points = Σ count · weight
    const sum = grade.parts.reduce((total, { part, count }) => total + count * settings.weights[part], 0);
    expect(grade.points).toBeCloseTo(sum, 9);
    const count = (part: PartName) => grade.parts.find((each) => each.part === part)?.count;
    // definition: the last triplet of 1 alone; 2 and 3 with the ride; 1 silent; four changes of cell, looped
    expect([count('alone'), count('lead'), count('silence'), count('density'), count('change')]).toEqual([
      1, 2, 1, 3, 3,
    ]);
  });

  it('[CO6] a last triplet on 2 or 4 is easier than on 1 or 3 in swing', () => {
    // common practice: the ride's skip note falls with it on 2 and 4
    const [one = 0, two = 0, three = 0, four = 0] = [0, 1, 2, 3].map((beat) =>
      points(['...', '...', '...', '...'].with(beat, '..x').join(' ')),
    );
    expect(two).toBeLessThan(one);
    expect(four).toBeLessThan(three);
    expect(two).toBeLessThan(three);
    // definition: without a groove nothing tells the beats apart but the silent 1, the same for all
    const bare = readGround(withoutGroove(swing), 1);
    expect(points('... ..x ... ...', bare)).toBeCloseTo(points('..x ... ... ...', bare), 9);
  });

  it('[CO37] doubling the lead hand is easier than playing between its strokes', () => {
    const bossa = readGround(lessonOf('bossa'), 1);
    // common practice: unison with a limb that plays already is learnt before its gaps are filled
    expect(points('xx xx xx xx', bossa)).toBeLessThan(points('.x .x .x .x', bossa));
    expect(points('x.. x.x x.. x.x')).toBeLessThan(points('x.x x.. x.x x..'));
    const ranked = pageSource(lessonOf('bossa'), {}).pool.candidates;
    const place = ranked.findIndex(({ cells }) => [...cells].every((cell) => cell === 3));
    expect(place).toBeLessThan(ranked.length / 3);
  });

  it('[CO7] an off-beat stroke that nobody plays with never makes a bar easier', () => {
    const anyBar = fc.record({
      lesson: fc.constantFrom(...GROOVES),
      slots: fc.constantFrom(2, 3, 4, 6),
      struck: bits(4, 6),
      place: fc.nat(23),
    });
    fc.assert(
      fc.property(anyBar, ({ lesson, slots, struck, place }) => {
        const beats = lesson.meter.beats.length;
        const own = struck.slice(0, beats * slots);
        const at = place % own.length;
        const ground = readGround(lesson, 1);
        const { alone } = ground.company(Math.floor(at / slots), at % slots, slots);
        fc.pre(own[at] === false && at % slots !== 0 && alone === 1);
        const before = points(textOf(own, slots), ground);
        // definition: monotonicity, with the default weights
        expect(points(textOf(own.with(at, true), slots), ground)).toBeGreaterThanOrEqual(before);
      }),
      { numRuns: 2000 },
    );
  });

  it('[CO8] counts syncopation as the published measures do', () => {
    const bare = readGround(withoutGroove(lessonFrom('tempo: 40\nfeel: even\nvocabulary: [x...]')), 1);
    fc.assert(
      fc.property(bits(4, 4), (struck) => {
        const grid = struck.map((each) => (each ? 1 : 0));
        const { parts } = gradePattern(bare, parsePattern(textOf(struck, 4)), DEFAULT_GRADE_SETTINGS);
        const count = (part: PartName) => parts.find((each) => each.part === part)?.count ?? 0;
        // published: the measures of core, checked there against their tables
        expect(count('wnbd')).toBeCloseTo(toNumber(noteToBeatDistance(grid, 4).sum), 9);
        expect(count('offBeatness')).toBe(offBeatness(grid));
        expect(count('keith')).toBe(keithSyncopation(grid));
        expect(count('lhl')).toBe(Math.max(0, longuetHigginsLee(grid, [2, 2, 2, 2], 'same bar')));
        expect(count('pulse')).toBe(counterEvidence(grid, 4).score);
      }),
      { numRuns: 500 },
    );
  });

  it('[CO9] tables give every bar the same points as grading it', () => {
    const cells = ['...', 'x..', '..x', 'g.X', 'xx', '.x', 'x..x', '.xf.'].map((text) => cell(text));
    const settings: GradeSettings = {
      handSpeed: 8,
      weights: { ...DEFAULT_COMPOSE_SETTINGS.weights, lhl: 0.3, keith: 0.2, offBeatness: 0.1 },
    };
    for (const lesson of [swing, lessonOf('waltz')]) {
      const ground = readGround(lesson, 2);
      const tables = pointTables(ground, cells, settings);
      const grade = patternGrader(ground, settings);
      const bar = fc.array(fc.nat(cells.length - 1), { minLength: ground.length, maxLength: ground.length });
      fc.assert(
        fc.property(bar, (pattern) => {
          const written = pattern.map((index) => cells[index] ?? cell('.'));
          // definition: the plain sum over parts
          const plain = gradeCells(ground, written, settings);
          expect(tables.points(pattern)).toBeCloseTo(plain.points, 9);
          // definition: grading many bars of a page gives each what grading it alone does
          expect(grade({ bars: [written] })).toEqual(plain);
        }),
        { numRuns: 200 },
      );
    }
  });

  it('[CO10] counts changes of loudness and ornaments', () => {
    const dynamics = (text: string) =>
      gradePattern(swingGround, parsePattern(text), DEFAULT_GRADE_SETTINGS).parts.find(
        (each) => each.part === 'dynamics',
      )?.count;
    // definition: ghost, stroke and accent are one step apart each; a flam, drag or buzz is one
    expect(dynamics('x.. x.. x.. x..')).toBe(0);
    expect(dynamics('g.X ... ... ...')).toBe(2);
    expect(dynamics('g.. x.. ... ...')).toBe(1);
    expect(dynamics('f.. ... ... ...')).toBe(1);
  });

  it('[CO11] the same bar is harder at a faster goal tempo, three strokes in a row more than two', () => {
    const at = (goal: number, text: string) => {
      const lesson = lessonFrom(`tempo: { start: 40, goal: ${goal} }\nfeel: triplet\nvocabulary: [x..]`);
      const { parts } = gradePattern(readGround(lesson, 1), parsePattern(text), DEFAULT_GRADE_SETTINGS);
      return parts.find((each) => each.part === 'speed')?.count ?? 0;
    };
    // definition: triplets at 140 are 7 a second, the limit: a run of three counts 1; two count against 10 a second
    expect(at(140, 'xxx ... ... ...')).toBeCloseTo(1, 9);
    expect(at(160, 'x.x x.. ... ...')).toBeCloseTo((8 / 10 - 0.7) / 0.3, 9);
    // definition: 4.5 strokes a second is under seven tenths of 7
    expect(at(90, 'xxx xxx xxx xxx')).toBe(0);
  });
});
