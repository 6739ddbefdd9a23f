/** The title page of a book, and the head that runs over its other pages. */
import type { SheetContext } from '../sheet/context.ts';
import { ACCENT, allMoved, INK, type Item } from '../sheet/item.ts';
import { setColumn, setLine, style } from '../sheet/setting.ts';
import { ASCENT } from '../text/fonts.ts';
import { wrapText } from '../text/wrap.ts';

const TITLE_MM = 15;
const BY_MM = 6;
const HEAD_MM = 3.4;

/** Where the title stands: a third of the page down. */
const TITLE_SHARE = 0.3;

/** The title page, from the upper left corner of what may be printed on. */
export function titlePage(context: SheetContext, title: string, by: string | null): readonly Item[] {
  const { fonts, contentWidthMm, contentHeightMm } = context;
  const name = setColumn(fonts, title, style('bold', TITLE_MM), contentWidthMm, { maxLines: 4, role: 'H1' });
  const top = contentHeightMm * TITLE_SHARE;
  const rule = top + name.heightMm + 4;
  const author = by === null ? [] : setColumn(fonts, by, style('italic', BY_MM), contentWidthMm).items;
  return [
    ...allMoved(name.items, 0, top),
    { kind: 'line', x: 0, y: rule, x2: 34, y2: rule, strokeMm: 1.8, colour: ACCENT },
    ...allMoved(author, 0, rule + 6),
  ];
}

/** What a running head says. */
export interface RunningHead {
  /** Number of the page, from 1. */
  readonly page: number;
  readonly text: string;
  /** Whether the number stands at the left, as on a left-hand page. */
  readonly isLeft: boolean;
}

/** The line over a page: its number on the outer side, and where one is. */
export function runningHead({ fonts, contentWidthMm }: SheetContext, head: RunningHead): readonly Item[] {
  const y = ASCENT * HEAD_MM;
  const [left, right] = [{ x: 0 } as const, { x: contentWidthMm, align: 'right' } as const];
  const number = setLine(fonts, `${head.page}`, style('bold', HEAD_MM), {
    ...(head.isLeft ? left : right),
    y,
    role: 'aside',
  });
  const size = style('italic', HEAD_MM);
  const [shown = ''] = wrapText(fonts, head.text, size, contentWidthMm - number.widthMm - 8, 1);
  const text = setLine(fonts, shown, size, { ...(head.isLeft ? right : left), y, role: 'aside' });
  const line = y + 1.6;
  return [
    number,
    text,
    { kind: 'line', x: 0, y: line, x2: contentWidthMm, y2: line, strokeMm: 0.2, colour: INK },
  ];
}
