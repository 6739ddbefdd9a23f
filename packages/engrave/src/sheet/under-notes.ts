/** What stands under the notes of an exercise: hands, counts, remarks, pictures and tick boxes. */
import {
  formatFraction,
  groupBy,
  handsTogether,
  isSticked,
  type NotatedBar,
  type NotatedEvent,
} from '@shedbook/core';
import { CAP_HEIGHT } from '../text/fonts.ts';
import { headId } from '../tile/mei.ts';
import type { Tile } from '../tile/tile.ts';
import type { SheetContext } from './context.ts';
import { textsUnder } from './expression.ts';
import { allMoved, type Block, boxOf, type Item, PENCIL } from './item.ts';
import { exerciseMedia } from './media-blocks.ts';
import { COUNT_SPACES, countStyle, type LineSlot, lineMusic, type PreparedExercise } from './prepare.ts';
import { LEADING, setColumn, setLine, style } from './setting.ts';
import { tickBoxes } from './tick-boxes.ts';

/** In staff spaces, so that it grows with the notes. */
const STICKING_SPACES = 1.8;

/** Above a row of hands or counts, in staff spaces. */
const ROW_SPACES = 0.8;

const NOTES_MM = 3.7;
const STACK_GAP_MM = 0.8;

function eventsOf(bar: NotatedBar): readonly NotatedEvent[] {
  return bar.layers.flatMap((layer) => layer.groups.flatMap((group) => group.events));
}

/** Hands under the notes, on a baseline y = 0; empty where none are written or wanted. */
function stickings(
  context: SheetContext,
  prepared: PreparedExercise,
  tile: Tile,
  line: LineSlot,
): readonly Item[] {
  if (!context.settings.stickings || !isSticked(prepared.exercise)) return [];
  const size = style('bold', STICKING_SPACES * context.staffSpaceMm);
  const { id, bars } = lineMusic(context, prepared, line.from, line.to);
  const xById = new Map(tile.heads.map((head) => [head.id, head.xMm]));
  return bars.flatMap((bar, index) => {
    const handed = eventsOf(bar).flatMap((event) =>
      event.heads.flatMap((head) => {
        const x = xById.get(headId(id, line.from + index + 1, event, head));
        return head.sticking === null || x === undefined ? [] : [{ at: event.start, x, hand: head.sticking }];
      }),
    );
    // Hands that strike together stand as one letter.
    return [...groupBy(handed, ({ at }) => formatFraction(at)).values()].map((together) => {
      const hand = handsTogether(together.map((each) => each.hand)) ?? '';
      const x = Math.min(...together.map((each) => each.x));
      return setLine(context.fonts, hand, size, { x, y: 0, align: 'middle', role: 'aside' });
    });
  });
}

/** Counts on a baseline y = 0. */
function countItems(
  context: SheetContext,
  prepared: PreparedExercise,
  tile: Tile,
  line: LineSlot,
): readonly Item[] {
  return prepared.counts.slice(line.from, line.to).flatMap((counts, index) =>
    counts.map((count) => {
      const x = tile.xAt(line.from + index + 1, count.start);
      return setLine(context.fonts, count.text, countStyle(context, count.struck), {
        x,
        y: 0,
        align: 'middle',
        role: 'aside',
        ...(count.struck ? {} : { colour: PENCIL }),
      });
    }),
  );
}

/** Dynamics and texts, hands and counts, each in a row of its own. */
function rowsUnder(context: SheetContext, prepared: PreparedExercise, tile: Tile, line: LineSlot): Block {
  const said = textsUnder(context, prepared, tile, line);
  const items: Item[] = [...said.items];
  let y = said.heightMm;
  for (const [row, spaces] of [
    [stickings(context, prepared, tile, line), STICKING_SPACES],
    [countItems(context, prepared, tile, line), COUNT_SPACES],
  ] as const) {
    if (row.length === 0) continue;
    y += (spaces * CAP_HEIGHT + ROW_SPACES) * context.staffSpaceMm;
    items.push(...allMoved(row, 0, y));
  }
  const last = items.map((item) => boxOf(item)).map((box) => box.y + box.height);
  return { widthMm: tile.widthMm, heightMm: Math.max(said.heightMm, ...last), items };
}

/** The most of a page that one exercise's remarks may take. */
const NOTES_SHARE = 0.5;

/** The exercise's notes. */
function remarks(context: SheetContext, prepared: PreparedExercise, widthMm: number): Block {
  const maxLines = Math.max(1, Math.floor((context.contentHeightMm * NOTES_SHARE) / (NOTES_MM * LEADING)));
  return setColumn(context.fonts, prepared.exercise.notes ?? '', style('italic', NOTES_MM), widthMm, {
    maxLines,
  });
}

/** Blocks under each other, with a gap before each that has anything in it. */
function stacked(blocks: readonly Block[], widthMm: number): Block {
  const items: Item[] = [];
  let y = 0;
  for (const block of blocks) {
    if (block.heightMm === 0) continue;
    items.push(...allMoved(block.items, 0, y + STACK_GAP_MM));
    y += block.heightMm + STACK_GAP_MM;
  }
  return { widthMm, heightMm: y, items };
}

/** Everything under a tile: hands, counts, and under the exercise's last line its notes, the teacher's
 * own pictures and tick boxes. */
export function underNotes(
  context: SheetContext,
  prepared: PreparedExercise,
  tile: Tile,
  line: LineSlot,
): Block {
  const widthMm = line.cellMm - line.gutterMm;
  const rows = rowsUnder(context, prepared, tile, line);
  if (line.to < prepared.bars.length) return rows;
  const boxes = context.settings.tickBoxes ? [tickBoxes(context, widthMm)] : [];
  const media = exerciseMedia(context, prepared.exercise.media, widthMm);
  const rest = stacked([remarks(context, prepared, widthMm), ...media, ...boxes], widthMm);
  return {
    widthMm,
    heightMm: rows.heightMm + rest.heightMm,
    items: [...rows.items, ...allMoved(rest.items, 0, rows.heightMm)],
  };
}
