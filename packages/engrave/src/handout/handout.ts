/**
 * A handout: headings and lines of text on paper, for people who read no notation.
 *
 * Conventions: millimetres from a page's upper left corner; a line may have something at its right end, and something
 * smaller under it.
 */
import type { Paper } from '@shedbook/core';
import type { FlowBlock } from '../sheet/context.ts';
import { ACCENT, allMoved, INK, type Item } from '../sheet/item.ts';
import { FOOTER_MM, PAPER_MM, type PageContent, setPages } from '../sheet/page.ts';
import { paginate } from '../sheet/paginate.ts';
import { setColumn, setLine, style } from '../sheet/setting.ts';
import { DESCENT, type Fonts } from '../text/fonts.ts';

/** A line. */
export interface HandoutLine {
  readonly text: string;
  /** What stands at its right end; nothing where left out. */
  readonly right?: string;
  /** What is said under it; nothing where left out. */
  readonly under?: string;
}

/** A heading and what stands under it. */
export interface HandoutPart {
  readonly heading: string;
  readonly lines: readonly HandoutLine[];
}

/** What a handout says. */
export interface Handout {
  readonly title: string;
  readonly lead: string;
  readonly parts: readonly HandoutPart[];
  /** Small print at its end. */
  readonly foot: readonly string[];
}

/** What it is laid out with. */
export interface HandoutOptions {
  readonly fonts: Fonts;
  readonly paper: Paper;
}

interface Room extends HandoutOptions {
  readonly widthMm: number;
}

const TITLE_MM = 9;
const HEADING_MM = 5.6;
const LINE_MM = 4.2;
const SMALL_MM = 3.4;
const GAP_MM = 6;

/** The least share of the width that the text of a line has beside what stands at its right end. */
const LEFT_SHARE = 0.35;

function titleBlock({ fonts, widthMm }: Room, { title, lead }: Handout): FlowBlock {
  const name = setColumn(fonts, title, style('bold', TITLE_MM), widthMm, { role: 'H1' });
  const rule = name.heightMm + 1.6;
  const said = setColumn(fonts, lead, style('italic', LINE_MM), widthMm);
  return {
    gapMm: 0,
    heightMm: rule + 2.6 + said.heightMm,
    items: [
      ...name.items,
      { kind: 'line', x: 0, y: rule, x2: 24, y2: rule, strokeMm: 1.2, colour: ACCENT },
      ...allMoved(said.items, 0, rule + 2.6),
    ],
  };
}

function headingBlock({ fonts, widthMm }: Room, heading: string): FlowBlock {
  const { items, heightMm } = setColumn(fonts, heading, style('bold', HEADING_MM), widthMm, { role: 'H2' });
  return { gapMm: 8, heightMm: heightMm + 0.6, items, keepsNext: true };
}

function lineBlock({ fonts, widthMm }: Room, { text, right = '', under = '' }: HandoutLine): FlowBlock {
  const set = style('regular', LINE_MM);
  const beside = setColumn(fonts, right, set, widthMm * (1 - LEFT_SHARE) - GAP_MM);
  const end =
    right === '' ? 0 : Math.max(...beside.items.map((each) => ('widthMm' in each ? each.widthMm : 0)));
  const said = setColumn(fonts, text, set, widthMm - (end === 0 ? 0 : end + GAP_MM));
  const rows = Math.max(said.heightMm, beside.heightMm);
  const below = setColumn(fonts, under, style('italic', SMALL_MM), widthMm);
  const foot = rows + 0.9 + (under === '' ? 0 : below.heightMm + 0.4);
  return {
    gapMm: 1.5,
    heightMm: foot,
    items: [
      ...said.items,
      ...allMoved(beside.items, widthMm - end, 0),
      ...allMoved(below.items, 0, rows + 0.6),
      { kind: 'line', x: 0, y: foot, x2: widthMm, y2: foot, strokeMm: 0.1, colour: INK },
    ],
  };
}

function footBlock({ fonts, widthMm }: Room, text: string, index: number): FlowBlock {
  const { items, heightMm } = setColumn(fonts, text, style('italic', SMALL_MM), widthMm);
  return { gapMm: index === 0 ? 9 : 1.4, heightMm, items };
}

/** The number of a page, where there are several. */
function pageNumber({ fonts, widthMm }: Room, heightMm: number, index: number, all: number): readonly Item[] {
  if (all === 1) return [];
  const at = {
    x: widthMm,
    y: heightMm + FOOTER_MM - DESCENT * SMALL_MM,
    align: 'right',
    role: 'aside',
  } as const;
  return [setLine(fonts, `${index + 1} / ${all}`, style('regular', SMALL_MM), at)];
}

/** Lays a handout out on pages. */
export function layOutHandout(handout: Handout, options: HandoutOptions): readonly PageContent[] {
  const { widthMm, heightMm, marginMm } = PAPER_MM[options.paper];
  const margins = {
    ...{ x: marginMm, y: marginMm },
    ...{ width: widthMm - 2 * marginMm, height: heightMm - 2 * marginMm },
  };
  const room = { ...options, widthMm: margins.width };
  const contentMm = margins.height - FOOTER_MM;
  const blocks = [
    titleBlock(room, handout),
    ...handout.parts.flatMap(({ heading, lines }) => [
      headingBlock(room, heading),
      ...lines.map((line) => lineBlock(room, line)),
    ]),
    ...handout.foot.map((text, index) => footBlock(room, text, index)),
  ];
  const plan = paginate(blocks, { heightMm: contentMm, perPage: null }) ?? [];
  const { pages } = setPages(blocks, plan, marginMm);
  return pages.map((items, index): PageContent => {
    const number = allMoved(pageNumber(room, contentMm, index, pages.length), marginMm, marginMm);
    return { widthMm, heightMm, margins, items: [...items, ...number] };
  });
}
