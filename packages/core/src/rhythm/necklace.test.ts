import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  areRotations,
  binomial,
  complement,
  countNecklaces,
  countRhythmNecklaces,
  leastRotation,
  listNecklaces,
  mirror,
  necklaceOf,
  rotate,
  totient,
} from './necklace.ts';

const LENGTHS = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 16];

/** The least rotation, found by trying them all. */
function plainNecklace(pattern: readonly number[]): readonly number[] {
  const rotations = pattern.map((_, i) => rotate(pattern, i));
  return rotations.reduce((least, each) => (each.join() < least.join() ? each : least));
}

const pattern = fc.array(fc.integer({ min: 0, max: 2 }), { minLength: 1, maxLength: 14 });

describe('necklaces', () => {
  it('[RH1] counts necklaces of two, three and four kinds as the published tables do', () => {
    const counts = (colours: number) => LENGTHS.map((length) => Number(countNecklaces(length, colours)));
    // published: OEIS A000031
    expect(counts(2)).toEqual([2, 3, 4, 6, 8, 14, 20, 36, 60, 108, 188, 352, 4116]);
    // published: OEIS A001867
    expect(counts(3)).toEqual([3, 6, 11, 24, 51, 130, 315, 834, 2195, 5934, 16107, 44368, 2690844]);
    // published: OEIS A001868
    expect(counts(4)).toEqual([
      4, 10, 24, 70, 208, 700, 2344, 8230, 29144, 104968, 381304, 1398500, 268439590,
    ]);
  });

  it('[RH1] counts necklaces that use all of four kinds', () => {
    // published: OEIS A056284, by inclusion and exclusion over A001868, A001867 and A000031
    const exactly4 = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10].map(
      (n) => countNecklaces(n, 4) - 4n * countNecklaces(n, 3) + 6n * countNecklaces(n, 2) - 4n,
    );
    expect(exactly4.map(Number)).toEqual([0, 0, 0, 6, 48, 260, 1200, 5106, 20720, 81876]);
  });

  it('[RH2] lists each class once, by its least rotation, in order', () => {
    const words = (length: number) => [...listNecklaces(length, 2)].map((word) => word.join(''));
    // published: OEIS A000031, examples
    expect(words(3)).toEqual(['000', '001', '011', '111']);
    expect(words(4)).toEqual(['0000', '0001', '0011', '0101', '0111', '1111']);
    for (const [length, colours] of [
      [8, 2],
      [6, 3],
      [5, 4],
    ] as const) {
      const all = [...listNecklaces(length, colours)];
      // published: OEIS A000031, A001867, A001868
      expect(BigInt(all.length)).toBe(countNecklaces(length, colours));
      expect(all.map(String)).toEqual(all.map((word) => String(plainNecklace(word))));
      expect(new Set(all.map(String)).size).toBe(all.length);
    }
  });

  it('[RH3] counts the classes with a number of strokes', () => {
    // definition: one stroke has one class; the classes of every number of strokes add up to all classes
    expect(countRhythmNecklaces(16, 1)).toBe(1n);
    const byOnsets = Array.from({ length: 17 }, (_, onsets) => countRhythmNecklaces(16, onsets));
    // published: OEIS A000031
    expect(byOnsets.reduce((sum, each) => sum + each, 0n)).toBe(4116n);
    // definition: Burnside's lemma by hand: C(16,5)/16 and C(12,7)/12, no other common divisor
    expect([countRhythmNecklaces(16, 5), countRhythmNecklaces(12, 7)]).toEqual([273n, 66n]);
  });

  it('[RH3] knows binomials and totients', () => {
    // published: OEIS A000010 and Pascal's triangle
    expect([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 16].map(totient)).toEqual([
      1, 1, 2, 2, 4, 2, 6, 4, 6, 4, 10, 4, 8,
    ]);
    expect([0, 1, 2, 3, 4, 5, 6].map((k) => Number(binomial(6, k)))).toEqual([1, 6, 15, 20, 15, 6, 1]);
  });

  it('[RH4] finds the least rotation as trying them all does', () => {
    fc.assert(
      fc.property(pattern, (values) => {
        // definition: the smallest of all rotations in dictionary order
        expect(necklaceOf(values)).toEqual(plainNecklace(values));
        expect(rotate(values, leastRotation(values))).toEqual(plainNecklace(values));
      }),
    );
  });

  it('[RH4] knows rotations of one pattern from other patterns', () => {
    // definition: the bossa-nova timeline begun at its third stroke, and the son clave
    const bossa = [...'x..x..x...x..x..'].map((c) => (c === 'x' ? 1 : 0));
    const son = [...'x..x..x...x.x...'].map((c) => (c === 'x' ? 1 : 0));
    expect(areRotations(bossa, rotate(bossa, 6))).toBe(true);
    expect(areRotations(bossa, rotate(bossa, -3))).toBe(true);
    expect(areRotations(bossa, son)).toBe(false);
    expect(areRotations(bossa, bossa.slice(1))).toBe(false);
  });

  it('[RH5] complements and mirrors, and twice is the pattern itself', () => {
    // definition: silence becomes stroke; "1" stays while the rest is played backwards
    expect(complement([1, 0, 0, 1])).toEqual([0, 1, 1, 0]);
    expect(mirror([1, 2, 3, 4])).toEqual([1, 4, 3, 2]);
    const bits = fc.array(fc.integer({ min: 0, max: 1 }), { maxLength: 20 });
    fc.assert(
      fc.property(bits, (values) => {
        expect(complement(complement(values))).toEqual(values);
        expect(mirror(mirror(values))).toEqual(values);
      }),
    );
  });
});
