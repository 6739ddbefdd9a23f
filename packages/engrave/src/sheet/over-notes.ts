/** What stands over and beside the notes of an exercise: its number and its name. */
import { CAP_HEIGHT } from '../text/fonts.ts';
import type { SheetContext } from './context.ts';
import { ACCENT, allMoved, type Block, type Item } from './item.ts';
import type { LineSlot, PreparedExercise } from './prepare.ts';
import { setColumn, setLine, style } from './setting.ts';

const NAME_MM = 4.1;

/** Size of the exercise's number. */
export const NUMBER_MM = 6.6;

/** Between the number and the notes. */
export const GUTTER_GAP_MM = 2.4;

/** The name over the first line. */
export function captions(context: SheetContext, prepared: PreparedExercise, line: LineSlot): Block {
  const name = line.from > 0 ? '' : (prepared.exercise.name ?? '');
  const column = setColumn(context.fonts, name, style('bold', NAME_MM), line.cellMm - line.gutterMm, {
    maxLines: 2,
  });
  return { ...column, items: allMoved(column.items, line.gutterMm, 0) };
}

/** The number, its figures centred on y. */
export function numberItem(
  context: SheetContext,
  prepared: PreparedExercise,
  line: LineSlot,
  y: number,
): readonly Item[] {
  if (line.from > 0) return [];
  const x = line.gutterMm - GUTTER_GAP_MM;
  return [
    setLine(context.fonts, `${prepared.exercise.number}`, style('bold', NUMBER_MM), {
      x,
      y: y + (CAP_HEIGHT * NUMBER_MM) / 2,
      align: 'right',
      colour: ACCENT,
      role: 'aside',
    }),
  ];
}
