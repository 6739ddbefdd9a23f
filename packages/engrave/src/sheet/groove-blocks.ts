/** The groove, printed once, with the stages in which it is built up, and the forms that exercises are played in. */
import {
  FEATHERED_DB,
  type HowWord,
  howOf,
  howWords,
  type Layer,
  type Lesson,
  levelDbToDynamic,
  type Voice,
} from '@shedbook/core';
import { ASCENT, DESCENT } from '../text/fonts.ts';
import { leastTileWidthMm, type TileRequest } from '../tile/tile.ts';
import type { FlowBlock, SheetContext } from './context.ts';
import { describeBars } from './describe.ts';
import { howSigns, howText, SIGN_MM } from './how-signs.ts';
import { ACCENT, allMoved, type Block, INK, type Item } from './item.ts';
import { barCount, grooveParts, notatedBars } from './parts.ts';
import { LEADING, setColumn, setLine, style } from './setting.ts';
import type { SheetWords } from './sheet-words.ts';

const GROOVE_STAFF_SPACE_MM = 1.9;
const MOST_GROOVE_BARS = 8;
const STAGE_SIZE_MM = 4.2;
const STAGE_LEADING_MM = 6.6;
const RING_MM = 2.5;
const SIGNS_GAP_MM = 1.8;

/** Small capitals are not in every font: a heading is bold and small instead. */
function heading(context: SheetContext, text: string): Block {
  return setColumn(context.fonts, text, style('bold', 3.8), context.contentWidthMm, {
    maxLines: 1,
    role: context.lesson.heading === null ? 'H2' : 'H3',
  });
}

/** A bass drum this far over a feathered one, in dB, is still called feathered. */
const FEATHERED_SLACK_DB = 2;

/** Whether a voice is played so softly in the groove that a teacher calls it feathered. */
export function isFeathered({ balance }: Lesson, voice: Voice): boolean {
  return voice === 'bass' && balance.bass <= FEATHERED_DB + FEATHERED_SLACK_DB;
}

/** How loud a voice is in the balance, as a teacher says it: a dynamic, or feathered. */
function loudness(lesson: Lesson, voice: Voice, words: SheetWords): string {
  const { balance } = lesson;
  return isFeathered(lesson, voice) ? words.feathered : levelDbToDynamic(balance[voice]);
}

/** What joins of the groove at each stage, as it is printed; the exercise is not of the groove. */
export function stageTexts(context: SheetContext): readonly string[] {
  const ofGroove = (layer: Layer) => ({ joins: layer.joins.filter((join) => join !== 'pattern') });
  return context.lesson.layers.map((layer) => stageText(context, ofGroove(layer)));
}

function stageText({ lesson, words }: SheetContext, { joins }: Layer): string {
  const part = (join: Layer['joins'][number]) => {
    const voice = join === 'pattern' ? lesson.comping : join;
    const loud = { loudness: loudness(lesson, voice, words) };
    const text =
      join === 'pattern' ? words.exercisePart(loud) : words.part({ voice: words.voices[join], ...loud });
    const how = howOf(lesson, null, voice);
    return how.length === 0 ? text : words.partPlayed({ part: text, how: howText(how, words) });
  };
  return joins.map(part).join(' + ');
}

/** The words of the list that a stage says of how its parts are played. */
export function stageHow(lesson: Lesson, { joins }: Layer): readonly HowWord[] {
  const all = joins.flatMap((join) =>
    howWords(howOf(lesson, null, join === 'pattern' ? lesson.comping : join)),
  );
  return [...new Set(all)];
}

