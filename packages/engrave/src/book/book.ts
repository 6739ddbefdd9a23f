/**
 * Lessons as one book: title page, contents, key, the chapters, index; pages left blank where it is printed on both
 * sides.
 *
 * Conventions: millimetres from a page's upper left corner; pages of a book count from 1, the title page among them, so
 * that odd ones lie on the right. The line that stands at the foot of a lesson's pages stands at the head of a book's.
 */
import { type Lesson, type Paper, sectionsOf } from '@shedbook/core';
import type { OutlineEntry } from '../pdf/write-pdf.ts';
import type { FlowBlock, SheetContext } from '../sheet/context.ts';
import { layOutHeader } from '../sheet/header.ts';
import { apartWhereFree } from '../sheet/headings.ts';
import { allMoved, type Item } from '../sheet/item.ts';
import { layOutLegend } from '../sheet/legend.ts';
import { FOOTER_MM, PAPER_MM, type PageContent, setPages } from '../sheet/page.ts';
import { paginate } from '../sheet/paginate.ts';
import type { PrintedMedia } from '../sheet/printed-media.ts';
import { layOutProse } from '../sheet/prose-blocks.ts';
import { layOutSections } from '../sheet/section-blocks.ts';
import { contextOf, type SheetOptions } from '../sheet/sheet.ts';
import { runningHead, titlePage } from './front.ts';
import { type ContentsEntry, type IndexedLesson, layOutContents, layOutIndex, listHeading } from './lists.ts';

/** What a book is made of. */
export interface BookContent {
  readonly title: string;
  readonly by: string | null;
  /** What is said before it begins, in small Markdown, or null. */
  readonly text: string | null;
  /** The chapters, each a lesson under its title; one at least. */
  readonly lessons: readonly Lesson[];
  /** What is printed for the files that a chapter shows; their names where left out. */
  readonly mediaOf?: (lesson: Lesson) => PrintedMedia;
  readonly paper: Paper;
  /** Whether chapters begin on right-hand pages. */
  readonly twoSided: boolean;
  readonly contents: boolean;
  readonly key: boolean;
  readonly index: boolean;
}

/** The pages of a book. */
export interface BookPages {
  readonly pages: readonly PageContent[];
  readonly outline: readonly OutlineEntry[];
}

/** Pages that follow each other without a break, as yet without numbers. */
interface Run {
  /** What its pages say at their head; null for none. */
  readonly head: string | null;
  /** What each page has, from the corner of what may be printed on. */
  readonly pages: readonly (readonly Item[])[];
  /** Whether it begins on a right-hand page. */
  readonly isRight: boolean;
}

/** A chapter with the places of its sections and exercises, in pages of its own from 0. */
interface LaidChapter extends Run {
  readonly lesson: Lesson;
  readonly sections: readonly { readonly title: string; readonly place: number }[];
  readonly exercises: ReadonlyMap<number, number>;
}

function run(context: SheetContext, blocks: readonly FlowBlock[]) {
  const plan = paginate(blocks, { heightMm: context.contentHeightMm, perPage: null }) ?? [];
  return { plan, ...setPages(blocks, plan, 0) };
}

function flowOf(lesson: Lesson, bookBy: string | null, options: SheetOptions, blocksApart: boolean) {
  const contexts = sectionsOf(lesson).map((section, index) =>
    contextOf(section, options, { whole: lesson, index, blocksApart }),
  );
  const context = contexts[0] as SheetContext;
  const titled = {
    ...context,
    lesson: { ...context.lesson, title: lesson.title, by: lesson.by === bookBy ? null : lesson.by },
  };
  const blocks = [layOutHeader(titled, null), ...layOutSections(contexts, lesson)];
  return { blocks, ...run(context, blocks) };
}

/** A chapter; who wrote it is said where it is not whoever wrote the book. */
function layOutChapter(lesson: Lesson, bookBy: string | null, options: SheetOptions): LaidChapter {
  const { blocks, plan, pages, lines } = apartWhereFree(
    lesson,
    (blocksApart) => flowOf(lesson, bookBy, options, blocksApart),
    (flow) => flow.plan.length,
  );
  const sections = blocks.flatMap(({ mark }, at) => {
    if (mark === undefined) return [];
    return [{ title: mark, place: plan.findIndex(({ from, to }) => at >= from && at < to) }];
  });
  const starts = lines.flatMap((each, page) =>
    each.filter(({ opens }) => opens).map(({ exercise }) => [exercise, page] as const),
  );
  const exercises = new Map(starts);
  return { lesson, head: lesson.title, pages, isRight: true, sections, exercises };
}

/** Runs one after another; each is told how many pages come before it. */
function numbered<T extends Run>(runs: readonly T[], twoSided: boolean, before: number) {
  let next = before;
  return runs.map((each) => {
    if (twoSided && each.isRight && next % 2 === 1) next += 1;
    const start = next;
    next += each.pages.length;
    return { run: each, start, end: next };
  });
}

