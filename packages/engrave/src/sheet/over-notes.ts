/** What stands over and beside the notes of an exercise: its number and its name. */
import { exerciseLabel } from '@shedbook/core';
import { CAP_HEIGHT, DESCENT } from '../text/fonts.ts';
import type { SheetContext } from './context.ts';
import { EXAMPLE_SIGN_MM, exampleSign } from './example-sign.ts';
import { howColumn } from './how-signs.ts';
import { ACCENT, allMoved, type Block, type Item } from './item.ts';
import type { LineSlot, PreparedExercise } from './prepare.ts';
import { setColumn, setLine, style } from './setting.ts';

const NAME_MM = 4.1;

/** Size of the exercise's number. */
export const NUMBER_MM = 6.6;

/** Between the number and the notes. */
export const GUTTER_GAP_MM = 2.4;

/** What stands over an exercise. */
export interface Captions extends Block {
  /** Height of a name that reaches over the lines beside it, else 0. */
  readonly reachingMm: number;
}

/** A name, over the lines beside it too where its own line is too short for it. */
function nameColumn({ fonts }: SheetContext, name: string, { beside }: LineSlot, widthMm: number): Captions {
  const set = (room: number) => setColumn(fonts, name, style('bold', NAME_MM), room, { maxLines: 2 });
  const own = set(widthMm);
  const wide = set(widthMm + (beside?.widthMm ?? 0));
  return wide.heightMm < own.heightMm ? { ...wide, reachingMm: wide.heightMm } : { ...own, reachingMm: 0 };
}

/** The name over the first line, and how the voices are played. */
export function captions(context: SheetContext, prepared: PreparedExercise, line: LineSlot): Captions {
  const widthMm = line.cellMm - line.gutterMm;
  if (line.from > 0) return { widthMm, heightMm: 0, items: [], reachingMm: 0 };
  const { name, how, parts } = prepared.exercise;
  const column = nameColumn(context, name ?? '', line, widthMm);
  const plays = parts.map((part) => part.voice);
  const played = howColumn(context, how, plays, widthMm);
  const items = [...column.items, ...allMoved(played.items, 0, column.heightMm)];
  return {
    widthMm,
    heightMm: column.heightMm + played.heightMm,
    items: allMoved(items, line.gutterMm, 0),
    reachingMm: column.reachingMm,
  };
}

/** Between the number's figures and the sign of an example under them, in millimetres. */
const SIGN_GAP_MM = 1.1;

/** How far the number of an exercise, and the sign of an example under it, reach below the middle of the figures. */
export function belowNumberMm({ exercise }: PreparedExercise): number {
  const figures = (CAP_HEIGHT / 2) * NUMBER_MM;
  return exercise.example ? figures + SIGN_GAP_MM + EXAMPLE_SIGN_MM.height : figures + DESCENT * NUMBER_MM;
}

/** The number, its figures centred on y, and under it the sign of an example. */
export function numberItem(
  context: SheetContext,
  prepared: PreparedExercise,
  line: LineSlot,
  y: number,
): readonly Item[] {
  if (line.from > 0) return [];
  const x = line.gutterMm - GUTTER_GAP_MM;
  const top = y + belowNumberMm(prepared) - EXAMPLE_SIGN_MM.height;
  const sign = prepared.exercise.example ? [exampleSign(Math.max(0, x - EXAMPLE_SIGN_MM.width), top)] : [];
  return [
    ...sign,
    setLine(context.fonts, exerciseLabel(prepared.exercise.number), style('bold', NUMBER_MM), {
      x,
      y: y + (CAP_HEIGHT * NUMBER_MM) / 2,
      align: 'right',
      colour: ACCENT,
      role: 'aside',
    }),
  ];
}
