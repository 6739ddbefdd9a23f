/**
 * When each written stroke of an aligned take should have sounded.
 *
 * Conventions: seconds; `idealSeconds` follows the take's own pulse and the lesson's feel, `likelySeconds` also
 * the feel the student plays with, limb by limb, so that a stroke of an unlike swing ratio is looked for where it
 * will be.
 */

import type { Voice } from '@shedbook/core';
import { median } from '@shedbook/signal';
import type { PlacedBar } from '../align/bars.ts';
import type { ExpectedStroke, FormGrid } from '../align/form-grid.ts';
import { ANY, firstFrom, KIND_COUNT, kindOf, type Observations } from '../align/observations.ts';

/** One written stroke at its place in the take. */
export interface Place {
  readonly expected: ExpectedStroke;
  /** Index of the bar of the take. */
  readonly takeBar: number;
  readonly idealSeconds: number;
  readonly likelySeconds: number;
}

/**
 * How far a feel may move an off-beat stroke, as a fraction of the beat: from a swing of 3:1 to the middle, where nothing is
 * written so near to it; less where beats have more parts, since the next one is another stroke.
 */
const WIDEST_SHIFT = 0.26;
const WIDEST_SHIFT_IN_MANY = 0.2;
const FEW_SLOTS = 3;
const FEWEST = 4;

/** Time of a position in a bar of the take. */
export function secondsAt(bar: PlacedBar, position: number): number {
  return bar.startSeconds + position * bar.barSeconds;
}

/** The class of places that a feel moves alike: how far into its beat, in hundredths. */
function classOf(grid: FormGrid, position: number): number {
  const index = Math.max(
    0,
    grid.beats.findLastIndex((beat) => beat <= position + 1e-6),
  );
  const start = grid.beats[index]!;
  const end = grid.beats[index + 1] ?? 1;
  return Math.round((100 * (position - start)) / (end - start)) % 100;
}

/** How a voice shares the feel: by its own strokes where there are enough, else by those of all voices. */
type Shifts = (voice: Voice, position: number) => number;

/** The shift of each class that moves, in fractions of a beat. */
function feelShifts(seen: Observations, grid: FormGrid, bars: readonly PlacedBar[]): Shifts {
  const found = new Map<string, number[]>();
  for (const bar of bars) {
    if (bar.formBar === null) continue;
    const beatSeconds = bar.barSeconds / grid.beats.length;
    for (const { position, voice, onBeat, stroke } of grid.bars[bar.formBar]!.strokes) {
      if (onBeat) continue;
      const ideal = secondsAt(bar, position);
      const reach = (stroke.slots <= FEW_SLOTS ? WIDEST_SHIFT : WIDEST_SHIFT_IN_MANY) * beatSeconds;
      let best = 0;
      let shift = 0;
      for (let i = firstFrom(seen.times, ideal - reach); i < seen.times.length; i += 1) {
        const delta = seen.times[i]! - ideal;
        if (delta > reach) break;
        const value = seen.values[i * KIND_COUNT + kindOf(voice)]! + 0.3 * seen.values[i * KIND_COUNT + ANY]!;
        const score = value * (1 - 0.5 * Math.abs(delta / reach));
        if (score > best) {
          best = score;
          shift = delta / beatSeconds;
        }
      }
      if (best < 0.5) continue;
      const alike = classOf(grid, position);
      for (const key of [`${alike}`, `${alike} ${voice}`]) {
        const values = found.get(key);
        if (values) values.push(shift);
        else found.set(key, [shift]);
      }
    }
  }
  const shifts = new Map<string, number>();
  for (const [key, values] of found) if (values.length >= FEWEST) shifts.set(key, median(values));
  return (voice, position) => {
    const alike = classOf(grid, position);
    return shifts.get(`${alike} ${voice}`) ?? shifts.get(`${alike}`) ?? 0;
  };
}

/** Where any stroke of the form should sound in a bar of the take, whichever bar of the form it is of. */
export type Placer = (bar: PlacedBar, takeBar: number, expected: ExpectedStroke) => Place;

/** Places strokes as a take has them whose bars are known. */
export function placerOf(seen: Observations, grid: FormGrid, bars: readonly PlacedBar[]): Placer {
  const shifts = feelShifts(seen, grid, bars);
  return (bar, takeBar, expected) => {
    const idealSeconds = secondsAt(bar, expected.position);
    const shift = expected.onBeat ? 0 : shifts(expected.voice, expected.position);
    const likelySeconds = idealSeconds + (shift * bar.barSeconds) / grid.beats.length;
    return { expected, takeBar, idealSeconds, likelySeconds };
  };
}

/** Every written stroke of the bars that are played, in order of time. */
export function placesOf(seen: Observations, grid: FormGrid, bars: readonly PlacedBar[]): readonly Place[] {
  const placed = placerOf(seen, grid, bars);
  return bars
    .flatMap((bar, takeBar) =>
      (bar.formBar === null ? [] : grid.bars[bar.formBar]!.strokes).map((expected) =>
        placed(bar, takeBar, expected),
      ),
    )
    .toSorted((a, b) => a.likelySeconds - b.likelySeconds);
}
