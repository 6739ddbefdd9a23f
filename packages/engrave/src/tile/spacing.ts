/**
 * How wide a bar must be: notes stand in proportion to time, so one beat is as wide as another in every bar of a
 * sheet and the widest neighbours set the scale.
 *
 * Conventions: widths in staff spaces (the distance between two staff lines).
 * Source: our own choice. Engravers space notes by less than their length; here beats under beats matter more,
 * since a reader follows a page of exercises in time.
 */
import {
  add,
  compare,
  type Fraction,
  GRACE_NOTES,
  type NotatedBar,
  type NotatedEvent,
  subtract,
  toNumber,
} from '@shedbook/core';
import { accentsOf } from './accents.ts';

/** Extents of signs in staff spaces, as the music font draws them. */
const HEAD = 1.3;
const FLAG = 1.05;
const PARENTHESIS = 0.67;
const ACCENT_BESIDE = 1.85;
const GRACE_NOTE = 1.35;
const DOT = 0.7;
const REST = 1.1;

/** Least clear space between neighbours. */
const GAP = 0.55;

/** From the bar line to the first note, and from the end of the last slot to the bar line. */
const BAR_LINE_SPACE = 1.9;

interface Extent {
  readonly start: Fraction;
  readonly left: number;
  readonly right: number;
}

function graceNotesOf(event: NotatedEvent): number {
  return event.heads.reduce((sum, head) => sum + GRACE_NOTES[head.articulation], 0);
}

function extentOf(event: NotatedEvent, stems: 'up' | 'down'): Extent {
  if (event.kind === 'rest') return { start: event.start, left: 0, right: REST };
  const ghost = event.heads.some((head) => head.ghost) ? PARENTHESIS : 0;
  const flag = !event.beamed && event.value.base >= 8 && stems === 'up' ? FLAG : 0;
  const dot = event.value.dots === 1 ? DOT : 0;
  const left = ghost + graceNotesOf(event) * GRACE_NOTE;
  const accent = accentsOf(event, stems).beside.length > 0 ? ACCENT_BESIDE : 0;
  return { start: event.start, left, right: HEAD + Math.max(ghost + dot, flag, accent) };
}

const columnsByBar = new WeakMap<NotatedBar, readonly Extent[]>();

/** Extents of all that starts together, in order of time; a page is laid out by asking for them again and again. */
function columnsOf(bar: NotatedBar): readonly Extent[] {
  const known = columnsByBar.get(bar);
  if (known) return known;
  const columns = readColumns(bar);
  columnsByBar.set(bar, columns);
  return columns;
}

function readColumns(bar: NotatedBar): readonly Extent[] {
  const all = bar.layers.flatMap((layer) =>
    layer.groups.flatMap((group) => group.events.map((event) => extentOf(event, layer.stems))),
  );
  const columns: Extent[] = [];
  for (const extent of all.toSorted((a, b) => compare(a.start, b.start))) {
    const last = columns.at(-1);
    if (last && compare(last.start, extent.start) === 0) {
      columns[columns.length - 1] = {
        start: last.start,
        left: Math.max(last.left, extent.left),
        right: Math.max(last.right, extent.right),
      };
    } else columns.push(extent);
  }
  return columns;
}

/** A text that must stand clear of its neighbour, e.g. a count. Its middle is under the head's middle. */
export interface SlotText {
  readonly start: Fraction;
  /** In staff spaces. */
  readonly width: number;
}

/** Least clear space between two texts, in staff spaces. */
const TEXT_GAP = 0.45;

function textScale(texts: readonly SlotText[]): number {
  const sorted = texts.toSorted((a, b) => compare(a.start, b.start));
  return sorted.reduce((most, text, index) => {
    const next = sorted[index + 1];
    if (!next) return most;
    const apart = toNumber(subtract(next.start, text.start));
    return Math.max(most, ((text.width + next.width) / 2 + TEXT_GAP) / apart);
  }, 0);
}

/** Staff spaces that a whole note must take for nothing in the bar to touch. */
export function spacesPerWhole(bar: NotatedBar, texts: readonly SlotText[] = []): number {
  const columns = columnsOf(bar);
  const notes = columns.reduce((most, column, index) => {
    const next = columns[index + 1];
    const end = next?.start ?? bar.meter.bar;
    const apart = toNumber(subtract(end, column.start));
    return Math.max(most, (column.right + (next?.left ?? 0) + GAP) / apart);
  }, 0);
  return Math.max(notes, textScale(texts));
}

/** Staff spaces before the first note of a bar: the bar line, and grace notes or a parenthesis. */
export function leadIn(bar: NotatedBar): number {
  return BAR_LINE_SPACE + (columnsOf(bar)[0]?.left ?? 0);
}

/** Staff spaces that one line of bars must have, without clef and meter. */
export function leastWidth(
  bars: readonly NotatedBar[],
  texts: readonly (readonly SlotText[])[] = [],
): number {
  const perWhole = Math.max(...bars.map((bar, index) => spacesPerWhole(bar, texts[index])));
  return bars.reduce((sum, bar) => sum + leadIn(bar) + toNumber(bar.meter.bar) * perWhole, 0);
}

/** Length of the bars together, in whole notes. */
export function lengthOf(bars: readonly NotatedBar[]): Fraction {
  return bars.map((bar) => bar.meter.bar).reduce(add);
}
