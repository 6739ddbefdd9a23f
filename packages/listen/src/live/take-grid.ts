/**
 * What was asked in the bars that sounded, as a form of its own: each bar at its own tempo and feel.
 *
 * Conventions: bars are counted from 1 inside each loop, or through all of them; seconds of the stream with the
 * latency added.
 */
import { median } from '@shedbook/signal';
import type { PlacedBar } from '../align/bars.ts';
import type { ExpectedBar, FormGrid } from '../align/form-grid.ts';
import { matchBar } from '../align/match-bar.ts';
import type { Observations } from '../align/observations.ts';
import type { Pulse } from '../measure/pulse.ts';
import type { ClockBar, LiveClock } from './clock.ts';

function renumbered(expected: ExpectedBar, bar: number): ExpectedBar {
  return {
    ...expected,
    bar,
    strokes: expected.strokes.map((one) => {
      const written = { ...one.stroke.written, bar };
      return { ...one, stroke: { ...one.stroke, written } };
    }),
  };
}

/** The grid of these bars; `through` counts them on through the loops. */
export function takeGrid(clock: LiveClock, bars: readonly ClockBar[], through: boolean): FormGrid {
  const grids = bars.map((bar) => clock.gridAt(bar.bpm));
  const first = grids[0]!;
  const inLoop = Math.max(...bars.map((bar) => bar.formBar)) + 1;
  const from = bars[0]!.loop;
  return {
    bars: bars.map((bar, i) => {
      const number = bar.formBar + 1 + (through ? (bar.loop - from) * inLoop : 0);
      return renumbered(grids[i]!.bars[bar.formBar]!, number);
    }),
    beats: first.beats,
    quarters: first.quarters,
    barSeconds: median(bars.map((bar) => bar.barSeconds)),
    voices: [...new Set(grids.flatMap((grid) => grid.voices))],
  };
}

/** The bars as they lie in the stream, each with how well it matches what is seen there. */
export function placeClockBars(
  seen: Observations,
  grid: FormGrid,
  bars: readonly ClockBar[],
  latencySeconds: number,
): readonly PlacedBar[] {
  return bars.map((bar, formBar) => {
    const startSeconds = bar.startSeconds + latencySeconds;
    const tracked = { startSeconds, barSeconds: bar.barSeconds };
    return { ...tracked, formBar, score: matchBar(seen, grid, grid.bars[formBar]!, tracked) };
  });
}

/** The clock as a pulse: quarter notes from the first bar, each bar from its own line. */
export function clockPulse(bars: readonly PlacedBar[], quartersInBar: number): Pulse {
  const at = (quarters: number) => {
    const index = Math.max(0, Math.min(bars.length - 1, Math.floor(quarters / quartersInBar + 1e-9)));
    return { bar: bars[index]!, rest: quarters / quartersInBar - index };
  };
  return {
    secondsAt(quarters) {
      const { bar, rest } = at(quarters);
      return bar.startSeconds + rest * bar.barSeconds;
    },
    bpmAt: (quarters) => (60 * quartersInBar) / at(quarters).bar.barSeconds,
  };
}
