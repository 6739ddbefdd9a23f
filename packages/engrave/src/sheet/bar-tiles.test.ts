import { describe, expect, it } from 'vitest';
import { ENGLISH_SHEET } from '../../../../internal/testing/in-english.ts';
import { engraver, fonts, lessonOf } from '../../test/setup.ts';
import { engraveBars } from './bar-tiles.ts';

const LESSON = lessonOf(`title: Bars
feel: triplet
groove: { ride: "x x.x x x.x | x x x x.x", hihat-foot: ". x . x" }
exercises:
  - "x.. ..x x.x ..."
  - "..x ..x x.. x.. | ... xxx x.. ..."
`);

describe('bars for a screen', () => {
  const bars = engraveBars(LESSON, { engraver, fonts, words: ENGLISH_SHEET });

  it('[EN41] gives every bar alone and with the groove, after the groove itself', () => {
    // definition: the groove has two bars, so what is played over it begins anew after two
    const counts = bars.map(({ exercise, own, full }) => [exercise, own.length, full.length]);
    expect(counts).toEqual([
      [null, 2, 2],
      [1, 1, 2],
      [2, 2, 2],
    ]);
    for (const kind of ['own', 'full'] as const) {
      const numbered = bars.filter((each) => each.exercise !== null);
      const widths = numbered.flatMap((each) => each[kind].map(({ tile }) => tile.widthMm.toFixed(1)));
      expect(new Set(widths).size).toBe(1);
    }
    const ids = bars.flatMap((each) => [...each.own, ...each.full].map(({ tile }) => tile.rootId));
    // definition: of the groove alone, `own` and `full` are the same two tiles
    expect(new Set(ids).size).toBe(ids.length - 2);
  });

  it('[EN42] knows where every slot stands, and every stroke stands on its head', () => {
    const [, first] = bars;
    const own = first?.own[0];
    // definition: four triplet beats have twelve slots
    expect(own?.slots).toHaveLength(12);
    const struck = own?.slots.filter((slot) => slot.id !== null) ?? [];
    // definition: x.. ..x x.x ... has strokes on 1, the last of 2, the first and last of 3
    expect(struck.map(({ beat, slot }) => [beat, slot])).toEqual([
      [1, 1],
      [2, 3],
      [3, 1],
      [3, 3],
    ]);
    for (const slot of struck) {
      const head = own?.tile.heads.find((each) => each.id === slot.id);
      expect([slot.xMm, slot.yMm]).toEqual([head?.xMm, head?.yMm]);
    }
    const xs = own?.slots.map((slot) => slot.xMm) ?? [];
    expect(xs).toEqual(xs.toSorted((a, b) => a - b));
    const voices = new Set(first?.full[0]?.slots.map((slot) => slot.voice));
    expect(voices).toEqual(new Set(['ride', 'hihat-foot', 'snare']));
  });
});
