import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arbitraryMeter, arbitraryPattern } from '../../../../internal/testing/arbitrary-lesson.ts';
import { seededRandom } from '../random.ts';
import { cell, findCellFault, MARKS } from './cell.ts';
import { countSyllable } from './counting.ts';
import {
  add,
  compare,
  divide,
  equals,
  type Fraction,
  fraction,
  multiply,
  subtract,
  toNumber,
} from './fraction.ts';
import {
  beatName,
  beatStarts,
  countedTempo,
  meter,
  noteSign,
  parseMeter,
  quarterTempo,
  tempoBeat,
} from './meter.ts';
import { findPatternFaults, formatPattern, parsePattern, patternStrokes } from './pattern.ts';

const arbitraryFraction = fc
  .tuple(fc.integer({ min: -5000, max: 5000 }), fc.integer({ min: 1, max: 5000 }))
  .map(([num, den]) => fraction(num, den));

/** A plain version to compare with: parts as BigInt, never reduced. */
function sameNumber(a: Fraction, num: bigint, den: bigint): boolean {
  return BigInt(a.num) * den === num * BigInt(a.den);
}

describe('fractions', () => {
  it('[CR1] reduces and keeps the sign in the numerator', () => {
    // definition: lowest terms, positive denominator
    expect(fraction(6, -8)).toEqual({ num: -3, den: 4 });
    expect(fraction(0, -5)).toEqual({ num: 0, den: 1 });
    expect(Object.is(fraction(0, -5).num, 0)).toBe(true);
  });

  it('[CR1] adds, subtracts, multiplies and divides exactly, as BigInt arithmetic does', () => {
    fc.assert(
      fc.property(arbitraryFraction, arbitraryFraction, (a, b) => {
        const [an, ad, bn, bd] = [a.num, a.den, b.num, b.den].map(BigInt) as [bigint, bigint, bigint, bigint];
        expect(sameNumber(add(a, b), an * bd + bn * ad, ad * bd)).toBe(true);
        expect(sameNumber(subtract(a, b), an * bd - bn * ad, ad * bd)).toBe(true);
        expect(sameNumber(multiply(a, b), an * bn, ad * bd)).toBe(true);
        if (b.num !== 0) expect(sameNumber(divide(a, b), an * bd, ad * bn)).toBe(true);
        expect(Math.sign(compare(a, b))).toBe(Math.sign(toNumber(a) - toNumber(b)));
      }),
    );
  });

  it('[CR2] refuses what would not be exact', () => {
    expect(() => fraction(1, 0)).toThrow(RangeError);
    expect(() => fraction(0.5)).toThrow(RangeError);
    expect(() => fraction(Number.NaN)).toThrow(RangeError);
    const large = fraction(2 ** 52 + 1, 3);
    expect(() => multiply(large, large)).toThrow(RangeError);
    expect(() => add(large, large)).toThrow(RangeError);
  });
});

