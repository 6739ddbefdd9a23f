/**
 * Where the music is on an engraved bar, and the ball over it.
 *
 * Conventions: millimetres from the left end of the bar; beats from 0, phases from 0 to below 1 of a beat, as written;
 * beats and slots of a bar's slots from 1.
 */
import { type Flight, flightHeight } from './landings.ts';

/** A slot of an engraved bar. */
export interface SlotOnBar {
  /** Beat of the bar, from 1. */
  readonly beat: number;
  /** Slot of the beat, from 1. */
  readonly slot: number;
  /** Slots of the beat. */
  readonly slots: number;
  readonly xMm: number;
}

/** An engraved bar: how wide it is, and where its slots stand. */
export interface EngravedBar {
  readonly widthMm: number;
  readonly slots: readonly SlotOnBar[];
}

/** A place on a bar where a slot stands. */
interface Mark {
  /** Beats from the bar line. */
  readonly at: number;
  readonly x: number;
}

function marksOf({ slots }: EngravedBar): readonly Mark[] {
  const marks = slots.map(({ beat, slot, slots: of, xMm }) => ({ at: beat - 1 + (slot - 1) / of, x: xMm }));
  return marks.toSorted((a, b) => a.at - b.at);
}

/** Where a moment of a bar stands, in millimetres: on its slot, or between the slots beside it. */
export function xAt(bar: EngravedBar, beat: number, phase: number): number {
  const marks = marksOf(bar);
  const at = beat + phase;
  const before = marks.findLast((mark) => mark.at <= at + 1e-9) ?? marks[0];
  const after = marks.find((mark) => mark.at >= at - 1e-9);
  if (!before) return 0;
  const next = after ?? { at: Math.floor(before.at) + 1, x: bar.widthMm };
  if (next.at - before.at < 1e-9) return before.x;
  return before.x + ((at - before.at) / (next.at - before.at)) * (next.x - before.x);
}

/** Height of a flight of a quarter note, and of the longest, in millimetres. */
const HEIGHT_MM = { quarter: 5.5, most: 8 } as const;

/** Where the ball is: across its bar, and over where it comes down. */
export interface BallPlace {
  readonly acrossMm: number;
  readonly overMm: number;
}

/** Where the ball is on the bar that it left from; with still pictures it stays where it came down. */
export function ballOn(bar: EngravedBar, flight: Flight, still = false): BallPlace {
  const { from, to, share } = flight;
  const x = xAt(bar, from.beat, from.phase);
  if (still) return { acrossMm: x, overMm: 0 };
  const next = to && to.bar === from.bar ? xAt(bar, to.beat, to.phase) : bar.widthMm;
  return { acrossMm: x + (next - x) * share, overMm: flightHeight(flight, HEIGHT_MM) };
}

/** A count under the notes. */
export interface CountMark {
  readonly text: string;
  readonly xMm: number;
  /** Beat of the bar, from 1. */
  readonly beat: number;
  /** Whether anything is struck there. */
  readonly struck: boolean;
}

/** A slot that says whether it is struck. */
export interface StruckSlot extends SlotOnBar {
  /** Whether its voice is struck there. */
  readonly struck: boolean;
}

/** Says the count of a slot: beat and slot from 0, and how many slots the beat has. */
export type NameCount = (beat: number, slot: number, slots: number) => string;

/** Counts of a bar: every slot of the finest division that each beat has. */
export function countsOf(slots: readonly StruckSlot[], name: NameCount): readonly CountMark[] {
  const beats = [...new Set(slots.map((each) => each.beat))].toSorted((a, b) => a - b);
  return beats.flatMap((beat) => {
    const here = slots.filter((each) => each.beat === beat);
    const finest = Math.max(...here.map((each) => each.slots));
    return Array.from({ length: finest }, (_, index) => {
      const same = here.filter((each) => (each.slot - 1) * finest === index * each.slots);
      const struck = same.some((each) => each.struck);
      const xMm = (same.find((each) => each.slots === finest) ?? same[0])?.xMm ?? 0;
      return { text: name(beat - 1, index, finest), xMm, beat, struck };
    });
  });
}
