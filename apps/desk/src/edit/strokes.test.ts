import { formatPattern, type Hand, isStruck, parsePattern, SUBDIVISIONS, struckSlots } from '@shedbook/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  clearHands,
  divideBeat,
  type Line,
  setHand,
  setMark,
  toggleAccent,
  toggleStroke,
  withPattern,
} from './strokes.ts';

function line(text: string, hands: string | null = null): Line {
  return { pattern: parsePattern(text), sticking: hands ? (hands.split(' ') as Hand[]) : null };
}

function show({ pattern, sticking }: Line): readonly (string | null)[] {
  return [formatPattern(pattern), sticking?.join(' ') ?? null];
}

const cells = fc.constantFrom('x', '.', 'xx', '.X', 'x..', '..x', 'g.x', '....', 'x.gx', 'xxxxxx');
const anyLine = fc
  .array(fc.tuple(cells, cells, cells, cells), { minLength: 1, maxLength: 3 })
  .map((bars) => bars.map((bar) => bar.join(' ')).join(' | '))
  .chain((text) => {
    const strokes = parsePattern(text).bars.flat().flatMap(struckSlots).length;
    const hands = fc.array(fc.constantFrom<Hand>('R', 'L', 'B'), { minLength: strokes, maxLength: strokes });
    return fc.option(hands, { nil: null }).map((sticking) => ({ pattern: parsePattern(text), sticking }));
  });
const place = fc.record({ bar: fc.nat(2), beat: fc.nat(3), slot: fc.nat(5) });

describe('strokes', () => {
  it('[ST12] sets one mark and leaves the rest', () => {
    const before = line('x.. ..x | ... x.x');
    // definition: the slot named, counted from 0, and no other
    expect(show(setMark(before, { bar: 1, beat: 0, slot: 2 }, 'X'))).toEqual(['x.. ..x | ..X x.x', null]);
    expect(show(setMark(before, { bar: 0, beat: 1, slot: 2 }, '.'))).toEqual(['x.. ... | ... x.x', null]);
  });

  it('[ST12] keeps hands with their strokes when one comes or goes', () => {
    const before = line('xx xx', 'R L R R');
    expect(show(setMark(before, { bar: 0, beat: 0, slot: 1 }, '.'))).toEqual(['x. xx', 'R R R']);
    const silent = line('x. xx', 'R R R');
    expect(show(setMark(silent, { bar: 0, beat: 0, slot: 1 }, 'x'))).toEqual(['xx xx', 'R L R R']);
    expect(show(setMark(before, { bar: 0, beat: 0, slot: 0 }, 'g'))).toEqual(['gx xx', 'R L R R']);
    expect(show(setMark(line('x', 'R'), { bar: 0, beat: 0, slot: 0 }, '.'))).toEqual(['.', null]);
  });

  it('[ST12] writes a hand and fills the others in by turns', () => {
    expect(show(setHand(line('xx xx'), { bar: 0, beat: 0, slot: 1 }, 'R'))).toEqual(['xx xx', 'L R L R']);
    expect(show(setHand(line('xx', 'R R'), { bar: 0, beat: 0, slot: 1 }, 'L'))).toEqual(['xx', 'R L']);
    expect(show(setHand(line('x. x.'), { bar: 0, beat: 0, slot: 1 }, 'L'))).toEqual(['x. x.', null]);
    expect(show(clearHands(line('xx', 'R R')))).toEqual(['xx', null]);
  });

  it('[ST12] always has as many hands as strokes', () => {
    const property = fc.property(anyLine, place, fc.constantFrom('.', 'x', 'X', 'g'), (before, raw, mark) => {
      const bar = raw.bar % before.pattern.bars.length;
      const slots = before.pattern.bars[bar]?.[raw.beat]?.marks.length ?? 1;
      const at = { bar, beat: raw.beat, slot: raw.slot % slots };
      for (const after of [setMark(before, at, mark as 'x'), divideBeat(before, at, 4)]) {
        const strokes = after.pattern.bars.flat().flatMap(struckSlots).length;
        if (after.sticking) expect(after.sticking).toHaveLength(strokes);
        else expect(before.sticking === null || strokes === 0).toBe(true);
      }
    });
    fc.assert(property, { seed: 5, numRuns: 300 });
  });

  it('[ST13] keeps strokes where they sound when the beat is divided anew', () => {
    const divide = (text: string, slots: 1 | 2 | 3 | 4 | 6) =>
      formatPattern(divideBeat(line(text), { bar: 0, beat: 0 }, slots).pattern);
    // definition: slot s of n lies at s/n of the beat
    expect(divide('x.x', 6)).toBe('x...x.');
    expect(divide('.x', 4)).toBe('..x.');
    expect(divide('x...x.', 3)).toBe('x.x');
    expect(divide('x.gX', 2)).toBe('xg');
    expect(divide('x', 3)).toBe('x..');
  });

  it('[ST13] loses nothing when the new slots are a multiple of the old', () => {
    const property = fc.property(cells, fc.constantFrom(...SUBDIVISIONS), (text, slots) => {
      fc.pre(slots % text.length === 0);
      const after = divideBeat(line(text), { bar: 0, beat: 0 }, slots).pattern.bars[0]?.[0];
      const places = (marks: readonly string[]) =>
        marks.flatMap((mark, slot) => (isStruck(mark as 'x') ? [[slot / marks.length, mark]] : []));
      expect(places(after?.marks ?? [])).toEqual(places([...text]));
    });
    fc.assert(property, { seed: 5 });
  });

  it('[ST16] turns strokes and accents on and off', () => {
    expect(['.', 'x', 'X', 'g', 'f'].map((mark) => toggleStroke(mark as 'x'))).toEqual([
      'x',
      '.',
      '.',
      '.',
      '.',
    ]);
    expect(['.', 'x', 'X', 'g', 'f', 'F'].map((mark) => toggleAccent(mark as 'x'))).toEqual([
      'X',
      'X',
      'x',
      'X',
      'F',
      'f',
    ]);
  });
});

it('[ST2900] a pattern that is written anew keeps the hands of strokes that stay where they were', () => {
  const before = line('x.x. x... .x.x x...', 'R R L L R L');
  // definition: 1 R, 1& R, 2 L, 3e L, 3a R, 4 L; 1 and 1& are the same places in eighths
  const after = withPattern(before, parsePattern('xx x... .xx. x...'));
  expect(after.sticking?.join('')).toBe('RRLLRL');
  expect(withPattern(before, parsePattern('.x x... .... xx..')).sticking?.join('')).toBe('RLLR');
  expect(withPattern(line('x x x x'), parsePattern('xx x x x')).sticking).toBeNull();
  expect(withPattern(before, parsePattern('.. .. .. ..')).sticking).toBeNull();
});
