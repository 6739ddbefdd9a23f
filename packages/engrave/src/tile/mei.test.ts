import {
  add,
  equals,
  type Fraction,
  formatFraction,
  fraction,
  meter,
  multiply,
  notateBar,
  type XmlElement,
  ZERO,
} from '@shedbook/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arbitraryMeter, arbitraryPattern } from '../../../../internal/testing/arbitrary-lesson.ts';
import { rootOf } from '../../test/xml.ts';
import { writeMei } from './mei.ts';

const OPTIONS = {
  prefix: 'e1',
  staff: 'full',
  signature: false,
  barLines: 'single',
  firstBar: 1,
  stems: true,
} as const;

function find(element: XmlElement, name: string): readonly XmlElement[] {
  const own = element.name === name ? [element] : [];
  return [...own, ...element.children.flatMap((child) => find(child, name))];
}

/** Length of what an MEI element holds, in whole notes. @source MEI 5.1: `@dur`, `@dots`, `tuplet/@num`, `@numbase`, `@grace` */
function lengthOf(element: XmlElement, bar: Fraction): Fraction {
  const { attributes } = element;
  if (attributes.grace !== undefined || element.name === 'graceGrp') return ZERO;
  if (element.name === 'mRest') return bar;
  if (attributes.dur !== undefined) {
    const plain = fraction(1, Number(attributes.dur));
    return attributes.dots === '1' ? multiply(plain, fraction(3, 2)) : plain;
  }
  const inner = element.children.map((child) => lengthOf(child, bar)).reduce(add, ZERO);
  return element.name === 'tuplet'
    ? multiply(inner, fraction(Number(attributes.numbase), Number(attributes.num)))
    : inner;
}

describe('MEI', () => {
  it('[EN11] every layer of any bar adds up to the bar', () => {
    const bar = arbitraryMeter.chain((of) =>
      fc.record({
        of: fc.constant(of),
        ride: arbitraryPattern('ride', of),
        snare: arbitraryPattern('snare', of),
        bass: arbitraryPattern('bass', of),
      }),
    );
    fc.assert(
      fc.property(bar, ({ of, ride, snare, bass }) => {
        const parts = [
          { voice: 'ride' as const, cells: ride.bars[0] ?? [] },
          { voice: 'snare' as const, cells: snare.bars[0] ?? [] },
          { voice: 'bass' as const, cells: bass.bars[0] ?? [] },
        ];
        const root = rootOf(writeMei([notateBar(parts, of)], OPTIONS));
        const layers = find(root, 'layer');
        expect(layers.length).toBeGreaterThan(0);
        for (const layer of layers) {
          const length = lengthOf(layer, of.bar);
          expect([formatFraction(length), equals(length, of.bar)]).toEqual([formatFraction(of.bar), true]);
        }
      }),
      { numRuns: 200 },
    );
  });

  it('[EN12] the meter is written as core has it', () => {
    const signature = (text: string) =>
      find(rootOf(writeMei([notateBar([], meter(text))], { ...OPTIONS, signature: true })), 'meterSig')[0]
        ?.attributes;
    expect(signature('12/8')).toEqual({ count: '12', unit: '8' });
    // standard: MEI 5.1, meterSig/@count: additive counts such as "2+3"
    expect(signature('2+2+3/8')).toEqual({ count: '2+2+3', unit: '8' });
  });
});