describe('meters', () => {
  it('[CR3] has the beats of common practice', () => {
    // common practice: simple meters count the lower numeral, compound ones its dotted triple
    const beatsOf = (text: string) => meter(text).beats.map((beat) => `${beat.num}/${beat.den}`);
    expect(beatsOf('4/4')).toEqual(['1/4', '1/4', '1/4', '1/4']);
    expect(beatsOf('3/4')).toEqual(['1/4', '1/4', '1/4']);
    expect(beatsOf('5/4')).toHaveLength(5);
    expect(beatsOf('2/2')).toEqual(['1/2', '1/2']);
    expect(beatsOf('6/8')).toEqual(['3/8', '3/8']);
    expect(beatsOf('9/8')).toEqual(['3/8', '3/8', '3/8']);
    expect(beatsOf('12/8')).toHaveLength(4);
    expect(beatsOf('3/8')).toEqual(['1/8', '1/8', '1/8']);
    expect(beatsOf('7/8')).toHaveLength(7);
    expect(beatsOf('2+2+3/8')).toEqual(['1/4', '1/4', '3/8']);
  });

  it('[CR3] adds its beats up to the bar', () => {
    fc.assert(
      fc.property(arbitraryMeter, (of) => {
        expect(equals(of.beats.reduce(add), of.bar)).toBe(true);
        expect(equals(of.bar, fraction(of.upper, of.lower))).toBe(true);
        expect(beatStarts(of)[0]).toEqual({ num: 0, den: 1 });
      }),
    );
    expect(beatName(fraction(3, 8))).toBe('dotted quarter');
    expect(beatName(fraction(1, 2))).toBe('half');
  });

  it('[CR10] a tempo counts the beat of its meter', () => {
    // definition: a dotted quarter is 3/2 quarters, a half note 2, an eighth 1/2
    for (const [of, sign, counted, bpm] of [
      ['4/4', '♩', 90, 90],
      ['12/8', '♩.', 60, 90],
      ['6/8', '♩.', 47, 70.5],
      ['6/16', '♪.', 120, 90],
      ['2/2', '𝅗𝅥', 45, 90],
      ['3/8', '♪', 180, 90],
      ['2+2+3/8', '♪', 180, 90],
    ] as const) {
      expect([noteSign(tempoBeat(meter(of))), countedTempo(meter(of), bpm)]).toEqual([sign, counted]);
      expect(quarterTempo(meter(of), counted)).toBe(bpm);
    }
    // definition: 70 quarters are 46 2/3 dotted ones
    expect(countedTempo(meter('6/8'), 70)).toBe(47);
  });

  it('[CR3] refuses what is not a meter', () => {
    for (const text of ['4/5', '0/4', '4', '4/4/4', 'four', '33/4', '5+2/8', '', '-4/4', '4.5/4']) {
      expect(parseMeter(text), text).toBeNull();
    }
    expect(() => meter('4/5')).toThrow(RangeError);
  });
});

