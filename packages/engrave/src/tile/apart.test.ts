import type { Voice } from '@shedbook/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arbitraryLesson } from '../../../../internal/testing/arbitrary-lesson.ts';
import { collisionsOf } from '../../../../internal/testing/collisions.ts';
import { barsOf, engraver } from '../../test/setup.ts';
import { layOut, tilesOf } from '../../test/sheets.ts';
import type { Box } from '../svg/geometry.ts';
import type { Staff } from './mei.ts';
import type { Tile } from './tile.ts';

/** A sixth of a staff space of 18 units: what an edge may share. */
const EDGE = 3;

function tileOf(parts: Readonly<Partial<Record<Voice, string>>>, staff: Staff = 'full'): Tile {
  return engraver.engraveTile({ id: 'e1', bars: barsOf(parts), staff, staffSpaceMm: 2, widthMm: null });
}

/** Triplets over quintuplets over a septuplet, nearly every stroke of the hands accented. */
const MANY = { ride: 'XxX XxX XxX XxX', snare: 'X.XXx XX.XX X.X.X .X.XX', bass: 'xx.x.xx x . .' };

/** Pairs of kinds that stood on each other before anything was moved, one bar for each. */
const BARS: Readonly<Record<string, readonly [Readonly<Partial<Record<Voice, string>>>, Staff?]>> = {
  'a rim shot under its flag': [{ snare: '.r . .r .' }, 'line'],
  'a buzz on its flag': [{ snare: '.b . .b .' }, 'line'],
  'a sweep over its flag': [{ ride: 'xxx xxx xxx xxx', snare: '.w . .w .' }],
  'a foot splash under the bass drum': [{ bass: 'x . x .', 'hihat-foot': 'o . o .' }],
  'rests of one voice on heads of another': [
    { ride: '..x ..x ..x ..x', snare: 'xxxxx x.x.x xxxxx x.x.x', bass: 'x.x xx. x.x xx.' },
  ],
  'parentheses of both feet': [{ bass: 'g . g .', 'hihat-foot': 'g . g .' }],
  'heads of a chord a step apart': [{ ride: 'g . X .', hihat: 'x . X .', snare: 'X . r .' }],
  'accents and numbers of three voices': [MANY],
};

/** Bars in which one sign has no room until another gives way, too: at the ends of beams, and before grace notes. */
const CROWDED: typeof BARS = {
  'a sweep over a drum a step below, both last under their beams': [
    { snare: 'gXdDwdD . . .', 'tom-low': 'g.XXfd. . . .' },
  ],
  'a parenthesis between heads of three voices': [
    { snare: 'g.bX . . .', 'tom-low': 'gXFxfx . . .', bass: 'x.g. . . .', hihat: 'g. . . .' },
  ],
};

describe('signs that stand on each other', () => {
  it.each(Object.entries(CROWDED))('[EN6200] make room for each other: %s', (_, [parts, staff]) => {
    expect(collisionsOf(tileOf(parts, staff))).toEqual([]);
  });

  it.each(Object.entries(BARS))('[EN5200] move apart: %s', (_, [parts, staff]) => {
    const tile = tileOf(parts, staff);
    expect(collisionsOf(tile)).toEqual([]);
    const strokes = Object.values(parts)
      .join('')
      .replaceAll(/[^a-z]/gi, '').length;
    expect(tile.heads).toHaveLength(strokes);
  });

  /** Whether two boxes share more than some units each way. */
  const share = (a: Box, b: Box, slack = 0) =>
    Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x) > slack &&
    Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y) > slack;

  it('[EN5200] the dot of a ghost note stands behind its parenthesis', () => {
    const { drawing } = tileOf({ snare: 'g..x g..x g..x g..x' }, 'line');
    const dots = drawing.groups.filter(({ classes }) => classes.includes('dots'));
    const closing = drawing.shapes.filter(({ glyph }) => glyph === 'E26B');
    expect([dots.length, closing.length]).toEqual([4, 4]);
    for (const dot of dots) expect(closing.filter(({ box }) => share(box, dot.box))).toEqual([]);
  });

  it('[EN5200] accents keep off the beams of another voice', () => {
    const { drawing } = tileOf(MANY);
    const beams = new Set(
      drawing.groups.flatMap(({ id, classes }) => (classes.includes('beam') ? [id] : [])),
    );
    const bars = drawing.shapes.filter(({ glyph, within }) => glyph === null && beams.has(within));
    const accents = drawing.shapes.filter(({ glyph }) => /^E4A/.test(glyph ?? ''));
    expect(accents.length).toBeGreaterThan(20);
    for (const { box } of accents) expect(bars.filter((bar) => share(bar.box, box, EDGE))).toEqual([]);
  });

  it('[EN5200] whatever is written', () => {
    const check = (staff: 'compact' | 'full') =>
      fc.property(arbitraryLesson, (lesson) => {
        expect(tilesOf(layOut(lesson, { staff })).flatMap(collisionsOf)).toEqual([]);
      });
    fc.assert(check('full'), { numRuns: 6, seed: 5200 });
    fc.assert(check('compact'), { numRuns: 6, seed: 5201 });
  });
});
