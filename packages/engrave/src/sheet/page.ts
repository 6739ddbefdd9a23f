/** Pages: blocks set from the top margin down, a footer under them. */
import type { Box } from '../svg/geometry.ts';
import type { FlowBlock } from './context.ts';
import { allMoved, type Item } from './item.ts';
import { isRow, type PagePlan } from './paginate.ts';
import { movedLine, type PlacedLine } from './places.ts';

/**
 * Paper sizes in millimetres, and the white round the content: what printers cannot reach is less. A tablet has three
 * to four, and needs no white to hold it by.
 * @source ISO 216 (A4, A5), ANSI/ASME Y14.1 (Letter, 8.5 × 11 in)
 */
export const PAPER_MM = {
  A4: { widthMm: 210, heightMm: 297, marginMm: 12 },
  Letter: { widthMm: 215.9, heightMm: 279.4, marginMm: 12 },
  A5: { widthMm: 148, heightMm: 210, marginMm: 10 },
  tablet: { widthMm: 160, heightMm: 213, marginMm: 7 },
} as const;

/** Kept free above the lower margin for the footer. */
export const FOOTER_MM = 8;

/** Things on a page of paper. */
export interface PageContent {
  readonly widthMm: number;
  readonly heightMm: number;
  /** What nothing reaches over. */
  readonly margins: Box;
  readonly items: readonly Item[];
}

/** Blocks set on the pages that they were given to, and the lines of exercises on each. */
export function setPages(
  blocks: readonly FlowBlock[],
  pages: readonly PagePlan[],
  marginMm: number,
): { readonly pages: readonly (readonly Item[])[]; readonly lines: readonly (readonly PlacedLine[])[] } {
  const lines: (readonly PlacedLine[])[] = [];
  const set = pages.map((page) => {
    const placed: PlacedLine[] = [];
    lines.push(placed);
    let y = 0;
    return blocks.slice(page.from, page.to).flatMap((block, index) => {
      y += index === 0 ? 0 : block.gapMm + (isRow(block) ? page.spreadMm : 0);
      const top = marginMm + y;
      y += block.heightMm;
      placed.push(...(block.places ?? []).map((line) => movedLine(line, marginMm, top)));
      return allMoved(block.items, marginMm, top);
    });
  });
  return { pages: set, lines };
}
