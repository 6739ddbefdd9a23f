/**
 * Saying what a block is about and what each line makes of it.
 *
 * Conventions: places and beats count from 1; a displacement is in beats, later is positive.
 */
import {
  type Cell,
  type ExercisePart,
  isStruck,
  type PlaceFact,
  placeInBar,
  struckSlots,
} from '@shedbook/core';
import type { FigureName } from './figures.data.ts';
import { figureOf } from './figures.ts';
import type {
  FigureFact,
  FigureLaterFact,
  IdeaFact,
  LaterFact,
  ThemeFact,
  VoiceStrikesFact,
} from './idea-fact.ts';
import { BORROWED_BEATS, likeness } from './theme.ts';
import { groupsOf } from './theme-groups.ts';

/** Figures whose shape is heard wherever in the bar it begins. */
const SHAPES: readonly FigureName[] = ['dotted-quarter', 'three-side'];

function figureFact(name: FigureName): FigureFact {
  return { fact: `figure-${name}` };
}

/** By how much something comes later: whole bars are counted as such. */
function laterFact(beats: number, inBar: number): LaterFact {
  const isWhole = beats % inBar === 0;
  return isWhole ? { fact: 'bars-later', bars: beats / inBar } : { fact: 'beats-later', beats };
}

/** The figure that a bar is, where it stands or some beats later. */
function figureIn(cells: readonly Cell[]): FigureFact | FigureLaterFact | null {
  const n = cells.length;
  for (let later = 0; later < n; later += 1) {
    const text = cells.map((_, beat) => cells[(beat + later) % n]?.text).join(' ');
    const figure = figureOf(text);
    if (!figure) continue;
    if (later === 0) return figureFact(figure.name);
    if (SHAPES.includes(figure.name))
      return { fact: 'theme-figure-later', figure: figureFact(figure.name), later: laterFact(later, n) };
  }
  return null;
}

function isBackBeat(cells: readonly Cell[]): boolean {
  const texts = cells.map((cell) => cell.marks.map((mark) => isStruck(mark) && mark !== 'g'));
  return texts.every((struck, beat) => struck.every((each, slot) => each === (beat % 2 === 1 && slot === 0)));
}

/** A cell's ghost notes alone. */
function ghostsOf(cell: Cell): Cell {
  const marks = cell.marks.map((mark) => (mark === 'g' ? mark : '.'));
  return { text: marks.join(''), marks };
}

function barFact(cells: readonly Cell[]): ThemeFact | null {
  const groups = groupsOf(cells);
  if (!groups || groups.length === 0) return null;
  const ghosts = groupsOf(cells.map(ghostsOf));
  if (ghosts && ghosts.length > 0 && isBackBeat(cells)) return { fact: 'theme-ghosts', groups: ghosts };
  return { fact: 'theme-groups', groups };
}

function barsFact(bars: readonly (readonly Cell[])[]): ThemeFact | null {
  const groups = bars.map((bar) => groupsOf(bar) ?? []).filter((each) => each.length > 0);
  const [first, second] = groups;
  if (first && second && bars.length === 2 && JSON.stringify(first) === JSON.stringify(second))
    return { fact: 'theme-twice', groups: first };
  if (first && second && bars.length === 2) return { fact: 'theme-two-bars', first, second };
  return first ? { fact: 'theme-begins', groups: first } : null;
}

/** What a theme is, for a heading: its name, else where it strikes, beats that are struck alike together. */
export function themeFact(cells: readonly Cell[], inBar: number): ThemeFact {
  const bars = Array.from({ length: cells.length / inBar }, (_, bar) =>
    cells.slice(bar * inBar, (bar + 1) * inBar),
  );
  const fact = bars.length === 1 ? (figureIn(cells) ?? barFact(cells)) : barsFact(bars);
  return fact ?? { fact: 'theme-strokes', strokes: cells.flatMap(struckSlots).length };
}

/** What each voice strikes, or null where a stroke has no name or the theme has several bars. */
function voicesStrike(parts: readonly ExercisePart[]): readonly VoiceStrikesFact[] | null {
  const said = parts.flatMap(({ voice, pattern }): readonly VoiceStrikesFact[] => {
    const [bar, ...more] = pattern.bars;
    const groups = bar && more.length === 0 ? groupsOf(bar) : null;
    return groups && groups.length > 0 ? [{ fact: 'voice-strikes', voice, groups }] : [];
  });
  return said.length === parts.length ? said : null;
}

/**
 * What a theme that voices share is, for a heading: the name of their rhythm, if it has one, and what each voice strikes.
 * @param cells what all of them strike together
 */
