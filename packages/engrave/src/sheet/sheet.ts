/**
 * A lesson as pages.
 *
 * Conventions: millimetres from a page's upper left corner; pages count from 0, all else from 1.
 */
import {
  type Form,
  type HowByVoice,
  howEntries,
  isBuiltInForm,
  type Lesson,
  type SheetSettings,
  sectionsOf,
} from '@shedbook/core';
import { readSvg } from '../svg/read-svg.ts';
import type { Fonts } from '../text/fonts.ts';
import type { Engraver } from '../tile/engraver.ts';
import type { SheetContext } from './context.ts';
import { layOutFooter, layOutHeader } from './header.ts';
import { apartWhereFree } from './headings.ts';
import { allMoved } from './item.ts';
import { FOOTER_MM, PAPER_MM, type PageContent, setPages } from './page.ts';
import { paginate } from './paginate.ts';
import { type PagedPlace, placeOf } from './places.ts';
import type { PrintedMedia } from './printed-media.ts';
import { layOutSections } from './section-blocks.ts';
import type { SheetWords } from './sheet-words.ts';
import { writeSvg } from './write-svg.ts';

/** What a sheet is made with; settings left out are the lesson's own. */
export interface SheetOptions extends Partial<SheetSettings> {
  readonly engraver: Engraver;
  readonly fonts: Fonts;
  readonly words: SheetWords;
  /** Forms to explain; those that the teacher wrote and that play the pattern where left out. */
  readonly forms?: readonly Form[];
  /** Texts of the page SVGs as outlines, for viewers without the fonts; text when left out. */
  readonly outlineText?: boolean;
  /** What is printed for the files that the lesson shows; their names where left out. */
  readonly media?: PrintedMedia;
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
  /** The language that it is printed in, as BCP 47 names it. */
  readonly language: string;
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
    numbering: own.numbering,
    perPage: options.perPage ?? own.perPage,
  };
}

/** The forms to explain: what the teacher wrote, where it plays the exercise. What every lesson has needs no words. */
function formsOf(lesson: Lesson): readonly Form[] {
  return lesson.forms.filter(
    (form) => !isBuiltInForm(form, lesson) && form.sections.some((section) => section.play === 'pattern'),
  );
}

/** Where a section stands, and how it is laid out. */
interface Placing {
  readonly whole: Lesson;
  /** Of the section, from 0. */
  readonly index: number;
  /** Whether headings of exercises begin rows. */
  readonly blocksApart: boolean;
}

/** What a section of a lesson is laid out with. */
export function contextOf(
  lesson: Lesson,
  options: SheetOptions,
  { whole, index, blocksApart }: Placing = { whole: lesson, index: 0, blocksApart: false },
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
    media: options.media ?? new Map(),
    forms: options.forms ?? formsOf(lesson),
    staffSpaceMm: STAFF_SPACE_MM[settings.staff] * settings.scale,
    blocksApart,
    contentWidthMm: paper.widthMm - 2 * paper.marginMm,
    contentHeightMm: paper.heightMm - 2 * paper.marginMm - FOOTER_MM,
  };
}

function saidHow(how: HowByVoice = {}): readonly string[] {
  return howEntries(how).flatMap(([, words]) => words);
}

function textsOf(lesson: Lesson): readonly string[] {
  const named = [
    ...lesson.exercises.flatMap((each) => [each.name, each.notes, ...saidHow(each.how)]),
    ...sectionsOf(lesson).flatMap(({ forms, heading, text, how }) => [
      ...saidHow(how),
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

/** How much smaller notation becomes, step by step, until a page holds as many exercises as it should. */
const SMALLER = 0.94;
const SMALLEST_SCALE = 0.6;

/** A lesson in blocks, and the pages that they make; null where no page holds as many exercises as it should. */
function flowOf(lesson: Lesson, options: SheetOptions, blocksApart: boolean) {
  const contexts = sectionsOf(lesson).map((section, index) =>
    contextOf(section, options, { whole: lesson, index, blocksApart }),
  );
  const context = contexts[0] as SheetContext;
  const blocks = [
    layOutHeader(context, options.codeSvg === undefined ? null : readSvg(options.codeSvg)),
    ...layOutSections(contexts, lesson),
  ];
  const room = { heightMm: context.contentHeightMm, perPage: context.settings.perPage };
  return { context, blocks, room, pages: paginate(blocks, room) };
}

/** The pages at the scale that is asked, or at the largest under it that keeps the exercises of a page together. */
function planPages(lesson: Lesson, options: SheetOptions) {
  const { context, blocks, room, pages } = apartWhereFree(
    lesson,
    (blocksApart) => flowOf(lesson, options, blocksApart),
    (flow) => flow.pages?.length ?? null,
  );
  const { scale, paper } = context.settings;
  if (!pages && scale * SMALLER >= SMALLEST_SCALE)
    return planPages(lesson, { ...options, scale: scale * SMALLER });
  const plan = pages ?? paginate(blocks, { ...room, perPage: null }) ?? [];
  return { context, ...setPages(blocks, plan, PAPER_MM[paper].marginMm) };
}

/**
 * Lays a lesson out on pages.
 * @returns the pages, and where every slot of every exercise stands on them.
 * @throws RangeError when `codeSvg` is not a drawing of paths and basic shapes.
 */
export function layOutSheet(lesson: Lesson, options: SheetOptions): Sheet {
  const { context, pages, lines } = planPages(lesson, options);
  const { widthMm, heightMm, marginMm } = PAPER_MM[context.settings.paper];
  const margins = {
    x: marginMm,
    y: marginMm,
    width: widthMm - 2 * marginMm,
    height: heightMm - 2 * marginMm,
  };
  const whole = pages.map((items, index) => {
    const footer = layOutFooter(context, index + 1, pages.length);
    const foot = allMoved(footer.items, marginMm, heightMm - marginMm - footer.heightMm);
    return pageOf(
      { widthMm, heightMm, margins, items: [...items, ...foot] },
      options.words.page({ title: lesson.title, page: index + 1, pages: pages.length }),
      options.outlineText ? options.fonts : null,
    );
  });
  const missing = new Set(textsOf(lesson).flatMap((text) => options.fonts.missing(text)));
  const { title, by } = lesson;
  const { language } = options.words;
  let places: readonly PagedPlace[] | null = null;
  return {
    ...{ title, by, language, pages: whole, missingCharacters: [...missing] },
    // A printed sheet is never asked for them.
    get places() {
      places ??= lines.flatMap((each, page) => each.map((line) => placeOf(line, page)));
      return places;
    },
  };
}
