/**
 * What an exercise says beside its notes, on the page: texts over and under its bars, dynamics and hairpins, and where
 * the groove is silent, which a line of the exercise alone cannot show.
 *
 * Conventions: millimetres; every row stands on a baseline y = 0 of its own.
 */
import {
  beatStarts,
  type DynamicSign,
  type Exercise,
  fraction,
  type Lesson,
  type Silent,
  type Voice,
} from '@shedbook/core';
import { ASCENT, DESCENT } from '../text/fonts.ts';
import type { Tile } from '../tile/tile.ts';
import type { SheetContext } from './context.ts';
import { allMoved, type Block, boxOf, INK, type Item } from './item.ts';
import type { LineSlot, PreparedExercise } from './prepare.ts';
import { bracketsOf, type EndingBracket } from './repeats.ts';
import { setColumn, setLine, style } from './setting.ts';

/** Size of texts over and under bars, in staff spaces, so that they grow with the notes. */
const TEXT_SPACES = 1.9;

/** Size of dynamics, in staff spaces. */
const MARK_SPACES = 2.2;

/** Half of what a hairpin opens to, in staff spaces. */
const HAIRPIN_SPACES = 0.5;

const LINE_SPACES = 0.13;

/** Between a mark and a hairpin beside it, in staff spaces. */
const GAP_SPACES = 0.8;

const EMPTY: Block = { widthMm: 0, heightMm: 0, items: [] };

/** A line of an exercise with its tile. */
interface Placed {
  readonly context: SheetContext;
  readonly prepared: PreparedExercise;
  readonly tile: Tile;
  readonly line: LineSlot;
}

/** Where a beat (from 0) of a bar (from 0) stands; its end for the beat after the last. */
function xOf({ context, tile }: Placed, bar: number, beat: number): number {
  const { meter } = context.lesson;
  const start = beatStarts(meter)[beat] ?? meter.bar;
  return Math.min(tile.widthMm, tile.xAt(bar + 1, start));
}

function isSilentVoice(lesson: Lesson, voice: Voice, silent: readonly Silent[]): boolean {
  return silent.includes(voice) || silent.includes(lesson.limbs[voice]);
}

function namesOf({ lesson, words }: SheetContext, silent: readonly Silent[]): string {
  const voices = lesson.groove
    .map(({ voice }) => voice)
    .filter((each) => isSilentVoice(lesson, each, silent));
  return voices.map((voice) => words.voices[voice]).join(', ');
}

/** What is said of the groove over a beat, where the groove itself is not printed. */
function grooveTexts(context: SheetContext, { fill, rests }: Exercise) {
  const { words } = context;
  const resting = rests ? namesOf(context, rests) : '';
  const silent = fill?.silences ? namesOf(context, fill.silences) : '';
  return [
    ...(resting === '' ? [] : [{ bar: 0, beat: 0, text: words.without({ voices: resting }) }]),
    ...(fill ? [{ ...fill, text: silent === '' ? words.fill : words.fillWithout({ voices: silent }) }] : []),
  ];
}

interface TextAt {
  readonly x: number;
  readonly text: string;
}

/** Texts in rows: one that begins before the longest word of the one before has room begins a row of its own. */
function textRowsOf({ context }: Placed, texts: readonly TextAt[], sizeMm: number): readonly TextAt[][] {
  const { fonts, staffSpaceMm } = context;
  const longest = (text: string) =>
    Math.max(...text.split(/\s+/).map((word) => fonts.widthMm(word, 'italic', sizeMm)));
  const rows: TextAt[][] = [];
  for (const each of texts) {
    const before = rows.at(-1)?.at(-1);
    if (before && each.x - before.x - staffSpaceMm >= longest(before.text)) rows.at(-1)?.push(each);
    else rows.push([each]);
  }
  return rows;
}

/** Texts from some beats on, each as wide as there is room up to the next or to the end of the tile. */
function textRow(
  of: Placed,
  texts: readonly { readonly bar: number; readonly beat: number; readonly text: string }[],
): Block {
  const { context, tile } = of;
  const size = style('italic', TEXT_SPACES * context.staffSpaceMm);
  const placed = texts.map(({ bar, beat, text }) => ({
    x: beat === 0 ? barStart(of, bar) : xOf(of, bar, beat),
    text,
  }));
  const items: Item[] = [];
  let heightMm = 0;
  for (const row of textRowsOf(of, placed, size.sizeMm)) {
    const columns = row.map(({ x, text }, index) => {
      const end = row[index + 1]?.x ?? tile.widthMm;
      const column = setColumn(context.fonts, text, size, Math.max(1, end - x - context.staffSpaceMm));
      return { x, column };
    });
    const rowMm = Math.max(...columns.map(({ column }) => column.heightMm));
    const top = heightMm + rowMm;
    items.push(...columns.flatMap(({ x, column }) => allMoved(column.items, x, top - column.heightMm)));
    heightMm = top;
  }
  return { widthMm: tile.widthMm, heightMm, items };
}

