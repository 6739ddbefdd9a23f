import { formatPattern, meter, parsePattern, strikeOf } from '@shedbook/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { beatEdges } from '../notation/layout.ts';
import { lineAfterKey } from './keys.ts';
import { rowsOf } from './rows.ts';
import { samePlaceIn, slotsOf, stepFrom } from './slots.ts';

const FOUR = meter('4/4');

describe('a line that is being written', () => {
  it('[ST16] answers to the keys of the list', () => {
    const line = { pattern: parsePattern('x.. ... ... ...'), sticking: null };
    const snare = (mark: Parameters<typeof strikeOf>[1]) => strikeOf('snare', mark) !== null;
    const after = (key: string, slot = 0) => {
      const changed = lineAfterKey(key, line, { bar: 0, beat: 0, slot }, snare);
      return changed && [formatPattern(changed.pattern).split(' ')[0], changed.sticking?.join('') ?? null];
    };
    expect(after('x', 1)).toEqual(['xx.', null]);
    expect(after('a')).toEqual(['X..', null]);
    expect(after('G')).toEqual(['g..', null]);
    expect(['f', 'd', 'b', 's', 'w'].map((key) => after(key)?.[0])).toEqual([
      'f..',
      'd..',
      'b..',
      's..',
      'w..',
    ]);
    expect(after('i')).toEqual(['r..', null]);
    expect(after('.')).toEqual(['...', null]);
    expect(after('Delete')).toEqual(['...', null]);
    expect(after('r')).toEqual(['x..', 'R']);
    expect(after('l')).toEqual(['x..', 'L']);
    expect(['1', '2', '3', '4', '5', '6', '7', '8'].map((key) => after(key)?.[0])).toEqual([
      'x',
      'x.',
      'x..',
      'x...',
      'x....',
      'x.....',
      'x......',
      'x.......',
    ]);
    // a snare has no open sound, and these keys mean nothing
    expect([after('o'), after('9'), after('q'), after('Enter')]).toEqual([null, null, null, null]);
  });

  it('[ST6] goes through every slot and stops at the ends', () => {
    const pattern = parsePattern('x. ... x ....');
    const all = slotsOf(pattern);
    expect(all).toHaveLength(10);
    expect(stepFrom(pattern, all[0] as (typeof all)[0], -1)).toEqual(all[0]);
    expect(stepFrom(pattern, all[1] as (typeof all)[0], 1)).toEqual({ bar: 0, beat: 1, slot: 0 });
    expect(stepFrom(pattern, all[3] as (typeof all)[0], Number.POSITIVE_INFINITY)).toEqual(all[9]);
    expect(samePlaceIn(parsePattern('xx xx xx xx'), { bar: 1, beat: 2, slot: 2 }, 3)).toEqual({
      bar: 0,
      beat: 2,
      slot: 1,
    });
  });

  it('[ST14] breaks bars until every slot can be hit', () => {
    const property = fc.property(
      fc.array(fc.constantFrom('x', 'xx', 'xxx', 'xxxx', 'xxxxxx'), { minLength: 4, maxLength: 4 }),
      fc.integer({ min: 280, max: 900 }),
      (beats, width) => {
        const cells = parsePattern(beats.join(' ')).bars[0] ?? [];
        const rows = rowsOf(cells, FOUR, width, 0);
        const edges = beatEdges(FOUR);
        expect(rows.flatMap((row) => [row.fromBeat, row.toBeat])).toEqual(
          rows.flatMap((row, i) => [rows[i - 1]?.toBeat ?? 0, row.toBeat]),
        );
        expect(rows.at(-1)?.toBeat).toBe(4);
        const beatsIn = rows.map((row) => row.toBeat - row.fromBeat);
        expect(Math.max(...beatsIn) - Math.min(...beatsIn)).toBeLessThanOrEqual(1);
        const scale = width / Math.max(...rows.map((row) => row.right - row.left));
        if (Math.max(...beatsIn) === 1) return;
        for (const row of rows) {
          const slots = cells.slice(row.fromBeat, row.toBeat).map((cell, i) => {
            const beat = row.fromBeat + i;
            return (((edges[beat + 1] ?? 0) - (edges[beat] ?? 0)) / cell.marks.length) * scale;
          });
          // standard: WCAG 2.2, 2.5.8 Target Size (Minimum), 24 CSS pixels
          expect(Math.min(...slots)).toBeGreaterThanOrEqual(24);
        }
      },
    );
    fc.assert(property, { seed: 5 });
  });
});