/** A stage: its number in a ring, and what joins. */
function stage(context: SheetContext, layer: Layer, index: number, widthMm: number): Block {
  const ring: Item = {
    kind: 'ring',
    x: RING_MM + 0.2,
    y: RING_MM + 0.2,
    radius: RING_MM,
    strokeMm: 0.35,
    colour: ACCENT,
  };
  const number = setLine(context.fonts, `${index + 1}`, style('bold', 3.6), {
    x: RING_MM + 0.2,
    y: RING_MM + 0.2 + 1.25,
    align: 'middle',
  });
  const left = 2 * RING_MM + 2;
  const text = setColumn(
    context.fonts,
    `${index === 0 ? '' : '+ '}${stageText(context, layer)}`,
    style('regular', STAGE_SIZE_MM),
    widthMm - left,
    { maxLines: 3 },
  );
  const said = withSigns(text, howSigns(stageHow(context.lesson, layer)), widthMm - left);
  const heightMm = Math.max(STAGE_LEADING_MM, said.heightMm + 0.8);
  return {
    widthMm: left + said.widthMm,
    heightMm,
    items: [ring, number, ...allMoved(said.items, left, 0.2)],
  };
}

/** A column of text with signs after its last word, or under it where they have no room there. */
function withSigns(text: Block, signs: Block, widthMm: number): Block {
  const widths = text.items.map((item) => (item.kind === 'text' ? item.widthMm : 0));
  const longest = Math.max(0, ...widths);
  if (signs.items.length === 0) return { ...text, widthMm: longest };
  const lineMm = LEADING * STAGE_SIZE_MM;
  const last = widths.at(-1) ?? 0;
  const isBeside = last + SIGNS_GAP_MM + signs.widthMm <= widthMm;
  const x = isBeside ? last + SIGNS_GAP_MM : 0;
  const middle = ((ASCENT + DESCENT) * STAGE_SIZE_MM - SIGN_MM) / 2;
  const y = (widths.length - (isBeside ? 1 : 0)) * lineMm + middle;
  return {
    widthMm: Math.max(longest, x + signs.widthMm),
    heightMm: Math.max(text.heightMm, y + signs.heightMm),
    items: [...text.items, ...allMoved(signs.items, x, y)],
  };
}

/** Stages under each other in columns of equal width. */
function stages(context: SheetContext, widthMm: number, columns: number): Block {
  const each = widthMm / columns;
  const blocks = context.lesson.layers.map((layer, index) => stage(context, layer, index, each - 4));
  const rows = Math.ceil(blocks.length / columns);
  const items: Item[] = [];
  let y = 0;
  for (let row = 0; row < rows; row += 1) {
    const line = blocks.slice(row * columns, (row + 1) * columns);
    line.forEach((block, column) => {
      items.push(...allMoved(block.items, column * each, y));
    });
    y += Math.max(...line.map((block) => block.heightMm));
  }
  return { widthMm, heightMm: y, items };
}

interface GrooveLine {
  readonly request: TileRequest;
  readonly leastMm: number;
}

function grooveRequest(context: SheetContext, from: number, to: number): TileRequest {
  const parts = grooveParts(context.lesson);
  return {
    id: `${context.prefix}groove${from === 0 ? '' : `-${from + 1}`}`,
    bars: notatedBars(context.lesson, parts, to).slice(from),
    firstBar: from + 1,
    staff: 'full',
    staffSpaceMm: GROOVE_STAFF_SPACE_MM,
    widthMm: null,
    signature: true,
    barLines: to === barCount(parts, MOST_GROOVE_BARS) ? 'repeat' : 'single',
    title: context.words.groove,
    description: describeBars(parts, context.words, from, to),
  };
}

/** The groove in lines of as many bars as fit, all with notes of one size. */
function grooveLines(context: SheetContext): readonly GrooveLine[] {
  const { lesson, contentWidthMm } = context;
  const count = barCount(grooveParts(lesson), MOST_GROOVE_BARS);
  const lines: GrooveLine[] = [];
  for (let from = 0; from < count; ) {
    let to = count;
    while (to > from + 1 && leastTileWidthMm(grooveRequest(context, from, to)) > contentWidthMm) to -= 1;
    const request = grooveRequest(context, from, to);
    lines.push({ request, leastMm: leastTileWidthMm(request) });
    from = to;
  }
  const shrink = Math.min(1, ...lines.map((line) => contentWidthMm / line.leastMm));
  return lines.map(({ request, leastMm }) => ({
    request: { ...request, staffSpaceMm: request.staffSpaceMm * shrink },
    leastMm: leastMm * shrink,
  }));
}

