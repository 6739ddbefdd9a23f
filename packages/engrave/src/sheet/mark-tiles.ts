/** Notes in running text: tempo and feel marks, and the heads of a legend. */
import {
  type Fraction,
  fraction,
  meter,
  type NotatedBar,
  type NotatedEvent,
  type NotatedHead,
  type NoteValue,
  type Strike,
  ZERO,
} from '@shedbook/core';
import type { Engraver } from '../tile/engraver.ts';
import type { Tile } from '../tile/tile.ts';

const QUARTERS = meter('4/4');

/** Puts a head in the middle of the shortest staff that verovio draws, 5.5 staff spaces. */
const LEGEND_LEAD_SPACES = 1.6;

/** A note of a mark: its value, where it starts in quarters of its group, whether it is beamed. */
interface MarkNote {
  readonly base: NoteValue['base'];
  readonly dots?: 0 | 1;
  readonly start: readonly [number, number];
  readonly beamed?: boolean;
}

const PLAIN: NotatedHead = {
  voice: 'snare',
  articulation: 'normal',
  mark: 'x',
  accent: false,
  ghost: false,
  sticking: null,
};

function markEvent(note: MarkNote, head: NotatedHead): NotatedEvent {
  return {
    kind: 'note',
    heads: [head],
    value: { base: note.base, dots: note.dots ?? 0 },
    start: fraction(...note.start),
    duration: fraction(1, note.base),
    slot: 0,
    slots: 1,
    beamed: note.beamed ?? false,
  };
}

function markBar(notes: readonly MarkNote[], triplet: boolean, head = PLAIN): NotatedBar {
  return barOf(
    notes.map((note) => markEvent(note, head)),
    triplet,
  );
}

function barOf(events: readonly NotatedEvent[], triplet = false): NotatedBar {
  const tuplet = triplet ? { actual: 3, normal: 2, bracket: true } : null;
  const length = fraction(1, 4);
  return {
    meter: { ...QUARTERS, bar: length },
    layers: [{ layer: 1, stems: 'up', groups: [{ beat: 0, beats: 1, tuplet, events }] }],
  };
}

/** Notes without a staff. */
function bareTile(engraver: Engraver, id: string, bar: NotatedBar, staffSpaceMm: number): Tile {
  return engraver.engraveTile({
    id,
    bars: [bar],
    staff: 'bare',
    staffSpaceMm,
    widthMm: null,
    barLines: 'open',
  });
}

/** What marks are drawn with, and what stands before their ids. */
export interface MarkContext {
  readonly engraver: Engraver;
  readonly prefix: string;
}

/** The note that a tempo counts, by its length in whole notes: plain, or dotted where it divides in three. */
export function tempoNote({ engraver, prefix }: MarkContext, beat: Fraction, staffSpaceMm: number): Tile {
  const dots = beat.num === 3 ? 1 : 0;
  const base = (beat.den / (dots + 1)) as NoteValue['base'];
  const bar = markBar([{ base, dots, start: [0, 1] }], false);
  return bareTile(engraver, `${prefix}mark-tempo`, bar, staffSpaceMm);
}

/** Two even notes, and the long and short one of a triplet that they are played as. */
export function swingNotes(
  { engraver, prefix }: MarkContext,
  of: 'eighths' | 'sixteenths',
  staffSpaceMm: number,
): readonly [Tile, Tile] {
  const short = of === 'eighths' ? 8 : 16;
  const long = of === 'eighths' ? 4 : 8;
  const even: readonly MarkNote[] = [
    { base: short, start: [0, 1], beamed: true },
    { base: short, start: [1, 8], beamed: true },
  ];
  const swung: readonly MarkNote[] = [
    { base: long, start: [0, 1], beamed: of === 'sixteenths' },
    { base: short, start: [1, 6], beamed: of === 'sixteenths' },
  ];
  return [
    bareTile(engraver, `${prefix}mark-even`, markBar(even, false), staffSpaceMm),
    bareTile(engraver, `${prefix}mark-swung`, markBar(swung, true), staffSpaceMm),
  ];
}

/** A stroke that is held, as it is printed: two notes and the tie between them. */
export function heldTile(engraver: Engraver, id: string, strike: Strike, staffSpaceMm: number): Tile {
  const head: NotatedHead = { ...PLAIN, ...strike, accent: false };
  const bar = barOf(
    [
      markEvent({ base: 8, start: [0, 1] }, { ...head, goesOn: true }),
      markEvent({ base: 8, start: [1, 8] }, { ...head, mark: '~', isHeld: true }),
    ].map((event) => ({ ...event, value: { base: 4, dots: 0 } })),
  );
  return bareTile(engraver, id, bar, staffSpaceMm);
}

/** One stroke as it is printed: on its staff without a stem, or bare with one. */
export function strokeTile(
  engraver: Engraver,
  id: string,
  strike: Strike,
  staffSpaceMm: number,
  staff: 'full' | 'line' | 'bare',
): Tile {
  const head: NotatedHead = { ...PLAIN, ...strike };
  const bar = markBar([{ base: 4, start: [ZERO.num, ZERO.den] }], false, head);
  return engraver.engraveTile({
    id,
    bars: [bar],
    staff,
    staffSpaceMm,
    widthMm: null,
    barLines: 'open',
    stems: staff === 'bare',
    ...(staff === 'bare' ? {} : { leadSpaces: LEGEND_LEAD_SPACES }),
  });
}
