import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cell, isRest, struckSlots } from './cell.ts';
import {
  type AmountLimit,
  countPatterns,
  createPatternCounter,
  listPatterns,
  type PatternRules,
  possibleMoves,
} from './enumerate.ts';
import { binomial, listNecklaces } from './necklace.ts';

const FOUR = ['...', 'x..', '..x', 'x.x'].map(cell);
const EIGHT = ['...', 'x..', '.x.', '..x', 'xx.', 'x.x', '.xx', 'xxx'].map(cell);

function allPatterns(kinds: number, length: number): readonly (readonly number[])[] {
  if (length === 0) return [[]];
  const indices = Array.from({ length: kinds }, (_, i) => i);
  return indices.flatMap((first) => allPatterns(kinds, length - 1).map((rest) => [first, ...rest]));
}

/** Whether a pattern keeps to rules, looked at directly. */
function keeps(rules: PatternRules, pattern: readonly number[]): boolean {
  const cells = pattern.map((index) => rules.cells[index] ?? cell('.'));
  const within = (limit: AmountLimit | undefined, value: number) =>
    value >= (limit?.least ?? 0) && value <= (limit?.most ?? Number.POSITIVE_INFINITY);
  const bars = Array.from({ length: rules.bars }, (_, bar) =>
    cells.slice(bar * rules.beats, (bar + 1) * rules.beats),
  );
  return (
    pattern.every((index, beat) => rules.allows?.(beat, index) ?? true) &&
    pattern.every((index, beat) => {
      const next = pattern[(beat + 1) % pattern.length] ?? index;
      return rules.allowsMove?.(beat, index, next) ?? true;
    }) &&
    bars.every((bar) =>
      within(
        rules.strokes,
        bar.reduce((sum, each) => sum + struckSlots(each).length, 0),
      ),
    ) &&
    bars.every((bar) => within(rules.rests, bar.filter(isRest).length))
  );
}

const amount = fc
  .record({ least: fc.integer({ min: 0, max: 3 }), span: fc.option(fc.integer({ min: 0, max: 4 })) })
  .map(({ least, span }): AmountLimit => ({ least, most: span === null ? null : least + span }));

/** Rules with every kind of limit, on at most 4 cells and 4 beats. */
const someRules = fc
  .record({
    beats: fc.integer({ min: 1, max: 2 }),
    bars: fc.integer({ min: 1, max: 2 }),
    strokes: amount,
    rests: amount,
    banned: fc.array(fc.tuple(fc.integer({ min: 0, max: 3 }), fc.integer({ min: 0, max: 3 })), {
      maxLength: 3,
    }),
    noMove: fc.array(fc.tuple(fc.integer({ min: 0, max: 3 }), fc.integer({ min: 0, max: 3 })), {
      maxLength: 4,
    }),
  })
  .map(
    ({ banned, noMove, ...rest }): PatternRules => ({
      ...rest,
      cells: FOUR,
      allows: (beat, index) => !banned.some(([b, i]) => b === beat && i === index),
      allowsMove: (_, from, to) => !noMove.some(([a, b]) => a === from && b === to),
    }),
  );

describe('enumeration', () => {
  it('[RH14] counts every pattern of a vocabulary', () => {
    // definition: kinds to the power of beats: 4^4, and all eight triplet cells over two bars, 8^8
    expect(countPatterns({ cells: FOUR, beats: 4, bars: 1 })).toBe(256n);
    expect(countPatterns({ cells: EIGHT, beats: 4, bars: 2 })).toBe(16_777_216n);
    // definition: 8^64, far past what can be listed
    expect(countPatterns({ cells: EIGHT, beats: 8, bars: 8 })).toBe(8n ** 64n);
  });

  it('[RH15] counts a number of strokes as binomials do', () => {
    // definition: all eight triplet cells in four beats are all subsets of 12 places: C(12, k) with k strokes
    for (let k = 0; k <= 12; k += 1) {
      const count = countPatterns({ cells: EIGHT, beats: 4, bars: 1, strokes: { least: k, most: k } });
      expect(count).toBe(binomial(12, k));
    }
  });

  it('[RH15] counts, picks and lists within every limit as looking at each pattern does', () => {
    fc.assert(
      fc.property(someRules, (rules) => {
        const plain = allPatterns(4, rules.beats * rules.bars).filter((pattern) => keeps(rules, pattern));
        const counter = createPatternCounter(rules);
        // definition: the patterns that keep the rules, one by one
        expect(counter.total).toBe(BigInt(plain.length));
        expect([...listPatterns(rules)]).toEqual(plain);
        expect(plain.map((_, i) => counter.at(BigInt(i)))).toEqual(plain);
      }),
    );
  });

  it('[RH16] picks any pattern by its number and refuses others', () => {
    const counter = createPatternCounter({ cells: EIGHT, beats: 4, bars: 2 });
    // definition: 16777215 in base 8 is eight sevens
    expect(counter.at(16_777_215n)).toEqual([7, 7, 7, 7, 7, 7, 7, 7]);
    expect(counter.at(0n)).toEqual([0, 0, 0, 0, 0, 0, 0, 0]);
    expect(() => counter.at(16_777_216n)).toThrow('there is no pattern 16777216 of 16777216');
    expect(() => counter.at(-1n)).toThrow(RangeError);
  });

  it('[RH17] knows which moves the limits leave', () => {
    const free = possibleMoves({ cells: FOUR, beats: 4, bars: 1 });
    // definition: four cells, sixteen ordered pairs
    expect(free).toHaveLength(16);
    // definition: at least four strokes and no silent beat leave no move from or to the rest
    const dense = possibleMoves({ cells: FOUR, beats: 4, bars: 1, rests: { least: 0, most: 0 } });
    expect(dense).toHaveLength(9);
    expect(dense.flat()).not.toContain(0);
  });

  it('[RH14] lists one pattern of each class of rotations among them', () => {
    const all = new Set([...listPatterns({ cells: FOUR, beats: 4, bars: 1 })].map(String));
    // published: OEIS A001868, 70 necklaces of four beads in four kinds
    expect([...listNecklaces(4, 4)].filter((word) => all.has(String(word)))).toHaveLength(70);
  });
});