/** Room a stage list needs beside the groove. */
const STAGES_BESIDE_MM = 58;

/** Comfortable width of a bar line of the groove, as a multiple of the least. */
const COMFORT = 1.3;

function grooveBeside(context: SheetContext, line: GrooveLine): FlowBlock {
  const roomMm = context.contentWidthMm - STAGES_BESIDE_MM - 8;
  const widthMm = Math.min(roomMm, Math.max(line.leastMm * COMFORT, 0.55 * context.contentWidthMm));
  const tile = context.engraver.engraveTile({ ...line.request, widthMm });
  const title = heading(context, context.words.groove);
  const beside = heading(context, context.words.buildUp);
  const list = stages(context, STAGES_BESIDE_MM, 1);
  const x = context.contentWidthMm - STAGES_BESIDE_MM;
  const under = title.heightMm + 1.4;
  const items: readonly Item[] = [
    ...title.items,
    { kind: 'tile', x: 0, y: under, tile },
    ...allMoved(beside.items, x, 0),
    ...allMoved(list.items, x, under),
  ];
  return { gapMm: 5, heightMm: under + Math.max(tile.heightMm, list.heightMm), items };
}

function grooveAcross(context: SheetContext, lines: readonly GrooveLine[]): readonly FlowBlock[] {
  const { contentWidthMm, engraver, lesson } = context;
  const staves = lines.map((line, index): FlowBlock => {
    const widthMm = Math.min(contentWidthMm, Math.max(line.leastMm * COMFORT, 0.6 * contentWidthMm));
    const tile = engraver.engraveTile({ ...line.request, widthMm });
    const title = index === 0 ? heading(context, context.words.groove) : { heightMm: -1.4, items: [] };
    const under = title.heightMm + 1.4;
    return {
      gapMm: index === 0 ? 5 : 3,
      heightMm: under + tile.heightMm,
      items: [...title.items, { kind: 'tile', x: 0, y: under, tile }],
      belongs: index > 0,
    };
  });
  if (lesson.layers.length < 2) return staves;
  const title = heading(context, context.words.buildUp);
  const list = stages(context, contentWidthMm, 3);
  return [
    ...staves,
    {
      gapMm: 3,
      heightMm: title.heightMm + 1.4 + list.heightMm,
      items: [...title.items, ...allMoved(list.items, 0, title.heightMm + 1.4)],
      belongs: true,
    },
  ];
}

/** The groove and its stages; nothing when the lesson has no groove. */
export function layOutGroove(context: SheetContext): readonly FlowBlock[] {
  const { lesson, contentWidthMm } = context;
  if (lesson.groove.length === 0) return [];
  const lines = grooveLines(context);
  const [first] = lines;
  const room = contentWidthMm - STAGES_BESIDE_MM - 8;
  const beside =
    lines.length === 1 &&
    first !== undefined &&
    first.leastMm <= room &&
    lesson.layers.length > 1 &&
    lesson.layers.length <= 6;
  return beside ? [grooveBeside(context, first)] : grooveAcross(context, lines);
}

/** Each form: its name, and what is played in a line. */
export function layOutForms(context: SheetContext): readonly FlowBlock[] {
  const { forms, fonts, words, contentWidthMm } = context;
  return forms.map((form, index): FlowBlock => {
    const name = setColumn(fonts, words.formName(form.name), style('bold', 3.9), 34, {
      maxLines: 2,
      colour: INK,
    });
    const text = setColumn(fonts, words.form(form), style('regular', 3.9), contentWidthMm - 36, {
      maxLines: 8,
    });
    return {
      gapMm: index === 0 ? 4.5 : 0.8,
      heightMm: Math.max(name.heightMm, text.heightMm),
      items: [...name.items, ...allMoved(text.items, 36, 0)],
    };
  });
}