/** Where a bar begins: a little before the middle of a head on its first beat. */
function barStart({ context, tile }: Placed, bar: number): number {
  return Math.max(0, tile.xAt(bar + 1, fraction(0)) - context.staffSpaceMm);
}

function isInLine({ line }: Placed, bar: number): boolean {
  return bar >= line.from && bar < line.to;
}

function barTexts(of: Placed, texts: readonly (string | null)[] = []) {
  return texts.flatMap((text, bar) => (text !== null && isInLine(of, bar) ? [{ bar, beat: 0, text }] : []));
}

/** Over the first bar of what is played more than twice the same, how often. */
function timesTexts({ words }: SheetContext, { repeats = [] }: Exercise) {
  return repeats.flatMap(({ from, times, endings }) =>
    times > 2 && endings.length === 0 ? [{ bar: from, beat: 0, text: words.playTimes({ times }) }] : [],
  );
}

/** Height of an ending's bracket, in staff spaces, and how far it keeps from the bar line where another one begins. */
const BRACKET_SPACES = 2.4;
const BRACKET_GAP_SPACES = 0.5;

/** A bracket with its text: a line over its bars, down at its start, and at its end where it is closed. */
function bracketItems(of: Placed, { from, to, text, isOpen }: EndingBracket): readonly Item[] {
  const { context, tile, line } = of;
  const { staffSpaceMm, fonts } = context;
  const edge = (bar: number) => tile.barLinesMm[bar - line.from] ?? (bar === line.from ? 0 : tile.widthMm);
  const strokeMm = LINE_SPACES * staffSpaceMm;
  const [x, right] = [edge(from) + strokeMm, edge(to)];
  const x2 = to < line.to ? right - BRACKET_GAP_SPACES * staffSpaceMm : right;
  const heightMm = BRACKET_SPACES * staffSpaceMm;
  const shape = { kind: 'line', strokeMm, colour: INK } as const;
  const down = (at: number) => ({ ...shape, x: at, x2: at, y: 0, y2: heightMm });
  const sizeMm = MARK_SPACES * staffSpaceMm;
  const place = { x: x + 0.6 * staffSpaceMm, y: ASCENT * sizeMm * 0.9 };
  return [
    { ...shape, x, x2, y: 0, y2: 0 },
    ...(text === null ? [] : [down(x), setLine(fonts, text, style('regular', sizeMm), place)]),
    ...(isOpen ? [] : [down(x2)]),
  ];
}

/** The brackets of a line's endings, on one level. */
function bracketRow(of: Placed): Block {
  const { context, prepared, tile, line } = of;
  const brackets = bracketsOf(prepared.exercise, line.from, line.to);
  if (brackets.length === 0) return EMPTY;
  const items = brackets.flatMap((bracket) => bracketItems(of, bracket));
  return { widthMm: tile.widthMm, heightMm: BRACKET_SPACES * context.staffSpaceMm, items };
}

/** What stands over the notes of a line. */
export function textsOver(
  context: SheetContext,
  prepared: PreparedExercise,
  tile: Tile,
  line: LineSlot,
): Block {
  const of = { context, prepared, tile, line };
  const { exercise } = prepared;
  const own = textRow(of, barTexts(of, exercise.above));
  const isWhole = context.settings.staff === 'full';
  const groove = isWhole ? [] : grooveTexts(context, exercise);
  const all = [...timesTexts(context, exercise), ...groove].filter(({ bar }) => isInLine(of, bar));
  const silent = textRow(
    of,
    all.toSorted((a, b) => a.bar - b.bar || a.beat - b.beat),
  );
  const brackets = bracketRow(of);
  const said = own.heightMm + silent.heightMm;
  return {
    widthMm: tile.widthMm,
    heightMm: said + brackets.heightMm,
    items: [...own.items, ...allMoved(silent.items, 0, own.heightMm), ...allMoved(brackets.items, 0, said)],
  };
}

