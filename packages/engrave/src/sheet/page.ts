/** Pages: blocks flowed from the top margin down, a footer on each. */
import type { Box } from '../svg/geometry.ts';
import type { FlowBlock } from './context.ts';
import { allMoved, type Item } from './item.ts';
import { movedPlace, type PagedPlace } from './places.ts';

/** Paper sizes in millimetres. @source ISO 216 (A4), ANSI/ASME Y14.1 (Letter, 8.5 × 11 in) */
export const PAPER_MM = {
  A4: { widthMm: 210, heightMm: 297 },
  Letter: { widthMm: 215.9, heightMm: 279.4 },
} as const;

/** White round the content, in millimetres; what printers cannot reach is less. */
export const MARGIN_MM = 12;

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

interface Filling {
  items: Item[];
  y: number;
}

/** Height of a block with those that it has to stand above; its own where all of them fill more than a page. */
function togetherMm(blocks: readonly FlowBlock[], index: number, pageMm: number): number {
  const own = blocks[index]?.heightMm ?? 0;
  let all = own;
  for (let i = index; blocks[i]?.keepsNext && blocks[i + 1]; i += 1) {
    const next = blocks[i + 1] as FlowBlock;
    all += next.gapMm + next.heightMm;
  }
  return all > pageMm ? own : all;
}

/** Blocks on as many pages as they need. */
export function flow(
  blocks: readonly FlowBlock[],
  heightMm: number,
): { readonly pages: readonly (readonly Item[])[]; readonly places: readonly PagedPlace[] } {
  const pages: Filling[] = [{ items: [], y: 0 }];
  const places: PagedPlace[] = [];
  for (const [index, block] of blocks.entries()) {
    let page = pages.at(-1) as Filling;
    if (page.y > 0 && page.y + block.gapMm + togetherMm(blocks, index, heightMm) > heightMm) {
      page = { items: [], y: 0 };
      pages.push(page);
    }
    const y = page.y + (page.y > 0 ? block.gapMm : 0);
    page.items.push(...allMoved(block.items, MARGIN_MM, MARGIN_MM + y));
    for (const place of block.places ?? []) {
      places.push({ ...movedPlace(place, MARGIN_MM, MARGIN_MM + y), page: pages.length - 1 });
    }
    page.y = y + block.heightMm;
  }
  return { pages: pages.map((page) => page.items), places };
}
