/** Which picture shows a bar of a form: the exercise's, or the groove's where time is played alone. */
import type { Landing } from './landings.ts';
import type { Program, ProgramBar } from './program.ts';

/** Which picture shows a bar of the form, and which of its bars, from 0. */
export interface ShownBar {
  readonly on: 'exercise' | 'groove';
  readonly index: number;
}

/** How many bars each picture has. */
export interface PictureSizes {
  /** Number of bars of the exercise's picture. */
  readonly exercise: number;
  /** Number of bars of the groove's picture. */
  readonly groove: number;
}

/** The first bar of the section that a bar lies in: the bars around it that play the same. */
function sectionStart(bars: readonly ProgramBar[], bar: ProgramBar): number {
  const other = bars.findLast((each) => each.bar < bar.bar && each.play !== bar.play);
  return (other?.bar ?? 0) + 1;
}

/** Where a bar of the form is shown; an answer is counted over the exercise that it answers. */
export function shownBar(program: Program, bar: ProgramBar, sizes: PictureSizes): ShownBar {
  const onGroove = bar.play === 'time' && sizes.groove > 0;
  if (onGroove || sizes.exercise === 0)
    return { on: 'groove', index: (bar.bar - 1) % Math.max(1, sizes.groove) };
  const turn = (bar.bar - 1) % sizes.exercise;
  const patternBars = Math.max(...program.bars.map((each) => each.patternBar ?? 0)) + 1;
  if (bar.patternBar === null) {
    const order = program.bars.flatMap(({ patternBar }) => patternBar ?? []);
    const place = bar.bar - sectionStart(program.bars, bar);
    const isPlayed = sizes.exercise === patternBars && order.length > 0;
    return {
      on: 'exercise',
      index: isPlayed ? (order[place % order.length] as number) : place % sizes.exercise,
    };
  }
  return { on: 'exercise', index: sizes.exercise > patternBars ? turn : bar.patternBar };
}

/** Where a landing of the ball is shown: in the count-in over the first bar; null where the program has no bars. */
export function shownAt(program: Program, landing: Landing, sizes: PictureSizes): ShownBar | null {
  const bar = program.bars.find((each) => each.bar === Math.max(1, landing.bar));
  return bar ? shownBar(program, bar, sizes) : null;
}