function keyRun(contexts: readonly SheetContext[]): Run | null {
  const context = contexts[0] as SheetContext;
  const rows = layOutLegend(
    contexts.map((each) => ({ ...each, settings: { ...each.settings, legend: true } })),
  );
  if (rows.length === 0) return null;
  const { pages } = run(context, [listHeading(context, context.words.keyToNotation), ...rows]);
  return { head: context.words.keyToNotation, pages, isRight: false };
}

/** What lies before the chapters: the contents for given pages, so many pages whatever they are. */
function frontRuns(
  context: SheetContext,
  { title, by, text, contents }: BookContent,
  key: Run | null,
  entries: readonly ContentsEntry[],
): readonly Run[] {
  const said = layOutProse(context, text);
  const list = contents ? layOutContents(context, entries) : [];
  const blocks = [...said, ...list];
  return [
    { head: null, pages: [titlePage(context, title, by)], isRight: true },
    ...(blocks.length > 0
      ? [{ head: context.words.contents, pages: run(context, blocks).pages, isRight: true }]
      : []),
    ...(key ? [key] : []),
  ];
}

function contentsOf(chapters: readonly { readonly run: LaidChapter; readonly start: number }[]) {
  return chapters.map(({ run: { lesson, sections }, start }): ContentsEntry => {
    const inside = sections.map(({ title, place }) => ({ title, page: start + place + 1 }));
    return { title: lesson.title, page: start + 1, sections: inside };
  });
}

/** All pages of the book, with the blank ones between its runs. */
function bind(
  context: SheetContext,
  { title, twoSided, paper }: BookContent,
  runs: readonly { readonly run: Run; readonly start: number }[],
): readonly PageContent[] {
  const { widthMm, heightMm, marginMm } = PAPER_MM[paper];
  const margins = {
    ...{ x: marginMm, y: marginMm },
    ...{ width: widthMm - 2 * marginMm, height: heightMm - 2 * marginMm },
  };
  const last = runs.at(-1);
  const used = (last?.start ?? 0) + (last?.run.pages.length ?? 0);
  const all = twoSided ? used + (used % 2) : used;
  return Array.from({ length: all }, (_, index): PageContent => {
    const own = runs.find(({ run: { pages }, start }) => index >= start && index < start + pages.length);
    const items = own?.run.pages[index - own.start] ?? [];
    const isLeft = twoSided && index % 2 === 1;
    const head = own?.run.head ?? null;
    const running =
      head === null ? [] : runningHead(context, { page: index + 1, text: isLeft ? title : head, isLeft });
    const moved = [
      ...allMoved(running, marginMm, marginMm),
      ...allMoved(items, marginMm, marginMm + FOOTER_MM),
    ];
    return { widthMm, heightMm, margins, items: moved };
  });
}

/** Lays a book out on pages. */
export function layOutBook(book: BookContent, given: SheetOptions): BookPages {
  const { lessons, twoSided } = book;
  const options = { ...given, paper: book.paper, legend: false };
  const contexts = lessons.flatMap((lesson) =>
    sectionsOf(lesson).map((section) => contextOf(section, options)),
  );
  const context = contexts[0] as SheetContext;
  const key = book.key ? keyRun(contexts) : null;
  const laid = lessons.map((lesson) => {
    const media = book.mediaOf?.(lesson);
    return layOutChapter(lesson, book.by, media ? { ...options, media } : options);
  });
  const blank = laid.map((each) => ({ run: each, start: 0 }));
  const counted = numbered(frontRuns(context, book, key, contentsOf(blank)), twoSided, 0);
  const chapters = numbered(laid, twoSided, counted.at(-1)?.end ?? 0);
  const entries = contentsOf(chapters);
  const front = numbered(frontRuns(context, book, key, entries), twoSided, 0);
  const indexed = chapters.map(({ run: { lesson, exercises }, start }): IndexedLesson => {
    const pageOf = new Map([...exercises].map(([number, page]) => [number, start + page + 1]));
    return { lesson, pageOf };
  });
  const index = book.index ? run(context, layOutIndex(context, indexed)).pages : [];
  const back: readonly Run[] =
    index.length > 0 ? [{ head: context.words.index, pages: index, isRight: true }] : [];
  const last = numbered(back, twoSided, chapters.at(-1)?.end ?? 0);
  const outline = [
    ...front.slice(1).map(({ run: { head }, start }) => ({ title: head ?? '', page: start, inside: [] })),
    ...entries.map(({ title, page, sections }) => {
      const inside = sections.map((each) => ({ title: each.title, page: each.page - 1, inside: [] }));
      return { title, page: page - 1, inside };
    }),
    ...last.map(({ start }) => ({ title: context.words.index, page: start, inside: [] })),
  ];
  return { pages: bind(context, book, [...front, ...chapters, ...last]), outline };
}
