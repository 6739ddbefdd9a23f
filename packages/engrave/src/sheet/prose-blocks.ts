/** What a teacher writes, on paper: paragraphs and lists, line by line, and pictures, so that a page may end between lines. */
import { type ProseBlock, type ProseRun, readProse } from '@shedbook/core';
import { ASCENT, DESCENT } from '../text/fonts.ts';
import { type StyledText, wrapRuns } from '../text/wrap-runs.ts';
import type { FlowBlock, SheetContext } from './context.ts';
import { ACCENT, INK, type Item } from './item.ts';
import { layOutMedia } from './media-blocks.ts';
import { LEADING, setLine, style } from './setting.ts';

const SIZE_MM = 4.2;

/** Longer lines are hard to read on: about ninety letters. */
const MOST_WIDTH_MM = 158;

const INDENT_MM = 6;
const FIRST_GAP_MM = 2.2;
const PARAGRAPH_GAP_MM = 1.9;
const ITEM_GAP_MM = 0.7;

/** An address without what every address has. */
function shown(link: string): string {
  return link.replace(/^https?:\/\/(?:www\.)?/, '').replace(/\/$/, '');
}

/** A run in its cut; a link with its address behind it, since paper cannot be pressed. */
function styled({ text, strong, emphasis, link }: ProseRun): readonly StyledText[] {
  const set = style(strong ? 'bold' : emphasis ? 'italic' : 'regular', SIZE_MM);
  const said = { text, style: set };
  if (link === null || shown(link) === shown(text)) return [said];
  return [said, { text: ` (${shown(link)})`, style: set }];
}

function lineBlock({ fonts }: SheetContext, line: readonly StyledText[], xMm: number): FlowBlock {
  const items: Item[] = [];
  let x = xMm;
  for (const piece of line) {
    const item = setLine(fonts, piece.text, piece.style, { x, y: ASCENT * SIZE_MM, colour: INK });
    items.push(item);
    x += item.widthMm;
  }
  return { gapMm: (LEADING - ASCENT - DESCENT) * SIZE_MM, heightMm: (ASCENT + DESCENT) * SIZE_MM, items };
}

/**
 * Whether a line stands on the page of the next one: no line of a paragraph is alone at the foot or the head of a page.
 * Source: common practice of setting text.
 */
function isHeld(line: number, lines: number): boolean {
  return line < lines - 1 && (line === 0 || line === lines - 2);
}

/** The lines of runs in a column that begins at `xMm`, the first `gapMm` under what stands above. */
function column(
  context: SheetContext,
  runs: readonly ProseRun[],
  { xMm, gapMm }: { readonly xMm: number; readonly gapMm: number },
): readonly FlowBlock[] {
  const widthMm = Math.min(MOST_WIDTH_MM, context.contentWidthMm) - xMm;
  const lines = wrapRuns(context.fonts, runs.flatMap(styled), widthMm);
  return lines.map((line, index) => {
    const block = { ...lineBlock(context, line, xMm), keepsNext: isHeld(index, lines.length) };
    return index === 0 ? { ...block, gapMm } : block;
  });
}

/** A list item: its sign hangs before its lines. */
function item(
  context: SheetContext,
  runs: readonly ProseRun[],
  sign: string,
  gapMm: number,
): readonly FlowBlock[] {
  const [first, ...others] = column(context, runs, { xMm: INDENT_MM, gapMm });
  if (!first) return [];
  const mark = setLine(context.fonts, sign, style('bold', SIZE_MM), {
    x: INDENT_MM - 1.8,
    y: ASCENT * SIZE_MM,
    align: 'right',
    colour: ACCENT,
  });
  return [{ ...first, items: [mark, ...first.items] }, ...others];
}

function blockOf(context: SheetContext, block: ProseBlock, gapMm: number): readonly FlowBlock[] {
  if (block.kind === 'medium') return layOutMedia(context, [block.medium]);
  if (block.kind === 'paragraph') return column(context, block.runs, { xMm: 0, gapMm });
  return block.items.flatMap((runs, index) =>
    item(context, runs, block.isNumbered ? `${index + 1}.` : '•', index === 0 ? gapMm : ITEM_GAP_MM),
  );
}

/** A text as blocks of the page's flow; none where there is no text. */
export function layOutProse(context: SheetContext, text: string | null): readonly FlowBlock[] {
  return readProse(text ?? '').flatMap((block, index) =>
    blockOf(context, block, index === 0 ? FIRST_GAP_MM : PARAGRAPH_GAP_MM),
  );
}
