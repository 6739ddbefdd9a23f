import { Bpm, LOOP_VERDICTS, type LoopRecord, type LoopVerdict } from '@shedbook/core';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { loops } from '../../test/students.ts';
import { GRADES } from './card.ts';
import { gradeLoops } from './grade.ts';

const rule = { goalBpm: Bpm(120), cleanLoops: 3, heardBy: 'ear' } as const;

it('[CH16] a day is graded by its loops', () => {
  expect(gradeLoops(loops(4, 80, 'stumble'), rule)).toBe('again');
  expect(gradeLoops(loops(4, 80, 'loose'), rule)).toBe('hard');
  expect(gradeLoops([...loops(6, 80), ...loops(2, 88, 'loose')], rule)).toBe('good');
  expect(gradeLoops(loops(4, 120), rule)).toBe('easy');
});

it('[CH16] easy needs the goal tempo, enough loops and an ear', () => {
  expect(gradeLoops(loops(4, 112), rule)).toBe('good');
  expect(gradeLoops(loops(2, 120), rule)).toBe('good');
  expect(gradeLoops(loops(4, 120), { ...rule, heardBy: 'student' })).toBe('good');
});

it('[CH16] a day on which nothing was heard is not graded', () => {
  expect(gradeLoops([], rule)).toBeNull();
  expect(gradeLoops(loops(3, 80, 'unheard'), rule)).toBeNull();
});

it('[CH16] a better day is never graded worse', () => {
  const loop = fc.record({
    verdict: fc.constantFrom<LoopVerdict>('stumble', 'loose', 'clean'),
    bpm: fc.constantFrom(80, 112, 120, 128).map(Bpm),
    faults: fc.constant([]),
  });
  const raises = fc.array(fc.record({ verdicts: fc.nat(2), bpm: fc.nat(20) }), {
    minLength: 1,
    maxLength: 5,
  });
  const grade = (day: readonly LoopRecord[]) => GRADES.indexOf(gradeLoops(day, rule) ?? 'again');
  fc.assert(
    fc.property(fc.array(loop, { minLength: 1, maxLength: 12 }), raises, (day, raise) => {
      const better = day.map((each, i): LoopRecord => {
        const up = raise[i % raise.length] as { verdicts: number; bpm: number };
        const rank = Math.min(3, LOOP_VERDICTS.indexOf(each.verdict) + up.verdicts);
        return { ...each, verdict: LOOP_VERDICTS[rank] as LoopVerdict, bpm: Bpm(each.bpm + up.bpm) };
      });
      expect(grade(better)).toBeGreaterThanOrEqual(grade(day));
    }),
    { numRuns: 500, seed: 9 },
  );
});
