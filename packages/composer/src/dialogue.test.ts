import { formatPattern, parseLesson, patternStrokes, printLesson } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { exerciseOf, lessonOf } from '../test/lessons.ts';
import { answeringVoices, composeDialogue } from './dialogue.ts';
import { gradeExercise } from './grade.ts';

const swing = lessonOf('swing');

function joint(snare: string, bass: string) {
  const alone = exerciseOf(swing, snare);
  const [other] = exerciseOf(swing, bass).parts;
  return other ? { ...alone, parts: [...alone.parts, { ...other, voice: 'bass' as const }] } : alone;
}

function pointsOf(snare: string, bass: string): number {
  return gradeExercise(swing, joint(snare, bass)).points;
}

describe('a dialogue', () => {
  it.each(['swing', 'waltz', 'sixteenths'] as const)(
    '[CO44] %s: shares rhythms of the vocabulary out, rising',
    (name) => {
      const lesson = lessonOf(name);
      const { exercises, report } = composeDialogue(lesson, 'bass', { count: 16, seed: 2 });
      expect(exercises).toHaveLength(16);
      const known = new Set(lesson.vocabulary.map(({ cell }) => cell.text));
      for (const { parts } of exercises) {
        expect(parts.map((part) => part.voice)).toEqual([lesson.comping, 'bass']);
        // definition: each limb strikes
        for (const part of parts)
          expect(patternStrokes(part.pattern, lesson.meter).length).toBeGreaterThan(0);
        const [upper, lower] = parts.map((part) => part.pattern.bars.flat());
        upper?.forEach((cell, beat) => {
          const rhythm = cell.marks
            .map((mark, slot) => (mark === '.' ? lower?.[beat]?.marks[slot] : mark))
            .join('');
          // definition: both together are a cell of the vocabulary
          expect(known).toContain(rhythm);
        });
      }
      const points = report.bars.map((bar) => bar.grade.points);
      expect(points.slice(1).every((each, i) => each >= (points[i] ?? 0) - 1e-6)).toBe(true);
      // definition: a page reads back as it was written, without a problem
      const { problems } = parseLesson(printLesson({ ...lesson, exercises }), 'dialogue.lesson.yaml');
      expect(problems).toEqual([]);
    },
  );

  it('[CO44] gives the same page for the same seed, and another for another', () => {
    const page = (seed: number) =>
      composeDialogue(swing, 'bass', { count: 8, seed }).exercises.map(({ parts }) =>
        parts.map((part) => formatPattern(part.pattern)),
      );
    expect(page(1)).toEqual(page(1));
    expect(page(1)).not.toEqual(page(2));
  });

  it('[CO44] knows which voices can answer: no hand that is taken', () => {
    // definition: the other hand comps, the lead hand rides; the feet are left
    expect(answeringVoices(swing)).toEqual(['hihat-foot', 'bass']);
  });

  it('[CO38] counts what falls together once, and charges what is handed over', () => {
    // published: Haken, Kelso & Bunz 1985: in-phase is more stable than anti-phase; so together < in turn
    expect(pointsOf('x.. ... x.. ...', 'x.. ... x.. ...')).toBeLessThan(
      pointsOf('x.. ... x.. ...', '..x ... ..x ...'),
    );
    const alone = gradeExercise(swing, exerciseOf(swing, '..x ... ..x ...')).points;
    const together = pointsOf('..x ... ..x ...', '..x ... ..x ...');
    // definition: more than one limb alone, less than twice as much
    expect(together).toBeGreaterThan(alone);
    expect(together).toBeLessThan(2 * alone);
    const parts = gradeExercise(swing, joint('x.. ... ... ...', '..x ... ... ...')).parts;
    // definition: one hand-over, from 1 to its let; the way back is three beats long
    expect(parts.find(({ part }) => part === 'interlock')?.count).toBe(1);
    expect(parts.find(({ part }) => part === 'unison')?.count).toBe(0);
  });

  it('[CO39] meets the simplest moves and says how many it leaves', () => {
    const { report } = composeDialogue(swing, 'bass', { count: 24, seed: 1 });
    // definition: half of 24 bars of four beats
    expect(report.coverage.possible).toBe(48);
    expect(report.coverage.missed.length).toBeLessThanOrEqual(4);
    expect(report.notes).toContainEqual(expect.objectContaining({ fact: 'moves-for-later' }));
  });
});
