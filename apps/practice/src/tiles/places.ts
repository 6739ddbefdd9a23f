/**
 * Where the music is on the tiles.
 *
 * Conventions: millimetres on a tile; beats from 0, phases from 0 to below 1 of a beat, as written.
 */
import type { PackBar } from '@shedbook/pack';
import type { Program, ProgramBar } from '@shedbook/stand';
import { type CountWords, countUnder } from '@shedbook/words';

/** A place on a tile where a slot stands. */
interface Mark {
  /** Beats from the bar line. */
  readonly at: number;
  readonly x: number;
}

function marksOf({ slots }: PackBar): readonly Mark[] {
  const marks = slots.map(({ beat, slot, slots: of, xMm }) => ({ at: beat - 1 + (slot - 1) / of, x: xMm }));
  return marks.toSorted((a, b) => a.at - b.at);
}

/** Where a moment of a bar stands: on its slot, or between the slots beside it. */
export function xAt(bar: PackBar, beat: number, phase: number): number {
  const marks = marksOf(bar);
  const at = beat + phase;
  const before = marks.findLast((mark) => mark.at <= at + 1e-9) ?? marks[0];
  const after = marks.find((mark) => mark.at >= at - 1e-9);
  if (!before) return 0;
  const next = after ?? { at: Math.floor(before.at) + 1, x: bar.widthMm };
  if (next.at - before.at < 1e-9) return before.x;
  return before.x + ((at - before.at) / (next.at - before.at)) * (next.x - before.x);
}

/** A count under the notes. */
export interface CountMark {
  readonly text: string;
  readonly xMm: number;
  readonly beat: number;
  readonly struck: boolean;
}

/** Counts of a bar: every slot of the finest division that each beat has. */
export function countsOf(words: CountWords, { slots }: PackBar): readonly CountMark[] {
  const beats = [...new Set(slots.map((each) => each.beat))].toSorted((a, b) => a - b);
  return beats.flatMap((beat) => {
    const here = slots.filter((each) => each.beat === beat);
    const finest = Math.max(...here.map((each) => each.slots));
    return Array.from({ length: finest }, (_, index) => {
      const same = here.filter((each) => (each.slot - 1) * finest === index * each.slots);
      const struck = same.some((each) => each.struck);
      const xMm = (same.find((each) => each.slots === finest) ?? same[0])?.xMm ?? 0;
      return { text: countUnder(words, beat - 1, index, finest), xMm, beat, struck };
    });
  });
}

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
