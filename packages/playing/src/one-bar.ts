/** One bar of a program that goes round by itself. */
import type { Program, ProgramStroke } from './program.ts';

/** The program of the first bar of the form that plays a bar of the pattern (from 0); the whole where none does. */
export function loopOneBar(program: Program, patternBar: number): Program {
  const index = program.bars.findIndex((each) => each.patternBar === patternBar);
  const bar = program.bars[index];
  if (!bar) return program;
  const from = bar.place;
  const end = (program.bars[index + 1]?.place ?? program.end) - from;
  const inBar = (stroke: ProgramStroke) => stroke.role !== 'count-in' && stroke.written.bar === bar.bar;
  const moved = <T extends { readonly place: number }>(each: T): T => ({ ...each, place: each.place - from });
  const countIn = program.strokes.filter((stroke) => stroke.role === 'count-in');
  return {
    ...program,
    shape: `bar ${patternBar} of ${program.shape}`,
    strokes: [...countIn, ...program.strokes.filter(inBar).map(moved)],
    clicks: program.clicks.filter(inBar).map(moved),
    beats: program.beats.filter((each) => each.bar === bar.bar).map(moved),
    bars: [{ ...bar, place: 0 }],
    end,
  };
}

/** The bar that is looped after the one that is: each in its turn, then the whole. */
export function nextLoop(bar: number | null, bars: number): number | null {
  const next = bar === null ? 0 : bar + 1;
  return bars > 1 && next < bars ? next : null;
}
