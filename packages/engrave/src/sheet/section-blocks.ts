/**
 * The sections of a lesson, one under the other. What holds since the section before is not printed again: meter,
 * tempo and feel where they change, the groove where it is another, a form where it is played in another way.
 */
import { type Form, formatPattern, type Lesson } from '@shedbook/core';
import type { FlowBlock, SheetContext } from './context.ts';
import { layOutExercises } from './grid.ts';
import { layOutForms, layOutGroove, stageTexts } from './groove-blocks.ts';
import { changedMarks, markRow } from './header.ts';
import { ACCENT, allMoved, type Item } from './item.ts';
import { layOutLegend } from './legend.ts';
import { layOutMedia } from './media-blocks.ts';
import { layOutProse } from './prose-blocks.ts';
import { setColumn, style } from './setting.ts';

const HEADING_MM = 6;
const HEADING_GAP_MM = 9;
const BEFORE_MM = 4.2;
const RULE = { widthMm: 12, strokeMm: 1.1, underMm: 1.5 } as const;

/** The heading over a short rule in the accent, kept with what follows. */
function layOutHeading(context: SheetContext): readonly FlowBlock[] {
  const { heading } = context.lesson;
  if (heading === null) return [];
  const { fonts, contentWidthMm } = context;
  const text = setColumn(fonts, heading, style('bold', HEADING_MM), contentWidthMm, {
    maxLines: 3,
    role: 'H2',
  });
  const y = text.heightMm + RULE.underMm;
  const rule: Item = {
    ...{ kind: 'line', x: 0, y, x2: RULE.widthMm, y2: y },
    ...{ strokeMm: RULE.strokeMm, colour: ACCENT },
  };
  const heightMm = y + RULE.strokeMm / 2;
  return [{ gapMm: HEADING_GAP_MM, heightMm, items: [...text.items, rule], keepsNext: true, mark: heading }];
}

/** What a student must have first, under the heading. */
function layOutBefore(context: SheetContext): readonly FlowBlock[] {
  const { before } = context.lesson;
  if (before === undefined) return [];
  const said = context.words.before({ heading: before });
  const { items, heightMm } = setColumn(
    context.fonts,
    said,
    style('italic', BEFORE_MM),
    context.contentWidthMm,
    { maxLines: 2 },
  );
  return [{ gapMm: context.lesson.heading === null ? HEADING_GAP_MM : 2, heightMm, items, keepsNext: true }];
}

/** Meter, tempo and feel where they are others than before. */
function layOutMarks(context: SheetContext, before: Lesson): readonly FlowBlock[] {
  const marks = changedMarks(context, before);
  if (marks.length === 0) return [];
  const row = markRow(marks, context.contentWidthMm);
  const items = allMoved(row.items, 0, 0);
  return [{ gapMm: 2.4, heightMm: row.heightMm, items, keepsNext: true }];
}

/** The groove as it is printed: two sections with the same text print the same. */
function grooveText(context: SheetContext): string {
  const { groove, meter } = context.lesson;
  const parts = groove.map(({ voice, pattern }) => `${voice} ${formatPattern(pattern)}`);
  return [meter.text, ...parts, ...stageTexts(context)].join('\n');
}

/** Forms that no section before has told in the same words. */
function createNewForms() {
  const told = new Map<string, string>();
  return ({ forms, words }: SheetContext): readonly Form[] =>
    forms.filter((form) => {
      const sentence = words.form(form);
      const isNew = told.get(form.name) !== sentence;
      told.set(form.name, sentence);
      return isNew;
    });
}

/** What is written to a section, its end kept with the first notes after it. */
function keptWithNotes(prose: readonly FlowBlock[]): readonly FlowBlock[] {
  return prose.map((block, index) => (index === prose.length - 1 ? { ...block, keepsNext: true } : block));
}

/** An undivided lesson: groove, forms, key and exercises. */
function layOutWhole(context: SheetContext): readonly FlowBlock[] {
  return [
    ...layOutProse(context, context.lesson.text),
    ...layOutMedia(context, context.lesson.media),
    ...layOutGroove(context),
    ...layOutForms(context),
    ...layOutLegend([context]),
    ...layOutExercises(context),
  ];
}

/** What stands under the header: each section by its own context. @param whole with what is written to it */
export function layOutSections(
  contexts: readonly SheetContext[],
  { text, media }: Pick<Lesson, 'text' | 'media'>,
): readonly FlowBlock[] {
  const [first] = contexts as readonly [SheetContext];
  if (contexts.length === 1 && first.lesson.heading === null) return layOutWhole(first);
  const newForms = createNewForms();
  return [
    ...layOutProse(first, text),
    ...layOutMedia(first, media),
    ...layOutLegend(contexts),
    ...contexts.flatMap((context, index) => {
      const before = contexts[index - 1];
      const printed = contexts.slice(0, index).findLast(({ lesson }) => lesson.groove.length > 0);
      const isNewGroove = !printed || grooveText(printed) !== grooveText(context);
      return [
        ...layOutHeading(context),
        ...layOutBefore(context),
        ...(before ? layOutMarks(context, before.lesson) : []),
        ...keptWithNotes([
          ...layOutProse(context, context.lesson.text),
          ...layOutMedia(context, context.lesson.media),
        ]),
        ...(isNewGroove ? layOutGroove(context) : []),
        ...layOutForms({ ...context, forms: newForms(context) }),
        ...layOutExercises(context),
      ];
    }),
  ];
}
