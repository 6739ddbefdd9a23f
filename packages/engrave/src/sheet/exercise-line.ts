/** One line of an exercise in its cell of the grid. */
import { ASCENT, CAP_HEIGHT } from '../text/fonts.ts';
import type { Tile } from '../tile/tile.ts';
import type { SheetContext } from './context.ts';
import { textsOver } from './expression.ts';
import { allMoved, type Item } from './item.ts';
import { belowNumberMm, type Captions, captions, NUMBER_MM, numberItem } from './over-notes.ts';
import { movedSlots, type PlacedLine, slotPlaces } from './places.ts';
import { type LineSlot, lineRequest, type PreparedExercise } from './prepare.ts';
import { underNotes } from './under-notes.ts';

const CAPTION_GAP_MM = 0.8;

/** Least room for notes under the staff, so that what is printed under them stands level along a row. */
const UNDER_STAFF_SPACES = 1.5;

/** What the number takes above the middle of the staff. */
const NUMBER_ABOVE_MM = (ASCENT - CAP_HEIGHT / 2) * NUMBER_MM;

/** A laid out line of an exercise. */
export interface ExerciseLine {
  readonly widthMm: number;
  readonly heightMm: number;
  /** From the top to the top staff line: lines beside each other are hung from it. */
  readonly staffMm: number;
  /** The name, and how it is played, at its top. */
  readonly captions: readonly Item[];
  /** All else. */
  readonly items: readonly Item[];
  readonly place: PlacedLine;
}

interface Over {
  readonly name: Captions;
  readonly heightMm: number;
  readonly texts: readonly Item[];
}

/** What stands over the notes: the name, then what is said of the bars. */
function over(context: SheetContext, prepared: PreparedExercise, tile: Tile, line: LineSlot): Over {
  const name = captions(context, prepared, line);
  const texts = textsOver(context, prepared, tile, line);
  return {
    name,
    heightMm: name.heightMm + texts.heightMm,
    texts: allMoved(texts.items, line.gutterMm, name.heightMm),
  };
}

/** What a name that reaches over the lines beside it asks for over the top staff line, so that it clears them. */
function clearanceMm({ reachingMm }: Captions, { beside }: LineSlot): number {
  return reachingMm === 0 || !beside ? 0 : reachingMm + CAPTION_GAP_MM + beside.overStaffMm;
}

/** Lays out one line of an exercise. */
export function layOutLine(context: SheetContext, prepared: PreparedExercise, line: LineSlot): ExerciseLine {
  const { lesson, engraver } = context;
  const tile = engraver.engraveTile({
    ...lineRequest(context, prepared, line.from, line.to),
    widthMm: line.cellMm - line.gutterMm,
  });
  const above = over(context, prepared, tile, line);
  const staffMiddle = (tile.staffTopMm + tile.staffBottomMm) / 2;
  const top = Math.max(
    above.heightMm === 0 ? 0 : above.heightMm + CAPTION_GAP_MM,
    NUMBER_ABOVE_MM - staffMiddle,
    clearanceMm(above.name, line) - tile.staffTopMm,
  );
  const floor = Math.max(tile.heightMm, tile.staffBottomMm + UNDER_STAFF_SPACES * context.staffSpaceMm);
  const under = underNotes(context, prepared, tile, line);
  const items: readonly Item[] = [
    ...above.texts,
    ...numberItem(context, prepared, line, top + staffMiddle),
    { kind: 'tile', x: line.gutterMm, y: top, tile },
    ...allMoved(under.items, line.gutterMm, top + floor),
  ];
  const heightMm = top + Math.max(floor + under.heightMm, staffMiddle + belowNumberMm(prepared));
  const slots = () =>
    movedSlots(slotPlaces(lesson, prepared.parts, tile, line.from, line.to), line.gutterMm, top);
  const { number: exercise } = prepared.exercise;
  const opens = line.from === 0;
  const place = { exercise, opens, xMm: 0, yMm: 0, widthMm: line.cellMm, heightMm, slots };
  return {
    widthMm: line.cellMm,
    heightMm,
    staffMm: top + tile.staffTopMm,
    captions: above.name.items,
    items,
    place,
  };
}
