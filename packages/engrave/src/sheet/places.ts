/**
 * Where each slot of an exercise stands, for a page that follows the music.
 *
 * Conventions: bars, beats and slots from 1; millimetres from the page's upper left corner.
 */

import type { Voice } from '@shedbook/core';
import {
  add,
  beatLength,
  beatStarts,
  fraction,
  isStruck,
  type Lesson,
  type Mark,
  multiply,
  strikeOf,
} from '@shedbook/core';
import type { Tile } from '../tile/tile.ts';
import { type PrintedPart, partsOfBar } from './parts.ts';

/** One slot of one voice: where it stands, and the id of the head that is struck there. */
export interface SlotPlace {
  readonly bar: number;
  readonly beat: number;
  readonly slot: number;
  readonly slots: number;
  readonly voice: Voice;
  readonly xMm: number;
  /** Middle of the head, or of the staff where nothing is struck. */
  readonly yMm: number;
  /** Id in the page's SVG, or null where nothing is struck. */
  readonly id: string | null;
}

/** One line of an exercise on a page. */
export interface ExercisePlace {
  readonly exercise: number;
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly slots: readonly SlotPlace[];
}

/** A line while its page is made: where its slots stand, from its own corner, is found when somebody asks. */
export interface PlacedLine extends Omit<ExercisePlace, 'slots'> {
  readonly slots: () => readonly SlotPlace[];
  /** Whether its exercise begins with it. */
  readonly opens: boolean;
}

/** A line of an exercise and the page it is on, from 0. */
export interface PagedPlace extends ExercisePlace {
  readonly page: number;
}

/** The slots of the bars `from` (from 0) up to `to` on a tile, from the tile's upper left corner. */
export function slotPlaces(
  lesson: Lesson,
  parts: readonly PrintedPart[],
  tile: Tile,
  from: number,
  to: number,
): readonly SlotPlace[] {
  const starts = beatStarts(lesson.meter);
  const middle = (tile.staffTopMm + tile.staffBottomMm) / 2;
  const headAt = new Map(
    tile.heads.map((head) => [`${head.bar} ${head.start.num}/${head.start.den} ${head.voice}`, head]),
  );
  const places: SlotPlace[] = [];
  for (let index = from; index < to; index += 1) {
    for (const part of partsOfBar(parts, index)) {
      part.cells.forEach((cell, beat) => {
        const slots = cell.marks.length;
        cell.marks.forEach((mark: Mark, slot) => {
          const start = add(
            starts[beat] ?? fraction(0),
            multiply(beatLength(lesson.meter, beat), fraction(slot, slots)),
          );
          const voice = strikeOf(part.voice, mark)?.voice ?? part.voice;
          const head = !isStruck(mark)
            ? undefined
            : headAt.get(`${index + 1} ${start.num}/${start.den} ${voice}`);
          const at = { bar: index + 1, beat: beat + 1, slot: slot + 1, slots, voice };
          places.push({
            ...at,
            xMm: head?.xMm ?? tile.xAt(index + 1, start),
            yMm: head?.yMm ?? middle,
            id: head?.id ?? null,
          });
        });
      });
    }
  }
  return places;
}

/** Slots moved by (x, y). */
export function movedSlots(slots: readonly SlotPlace[], x: number, y: number): readonly SlotPlace[] {
  return slots.map((slot) => ({ ...slot, xMm: slot.xMm + x, yMm: slot.yMm + y }));
}

/** A line moved by (x, y). */
export function movedLine(line: PlacedLine, x: number, y: number): PlacedLine {
  return { ...line, xMm: line.xMm + x, yMm: line.yMm + y };
}

/** A line on its page, with its slots. */
export function placeOf({ opens: _, slots, ...line }: PlacedLine, page: number): PagedPlace {
  return { ...line, page, slots: movedSlots(slots(), line.xMm, line.yMm) };
}