describe('cells and patterns', () => {
  it('[CR4] accepts 1 to 8 slots and every mark', () => {
    for (let slots = 1; slots <= 12; slots += 1) {
      const allowed = slots <= 8;
      expect(findCellFault('x'.repeat(slots)) === null, `${slots} slots`).toBe(allowed);
    }
    for (const mark of MARKS) expect(cell(mark).marks).toEqual([mark]);
  });

  it('[CR4] finds the first fault and its place', () => {
    expect(findCellFault('x?.')).toEqual({ kind: 'mark', offset: 1, found: '?' });
    expect(findCellFault('xxxxxxxxx')).toEqual({ kind: 'subdivision', offset: 0, found: 'xxxxxxxxx' });
    expect(findCellFault('')?.kind).toBe('subdivision');
    expect(() => cell('x?')).toThrow(RangeError);
  });

  it('[CR4] a beat takes no more slots than there are values for', () => {
    const most = (text: string, of: string) =>
      findPatternFaults(text, meter(of)).map(({ expected }) => expected);
    expect(most('xxxxxxxx xxxxx xxxxxxx x', '4/4')).toEqual([]);
    // definition: eight to a sixteenth would be 128ths, six and seven are written as four are
    expect(most('xxxxxxx xxxxxxxx x x x', '5/16')).toEqual([
      { fact: 'slots-a-beat', slots: ['1', '2', '3', '4', '5', '6', '7'] },
    ]);
    expect(most('xx xxxx', '2/32')).toEqual([{ fact: 'slots-a-beat', slots: ['1', '2', '3'] }]);
  });

  it('[CR5] reads back what it writes', () => {
    fc.assert(
      fc.property(
        arbitraryMeter.chain((of) => arbitraryPattern('snare', of, 2)),
        (pattern) => {
          expect(parsePattern(formatPattern(pattern))).toEqual(pattern);
        },
      ),
    );
    expect(formatPattern(parsePattern('  x..   ..x |x.x ...'))).toBe('x.. ..x | x.x ...');
  });

  it('[CR6] finds every fault at once', () => {
    const faults = findPatternFaults('x - xxxxxxxxx x | x', meter('4/4'));
    expect(faults.map((fault) => [fault.offset, fault.found])).toEqual([
      [2, { fact: 'character', character: '-' }],
      [4, { fact: 'slots-in-beat', slots: 9, text: 'xxxxxxxxx' }],
      [18, { fact: 'beats', beats: 1 }],
    ]);
    expect(faults[0]?.repair).toEqual({ fact: 'write-mark', mark: '.' });
    const found = (text: string) => findPatternFaults(text, meter('4/4'))[0];
    expect(found('x x x x x')).toMatchObject({ offset: 8, found: { fact: 'beats', beats: 5 } });
    expect(found('x x x x |')).toMatchObject({ found: { fact: 'bar-without-beats' } });
    expect(findPatternFaults('x.. ..x', null)).toEqual([]);
  });

  it('[CR7] places strokes exactly, in order, inside their bar', () => {
    // definition: the third slot of a triplet beat lies two thirds into it
    const strokes = patternStrokes(parsePattern('x.. ..x x.x ...'), meter('4/4'));
    expect(strokes.map((stroke) => `${stroke.at.num}/${stroke.at.den}`)).toEqual([
      '0/1',
      '5/12',
      '1/2',
      '2/3',
    ]);
    fc.assert(
      fc.property(
        arbitraryMeter.chain((of) => fc.tuple(fc.constant(of), arbitraryPattern('snare', of, 2))),
        ([of, pattern]) => {
          const placed = patternStrokes(pattern, of);
          const struck = formatPattern(pattern).replaceAll(/[.\s|]/g, '');
          expect(placed.map((stroke) => stroke.mark).join('')).toBe(struck);
          placed.forEach((stroke, i) => {
            const before = placed[i - 1];
            if (before) expect(compare(before.at, stroke.at)).toBeLessThan(0);
            const bar = multiply(of.bar, fraction(stroke.bar));
            expect(compare(bar, stroke.at)).toBeLessThanOrEqual(0);
            expect(compare(stroke.at, add(bar, of.bar))).toBeLessThan(0);
          });
        },
      ),
    );
  });

  it('[CR8] counts aloud', () => {
    const count = (slots: 1 | 2 | 3 | 4) =>
      Array.from({ length: slots }, (_, slot) => countSyllable(slot, slots));
    // common practice: "1 trip let", "1 &", "1 e & a"
    expect(count(1)).toEqual([null]);
    expect(count(2)).toEqual([null, '&']);
    expect(count(3)).toEqual([null, 'trip', 'let']);
    expect(count(4)).toEqual([null, 'e', '&', 'a']);
  });
});

describe('randomness', () => {
  it('[CR9] repeats for a seed and differs between seeds', () => {
    const draw = (seed: number | string) => {
      const random = seededRandom(seed);
      return Array.from({ length: 5 }, () => random.below(1000));
    };
    expect(draw(7)).toEqual(draw(7));
    expect(draw('oda')).toEqual(draw('oda'));
    expect(draw(7)).not.toEqual(draw(8));
  });

  it('[CR9] is even: chi-squared over 16 bins under the 99.9 % point', () => {
    const bins = new Array<number>(16).fill(0);
    const random = seededRandom(1);
    const draws = 16_000;
    for (let i = 0; i < draws; i += 1) {
      const bin = random.below(16);
      bins[bin] = (bins[bin] ?? 0) + 1;
    }
    const chi = bins.reduce((sum, n) => sum + (n - draws / 16) ** 2 / (draws / 16), 0);
    // published: chi-squared table, 15 degrees of freedom, p = 0.001: 37.697
    expect(chi).toBeLessThan(37.697);
    expect(chi).toBeGreaterThan(0);
  });
});
