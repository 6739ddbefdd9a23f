/**
 * A lesson as pages.
 *
 * Conventions: millimetres from a page's upper left corner; pages count from 0, all else from 1.
 */
import { type Form, type Lesson, type SheetSettings, sectionsOf } from '@shedbook/core';
import { readSvg } from '../svg/read-svg.ts';
import type { Fonts } from '../text/fonts.ts';
import type { Engraver } from '../tile/engraver.ts';
import type { SheetContext } from './context.ts';
import { layOutFooter, layOutHeader } from './header.ts';
import { allMoved } from './item.ts';
import { FOOTER_MM, flow, MARGIN_MM, PAPER_MM, type PageContent } from './page.ts';
import type { PagedPlace } from './places.ts';
import { layOutSections } from './section-blocks.ts';
import type { SheetWords } from './sheet-words.ts';
import { writeSvg } from './write-svg.ts';

/** What a sheet is made with; settings left out are the lesson's own. */
export interface SheetOptions extends Partial<SheetSettings> {
  readonly engraver: Engraver;
  readonly fonts: Fonts;
  readonly words: SheetWords;
  /** Forms to explain; those of the lesson that play the pattern where left out. */
  readonly forms?: readonly Form[];
  /** Texts of the page SVGs as outlines, for viewers without the fonts; text when left out. */
  readonly outlineText?: boolean;
  /** An SVG of paths and basic shapes, e.g. a code to scan, for the corner of the first page. */
  readonly codeSvg?: string;
}

/** One page: what is on it, and the same as SVG. */
export interface Page extends PageContent {
  readonly svg: string;
}

/** The pages of a lesson. */
export interface Sheet {
  readonly title: string;
  readonly by: string | null;
  readonly pages: readonly Page[];
  /** Where every slot of every exercise stands. */
  readonly places: readonly PagedPlace[];
  /** Characters that no font has: they print as an empty box. */
  readonly missingCharacters: readonly string[];
}

/** Distance between staff lines at scale 1: a five-line staff is 7.6 mm high. */
const STAFF_SPACE_MM = { compact: 2, full: 1.75 } as const;

function settingsOf(lesson: Lesson, options: SheetOptions): SheetSettings {
  const own = lesson.sheet;
  return {
    paper: options.paper ?? own.paper,
    counts: options.counts ?? own.counts,
    stickings: options.stickings ?? own.stickings,
    legend: options.legend ?? own.legend,
    tickBoxes: options.tickBoxes ?? own.tickBoxes,
    staff: options.staff ?? own.staff,
    scale: options.scale ?? own.scale,
  };
}

function playsPattern(form: Form): boolean {
  return form.sections.some((section) => section.play === 'pattern');
}

/** What a section of a lesson is laid out with. @param index of the section, from 0 */
export function contextOf(
  lesson: Lesson,
  options: SheetOptions,
  { whole, index }: { readonly whole: Lesson; readonly index: number } = { whole: lesson, index: 0 },
): SheetContext {
  const settings = settingsOf(lesson, options);
  const paper = PAPER_MM[settings.paper];
  return {
    lesson,
    prefix: index === 0 ? '' : `section-${index + 1}-`,
    numbers: whole.exercises.map(({ number }) => number),
    engraver: options.engraver,
    fonts: options.fonts,
    words: options.words,
    settings,
    forms: options.forms ?? lesson.forms.filter(playsPattern),
    staffSpaceMm: STAFF_SPACE_MM[settings.staff] * settings.scale,
    contentWidthMm: paper.widthMm - 2 * MARGIN_MM,
    contentHeightMm: paper.heightMm - 2 * MARGIN_MM - FOOTER_MM,
  };
}

function textsOf(lesson: Lesson): readonly string[] {
  const named = [
    ...lesson.exercises.flatMap((each) => [each.name, each.notes]),
    ...sectionsOf(lesson).flatMap(({ forms, heading, text }) => [
      ...forms.map((form) => form.name),
      heading,
      text,
    ]),
  ];
  return [lesson.title, lesson.by, lesson.text, ...named].flatMap((text) => text ?? []);
}

/** A page whose SVG is written when it is asked for. */
function pageOf(content: PageContent, title: string, outlines: Fonts | null): Page {
  let svg: string | null = null;
  return {
    ...content,
    get svg() {
      svg ??= writeSvg(content, title, outlines);
      return svg;
    },
  };
}

/**
 * Lays a lesson out on pages.
 * @returns the pages, and where every slot of every exercise stands on them.
 * @throws RangeError when `codeSvg` is not a drawing of paths and basic shapes.
 */
export function layOutSheet(lesson: Lesson, options: SheetOptions): Sheet {
  const contexts = sectionsOf(lesson).map((section, index) =>
    contextOf(section, options, { whole: lesson, index }),
  );
  const context = contexts[0] as SheetContext;
  const { widthMm, heightMm } = PAPER_MM[context.settings.paper];
  const { pages, places } = flow(
    [
      layOutHeader(context, options.codeSvg === undefined ? null : readSvg(options.codeSvg)),
      ...layOutSections(contexts, lesson.text),
    ],
    context.contentHeightMm,
  );
  const margins = {
    x: MARGIN_MM,
    y: MARGIN_MM,
    width: widthMm - 2 * MARGIN_MM,
    height: heightMm - 2 * MARGIN_MM,
  };
  const whole = pages.map((items, index) => {
    const footer = layOutFooter(context, index + 1, pages.length);
    const foot = allMoved(footer.items, MARGIN_MM, heightMm - MARGIN_MM - footer.heightMm);
    return pageOf(
      { widthMm, heightMm, margins, items: [...items, ...foot] },
      options.words.page({ title: lesson.title, page: index + 1, pages: pages.length }),
      options.outlineText ? options.fonts : null,
    );
  });
  const missing = new Set(textsOf(lesson).flatMap((text) => options.fonts.missing(text)));
  return { title: lesson.title, by: lesson.by, pages: whole, places, missingCharacters: [...missing] };
}
