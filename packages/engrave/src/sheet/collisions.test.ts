/**
 * No sign on another, and no stroke without its head: the demo's sheets, and bars at random over their grooves.
 *
 * Conventions: SHEDBOOK_BARS says how many bars are drawn; `npm run bench collisions` draws thousands of lessons.
 */
import { readdirSync, readFileSync } from 'node:fs';
import {
  type Exercise,
  type Form,
  type Lesson,
  meter,
  notateBar,
  parsePattern,
  perform,
  sectionOf,
  type Voice,
} from '@shedbook/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arbitraryLesson } from '../../../../internal/testing/arbitrary-lesson.ts';
import { collisionsOf } from '../../../../internal/testing/collisions.ts';
import { engraver, lessonOf } from '../../test/setup.ts';
import { fullness, layOut, tilesOf } from '../../test/sheets.ts';
import type { Sheet } from './sheet.ts';

const DEMO = new URL('../../../../demo/', import.meta.url);
const DEMOS = readdirSync(DEMO)
  .filter((file) => file.endsWith('.lesson.yaml'))
  .map((file) => lessonOf(readFileSync(new URL(file, DEMO), 'utf8')));
const BARS = Number(process.env['SHEDBOOK_BARS'] ?? 80);

const CELLS: Readonly<Record<2 | 3 | 4 | 5 | 7 | 8, readonly string[]>> = {
  2: ['x.', '.x', 'xx', 'X.', '.g', '..', 'f.', '.d'],
  3: ['x..', '..x', 'x.x', '...', '.x.', 'xxx', 'X..', '..X', 'g..', '..g', 'f..', 'd..', 'gXg'],
  4: ['x...', '..x.', '.x..', '...x', 'X..g', '.g.g', 'xxxx', 'x.xx', '....', '..f.'],
  5: ['xxxxx', 'x.x.x', '.....', '.xg.X', 'gXggX'],
  7: ['xxxxxxx', 'x..x.x.', '.......', 'XggXggx'],
  8: ['xxxxxxxx', 'x..x..x.', '........', '.g.gXg.g'],
};

const GROOVES: readonly Readonly<Partial<Record<Voice, string>>>[] = [
  {},
  { ride: 'x x.x x x.x', bass: 'x x x x', 'hihat-foot': '. x . x' },
  { hihat: 'xx xx xx xx', bass: 'x. ..x. . .x' },
  { ride: 'xx xx xx xx', 'hihat-foot': '. x . x', bass: 'x. .x x. .x' },
  { hihat: 'X.o. xxxx x.x. xxxx', bass: 'X ..x. X. x' },
];

const bar = fc.constantFrom<keyof typeof CELLS>(2, 3, 4, 5, 7, 8).chain((slots) =>
  fc.record({
    groove: fc.constantFrom(...GROOVES),
    comping: fc.constantFrom<Voice>('snare', 'snare', 'bass'),
    cells: fc.array(fc.constantFrom(...CELLS[slots]), { minLength: 4, maxLength: 4 }),
  }),
);

describe('signs on a page', () => {
  it('[EN53] [EN46] none stands on another in the demo, on one line and on five, and no page is half empty', () => {
    expect(DEMOS.length).toBeGreaterThan(4);
    for (const lesson of DEMOS) {
      for (const staff of ['compact', 'full'] as const) {
        const sheet = layOut(lesson, { staff });
        const tiles = tilesOf(sheet);
        expect(tiles.length).toBeGreaterThan(lesson.exercises.length);
        const hollow = fullness(sheet)
          .slice(0, -1)
          .filter((share) => share < 0.6);
        expect([lesson.title, tiles.flatMap(collisionsOf), hollow]).toEqual([lesson.title, [], []]);
      }
    }
  });

  it('[EN53] nor in bars at random over their grooves', () => {
    fc.assert(
      fc.property(bar, ({ groove, comping, cells }) => {
        const text = cells.join(' ');
        const own = comping === 'bass' ? text.replaceAll(/[gfd]/g, 'x') : text;
        const parts = Object.entries({ ...groove, [comping]: own }).map(([voice, pattern]) => ({
          voice: voice as Voice,
          cells: parsePattern(pattern).bars[0] ?? [],
        }));
        const tile = engraver.engraveTile({
          id: 'e1',
          bars: [notateBar(parts, meter('4/4'))],
          staff: parts.length === 1 ? 'line' : 'full',
          staffSpaceMm: 2,
          widthMm: null,
          barLines: 'repeat',
          description: parts
            .map(({ voice, cells: each }) => `${voice} ${each.map(({ text: t }) => t).join(' ')}`)
            .join(', '),
        });
        expect(collisionsOf(tile)).toEqual([]);
      }),
      { numRuns: BARS },
    );
  });
});

/** Every stroke of an exercise once through, as `bar beat place voice`, in its bar as written. */
function sounding(lesson: Lesson, { number, parts }: Exercise): readonly string[] {
  const section = sectionOf(lesson, number);
  const bars = parts[0]?.pattern.bars.length ?? 1;
  const form: Form = {
    name: 'once',
    sections: [{ play: 'pattern', bars, ending: null }],
    repeat: 1,
    countInBars: 0,
  };
  const performance = perform(section, { exercise: number, form });
  const writtenBar = new Map(performance.bars.map(({ bar, patternBar }) => [bar, (patternBar ?? 0) + 1]));
  const strokes = performance.strokes.map(({ written, slots, voice }) =>
    [writtenBar.get(written.bar), written.beat, (written.slot - 1) / slots, voice].join(' '),
  );
  return [...new Set(strokes)].toSorted();
}

/** Every head of an exercise in the same way; under a sign, those of the bars that it stands for. */
function standing({ places }: Sheet, { number, barRepeats = [] }: Exercise): readonly string[] {
  const slots = places.filter((place) => place.exercise === number).flatMap((place) => place.slots);
  const heads = slots.filter(({ id }) => id !== null);
  const name = (slot: (typeof slots)[number], bar: number) =>
    [bar, slot.beat, (slot.slot - 1) / slot.slots, slot.voice].join(' ');
  const all = heads.map((slot) => name(slot, slot.bar));
  for (const { from, to } of barRepeats) {
    for (let bar = from + 1; bar <= to; bar += 1) {
      if (heads.some((slot) => slot.bar === bar)) continue;
      const like = all.filter((head) => head.startsWith(`${bar - (to - from)} `));
      all.push(...like.map((head) => head.replace(/^\d+/, `${bar}`)));
    }
  }
  return all.toSorted();
}

describe('strokes and heads', () => {
  const same = (lesson: Lesson) => {
    const sheet = layOut(lesson, { staff: 'full', legend: false, tickBoxes: false });
    for (const exercise of lesson.exercises) {
      const { number } = exercise;
      expect([number, standing(sheet, exercise)]).toEqual([number, sounding(lesson, exercise)]);
    }
  };

  it('[EN54] are the same in every exercise of the demo', () => {
    for (const lesson of DEMOS) same(lesson);
    expect(DEMOS.length).toBeGreaterThan(4);
  });

  it('[EN54] are the same in any lesson', () => {
    fc.assert(fc.property(arbitraryLesson, same), { numRuns: 6 });
  });
});