export function sharedThemeFact(
  cells: readonly Cell[],
  parts: readonly ExercisePart[],
  inBar: number,
): ThemeFact {
  const voices = voicesStrike(parts);
  if (!voices) return themeFact(cells, inBar);
  const figure = figureIn(cells);
  return figure ? { fact: 'theme-figure-shared', figure, voices } : { fact: 'theme-shared', voices };
}

/** Cells of which so many make a bar. */
interface Barred {
  readonly cells: readonly Cell[];
  readonly inBar: number;
}

/** A place, with its bar where there are several. */
function placeOf({ cells, inBar }: Barred, at: number, slot: number): PlaceFact {
  const place = placeInBar(at % inBar, slot, cells[at]?.marks.length ?? 1);
  return cells.length > inBar ? { fact: 'in-bar', place, bar: Math.floor(at / inBar) + 1 } : place;
}

/** Places where one line strikes and the other does not; bars of the same subdivisions only. */
function strokesBeyond(line: Barred, other: readonly Cell[]): readonly PlaceFact[] {
  return line.cells.flatMap((cell, at) =>
    struckSlots(cell)
      .filter((slot) => {
        const mark = other[at]?.marks[slot];
        return other[at]?.marks.length !== cell.marks.length || mark === undefined || !isStruck(mark);
      })
      .map((slot) => placeOf(line, at, slot)),
  );
}

function indexed(cells: readonly Cell[], texts: readonly string[]): readonly number[] {
  return cells.map((cell) => texts.indexOf(cell.text));
}

/** Numbers of the beats, from 0, on which a line is not its theme. */
function changedBeats(line: readonly Cell[], theme: readonly Cell[]): readonly number[] {
  return line.flatMap((cell, at) => (cell.text === theme[at]?.text ? [] : [at]));
}

/**
 * What a line makes of a theme.
 * @param inBar beats in a bar
 */
export function ideaOf(line: readonly Cell[], theme: readonly Cell[], inBar: number): IdeaFact {
  const texts = [...new Set([...line, ...theme].map((cell) => cell.text))];
  const { later, apart } = likeness(indexed(line, texts), indexed(theme, texts));
  const displaced = laterFact(later, inBar);
  if (apart === 0)
    return later === 0 ? { fact: 'idea-stated' } : { fact: 'idea-displaced', later: displaced };
  const moved = theme.map((_, beat) => theme[(beat + theme.length - later) % theme.length] as Cell);
  const more = strokesBeyond({ cells: line, inBar }, moved);
  const fewer = strokesBeyond({ cells: moved, inBar }, line);
  // as many strokes in the same places: shared out otherwise between two limbs
  const isSame = more.length === 0 && fewer.length === 0;
  const kind = isSame ? 'turned' : fewer.length === 0 ? 'filled' : more.length === 0 ? 'thinned' : 'turned';
  if (later > 0) return { fact: `idea-displaced-${kind}`, later: displaced };
  if (kind !== 'turned') return { fact: `idea-${kind}`, places: kind === 'filled' ? more : fewer };
  const beats = changedBeats(line, theme).map((at) => placeOf({ cells: line, inBar }, at, 0));
  return { fact: 'idea-turned', beats };
}

/**
 * The beats that a line has from the theme of the block before and not from its own; null where it is no such line, or
 * where they are silent: nobody hears silence as another figure's.
 */
function borrowedBeats({ line, theme, before, inBar }: BlockLine): readonly PlaceFact[] | null {
  const beats = changedBeats(line, theme);
  const isBorrowed = before !== null && beats.every((at) => line[at]?.text === before[at]?.text);
  const sounds = beats.some((at) => line[at]?.marks.some(isStruck));
  if (!isBorrowed || !sounds || beats.length > BORROWED_BEATS) return null;
  return beats.map((at) => placeOf({ cells: line, inBar }, at, 0));
}

/** A line in a block. */
export interface BlockLine {
  readonly line: readonly Cell[];
  readonly theme: readonly Cell[];
  /** The theme of the block before, where the line is the last of its block; else null. */
  readonly before: readonly Cell[] | null;
  /** Beats in a bar. */
  readonly inBar: number;
}

/** What a line of a block makes of the block's theme: another figure of the trade is called by its name. */
export function ideaInBlock(of: BlockLine): IdeaFact {
  const { line, theme, inBar } = of;
  const idea = ideaOf(line, theme, inBar);
  if (idea.fact === 'idea-stated' || idea.fact === 'idea-displaced') return idea;
  const figure = figureOf(line.map((cell) => cell.text).join(' '));
  if (figure) return { fact: 'idea-figure', figure: figureFact(figure.name) };
  const borrowed = borrowedBeats(of);
  return borrowed ? { fact: 'idea-joins-before', beats: borrowed } : idea;
}