/** A hairpin from one x to another; `from` and `to` are how far it is open, 0 to 1. */
function hairpin(of: Placed, x: number, x2: number, from: number, to: number): readonly Item[] {
  const { staffSpaceMm } = of.context;
  const half = HAIRPIN_SPACES * staffSpaceMm;
  const shape = { kind: 'line', x, x2, strokeMm: LINE_SPACES * staffSpaceMm, colour: INK } as const;
  return [-1, 1].map((side) => ({ ...shape, y: side * half * from, y2: side * half * to }));
}

/** A hairpin of an exercise: from a beat to another, or to the end. */
interface Wedge {
  readonly start: DynamicSign;
  /** Bar and beat that it ends on; the end of the exercise where it has none. */
  readonly end: DynamicSign | null;
}

function wedgesOf(dynamics: readonly DynamicSign[]): readonly Wedge[] {
  return dynamics.flatMap((start, index) => {
    if (start.hairpin !== 'louder' && start.hairpin !== 'softer') return [];
    return [{ start, end: dynamics[index + 1] ?? null }];
  });
}

/** Width of a mark, with the room beside it. */
function markRoom({ context }: Placed, { mark }: DynamicSign): number {
  if (mark === null) return 0;
  const { fonts, staffSpaceMm } = context;
  return fonts.widthMm(mark, 'italic', MARK_SPACES * staffSpaceMm) / 2 + GAP_SPACES * staffSpaceMm;
}

/** As much of a hairpin as stands on a line. */
function wedgeItems(of: Placed, { start, end }: Wedge): readonly Item[] {
  const { line, tile } = of;
  const last = of.prepared.bars.length;
  const begins = isInLine(of, start.bar);
  const ends = end === null ? line.to === last : isInLine(of, end.bar) || isEndOfLine(of, end);
  const isOver = start.bar < line.from && (end === null || end.bar >= line.to);
  if (!begins && !ends && !isOver) return [];
  if (start.bar >= line.to || (end && (end.bar < line.from || (end.bar === line.from && end.beat === 0))))
    return [];
  const x = begins ? xOf(of, start.bar, start.beat) + markRoom(of, start) : barStart(of, line.from);
  const edge = end === null || !ends || isEndOfLine(of, end);
  const right = tile.widthMm - LINE_SPACES * of.context.staffSpaceMm;
  const x2 = edge || !end ? right : xOf(of, end.bar, end.beat) - markRoom(of, end);
  if (x2 <= x) return [];
  const [from, to] = [begins ? 0 : 0.5, ends ? 1 : 0.5];
  return start.hairpin === 'louder' ? hairpin(of, x, x2, from, to) : hairpin(of, x, x2, 1 - from, 1 - to);
}

/** Whether something stands on the first beat of the line after this one. */
function isEndOfLine({ line }: Placed, { bar, beat }: DynamicSign): boolean {
  return bar === line.to && beat === 0;
}

/** Dynamics and hairpins of a line, on one level. */
function dynamicsRow(of: Placed): Block {
  const { context, prepared, tile } = of;
  const dynamics = prepared.exercise.dynamics ?? [];
  const sizeMm = MARK_SPACES * context.staffSpaceMm;
  const marks = dynamics.flatMap(({ bar, beat, mark }) => {
    if (mark === null || !isInLine(of, bar)) return [];
    const at = { x: xOf(of, bar, beat), y: sizeMm * 0.25, align: 'middle' } as const;
    return [setLine(context.fonts, mark, style('italic', sizeMm), at)];
  });
  const items = [...marks, ...wedgesOf(dynamics).flatMap((wedge) => wedgeItems(of, wedge))];
  if (items.length === 0) return EMPTY;
  const top = Math.min(...items.map((item) => boxOf(item).y));
  const heightMm = (ASCENT + DESCENT) * sizeMm;
  return { widthMm: tile.widthMm, heightMm, items: allMoved(items, 0, -Math.min(top, -heightMm / 2)) };
}

/** What stands under the notes of a line, before hands and counts. */
export function textsUnder(
  context: SheetContext,
  prepared: PreparedExercise,
  tile: Tile,
  line: LineSlot,
): Block {
  const of = { context, prepared, tile, line };
  const dynamics = dynamicsRow(of);
  const texts = textRow(of, barTexts(of, prepared.exercise.below));
  return {
    widthMm: tile.widthMm,
    heightMm: dynamics.heightMm + texts.heightMm,
    items: [...dynamics.items, ...allMoved(texts.items, 0, dynamics.heightMm)],
  };
}
