/**
 * What a book tells of itself in lists: the contents, and an index by voice and rhythm.
 *
 * Conventions: millimetres; pages of a book count from 1, as they are printed.
 */
import { type Lesson, sectionOf, VOICES } from '@shedbook/core';
import type { FlowBlock, SheetContext } from '../sheet/context.ts';
import type { Item } from '../sheet/item.ts';
import { RHYTHMS, rhythmOf } from '../sheet/rhythm.ts';
import { LEADING, setColumn, setLine, style } from '../sheet/setting.ts';
import { ASCENT, DESCENT } from '../text/fonts.ts';
import { wrapText } from '../text/wrap.ts';

const LINE_MM = 4.6;
const HEADING_MM = 8;
const INDENT_MM = 8;
const NUMBER_GAP_MM = 3;
const DOT_MM = 2.4;

/** A heading over a list. */
export function listHeading({ fonts, contentWidthMm }: SheetContext, text: string): FlowBlock {
  const column = setColumn(fonts, text, style('bold', HEADING_MM), contentWidthMm, { role: 'H1' });
  return { gapMm: 12, heightMm: column.heightMm + 3, items: column.items, keepsNext: true };
}

/** A line of a list: what it is, dots, and the pages. */
interface ListLine {
  readonly text: string;
  /** Pages as they are printed. */
  readonly pages: string;
  /** 0 for what stands out, 1 for what lies in it. */
  readonly depth: 0 | 1;
}

function lineBlock({ fonts, contentWidthMm }: SheetContext, { text, pages, depth }: ListLine): FlowBlock {
  const set = style(depth === 0 ? 'bold' : 'regular', LINE_MM);
  const y = ASCENT * LINE_MM;
  const left = depth * INDENT_MM;
  const right = setLine(fonts, pages, style('regular', LINE_MM), { x: contentWidthMm, y, align: 'right' });
  const room = contentWidthMm - left - right.widthMm - 4 * NUMBER_GAP_MM;
  const [shown = ''] = wrapText(fonts, text, set, room, 1);
  const name = setLine(fonts, shown, set, { x: left, y });
  const from = left + name.widthMm + NUMBER_GAP_MM;
  const dots = pages === '' ? 0 : Math.floor((right.x - NUMBER_GAP_MM - from) / DOT_MM);
  const leaders = Array.from({ length: Math.max(0, dots) }, (_, index): Item => {
    const x = right.x - NUMBER_GAP_MM - index * DOT_MM;
    return setLine(fonts, '.', style('regular', LINE_MM), { x, y, align: 'right', role: 'aside' });
  });
  return {
    gapMm: depth === 0 ? 3.2 : (LEADING - ASCENT - DESCENT) * LINE_MM + 0.6,
    heightMm: (ASCENT + DESCENT) * LINE_MM,
    items: pages === '' ? [name] : [name, ...leaders, right],
    keepsNext: depth === 0 && pages === '',
  };
}

/** A chapter and its sections with the pages that they begin on. */
export interface ContentsEntry {
  readonly title: string;
  /** Number of its page, from 1. */
  readonly page: number;
  readonly sections: readonly {
    readonly title: string;
    /** Number of its page, from 1. */
    readonly page: number;
  }[];
}

/** The table of contents. */
export function layOutContents(
  context: SheetContext,
  entries: readonly ContentsEntry[],
): readonly FlowBlock[] {
  const lines = entries.flatMap(({ title, page, sections }): readonly ListLine[] => [
    { text: title, pages: `${page}`, depth: 0 },
    ...sections.map((each): ListLine => ({ text: each.title, pages: `${each.page}`, depth: 1 })),
  ]);
  return [listHeading(context, context.words.contents), ...lines.map((line) => lineBlock(context, line))];
}

/** Pages as a list, those after one another as a range. */
function pageList(pages: readonly number[]): string {
  const ranges: [number, number][] = [];
  for (const page of [...new Set(pages)].toSorted((a, b) => a - b)) {
    const last = ranges.at(-1);
    if (last && page === last[1] + 1) last[1] = page;
    else ranges.push([page, page]);
  }
  return ranges.map(([from, to]) => (from === to ? `${from}` : `${from}–${to}`)).join(', ');
}

/** A lesson of the book, and the page (from 1) that each of its exercises begins on. */
export interface IndexedLesson {
  readonly lesson: Lesson;
  /** Numbers of pages by numbers of exercises. */
  readonly pageOf: ReadonlyMap<number, number>;
}

/** The index: each voice of an exercise, and under it its rhythms with their pages. */
export function layOutIndex(context: SheetContext, lessons: readonly IndexedLesson[]): readonly FlowBlock[] {
  const found = lessons.flatMap(({ lesson, pageOf }) =>
    lesson.exercises.flatMap((exercise) => {
      const { meter } = sectionOf(lesson, exercise.number);
      const page = pageOf.get(exercise.number);
      if (page === undefined) return [];
      return exercise.parts.map((part) => ({ voice: part.voice, rhythm: rhythmOf(meter, part), page }));
    }),
  );
  const { words } = context;
  const lines = VOICES.flatMap((voice): readonly ListLine[] => {
    const own = found.filter((each) => each.voice === voice);
    if (own.length === 0) return [];
    const rhythms = RHYTHMS.flatMap((rhythm): readonly ListLine[] => {
      const pages = own.filter((each) => each.rhythm === rhythm).map(({ page }) => page);
      return pages.length === 0 ? [] : [{ text: words.rhythms[rhythm], pages: pageList(pages), depth: 1 }];
    });
    return [{ text: words.voices[voice], pages: '', depth: 0 }, ...rhythms];
  });
  return [listHeading(context, words.index), ...lines.map((line) => lineBlock(context, line))];
}
