/**
 * What brushes strike. The ear has been trained on sticks: it hears most taps of a brush, some of them as a foot or a cymbal,
 * and some not at all. So they tell neither which bar of a form was played nor which exercise, nor that a limb stayed out.
 */
import type { Unheard, Voice } from '@shedbook/core';
import type { PlacedBar } from './bars.ts';
import type { ExpectedStroke, FormGrid } from './form-grid.ts';

/** Whether a stroke is the tap of a brush. */
export function isTap({ stroke }: ExpectedStroke): boolean {
  return stroke.articulation === 'tap';
}

/** The voices that are tapped with brushes. */
export function brushedVoices({ bars }: FormGrid): ReadonlySet<Voice> {
  const taps = bars.flatMap(({ strokes }) => strokes.filter(isTap));
  return new Set(taps.map(({ voice }) => voice));
}

/** A form without what is tapped with brushes: what tells which of its bars is played. */
export function withoutTaps(grid: FormGrid): FormGrid {
  const bars = grid.bars.map((bar) => ({ ...bar, strokes: bar.strokes.filter((stroke) => !isTap(stroke)) }));
  return { ...grid, bars };
}

/** What is said of the times that a brush is drawn in some bars of a form: nobody can judge them. */
export function drawnIn(grid: FormGrid, bars: readonly PlacedBar[]): readonly Unheard[] {
  const count = bars.reduce(
    (sum, { formBar }) => sum + (formBar === null ? 0 : (grid.bars[formBar]?.drawn.length ?? 0)),
    0,
  );
  return count > 0 ? [{ reason: 'brush-drawn', count }] : [];
}
