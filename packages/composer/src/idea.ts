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
import type { FigureFact, FigureLaterFact, IdeaFact, ThemeFact, VoiceStrikesFact } from './idea-fact.ts';
import { BORROWED_BEATS, likeness } from './theme.ts';
import { groupsOf } from './theme-groups.ts';

/** Figures whose shape is heard wherever in the bar it begins. */
const SHAPES: readonly FigureName[] = ['dotted-quarter', 'three-side'];

function figureFact(name: FigureName): FigureFact {
  return { fact: `figure-${name}` };
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
      return { fact: 'theme-figure-later', figure: figureFact(figure.name), later };
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

/** Places where one bar strikes and the other does not; bars of the same subdivisions only. */
function strokesBeyond(cells: readonly Cell[], other: readonly Cell[]): readonly PlaceFact[] {
  return cells.flatMap((cell, beat) =>
    struckSlots(cell)
      .filter((slot) => {
        const mark = other[beat]?.marks[slot];
        return other[beat]?.marks.length !== cell.marks.length || mark === undefined || !isStruck(mark);
      })
      .map((slot) => placeInBar(beat, slot, cell.marks.length)),
  );
}

function indexed(cells: readonly Cell[], texts: readonly string[]): readonly number[] {
  return cells.map((cell) => texts.indexOf(cell.text));
}

function changedBeats(line: readonly Cell[], theme: readonly Cell[]): readonly string[] {
  return line.flatMap((cell, beat) => (cell.text === theme[beat]?.text ? [] : [String(beat + 1)]));
}

/** What a line makes of a theme. */
export function ideaOf(line: readonly Cell[], theme: readonly Cell[]): IdeaFact {
  const texts = [...new Set([...line, ...theme].map((cell) => cell.text))];
  const { later, apart } = likeness(indexed(line, texts), indexed(theme, texts));
  if (apart === 0) return later === 0 ? { fact: 'idea-stated' } : { fact: 'idea-displaced', later };
  const moved = theme.map((_, beat) => theme[(beat + theme.length - later) % theme.length] as Cell);
  const more = strokesBeyond(line, moved);
  const fewer = strokesBeyond(moved, line);
  // as many strokes in the same places: shared out otherwise between two limbs
  const isSame = more.length === 0 && fewer.length === 0;
  const kind = isSame ? 'turned' : fewer.length === 0 ? 'filled' : more.length === 0 ? 'thinned' : 'turned';
  if (kind === 'turned' && apart > 1 && later === 0)
    return { fact: 'idea-joined', beats: changedBeats(line, theme) };
  if (later > 0) return { fact: `idea-displaced-${kind}`, later };
  if (kind === 'turned') return { fact: 'idea-turned', beats: changedBeats(line, theme) };
  return { fact: `idea-${kind}`, places: kind === 'filled' ? more : fewer };
}

/** The beats that a line has from the theme of the block before and not from its own; null where it is no such line. */
function borrowedBeats(line: readonly Cell[], theme: readonly Cell[], before: readonly Cell[]) {
  const beats = changedBeats(line, theme);
  const isBorrowed = beats.every((beat) => line[Number(beat) - 1]?.text === before[Number(beat) - 1]?.text);
  return isBorrowed && beats.length <= BORROWED_BEATS ? beats : null;
}

/** A line in a block. */
export interface BlockLine {
  readonly line: readonly Cell[];
  readonly theme: readonly Cell[];
  /** The theme of the block before, where the line is the last of its block; else null. */
  readonly before: readonly Cell[] | null;
}

/** What a line of a block makes of the block's theme: another figure of the trade is called by its name. */
export function ideaInBlock({ line, theme, before }: BlockLine): IdeaFact {
  const idea = ideaOf(line, theme);
  if (idea.fact === 'idea-stated' || idea.fact === 'idea-displaced') return idea;
  const figure = figureOf(line.map((cell) => cell.text).join(' '));
  if (figure) return { fact: 'idea-figure', figure: figureFact(figure.name) };
  const borrowed = before && borrowedBeats(line, theme, before);
  if (borrowed) return { fact: 'idea-joins-before', beats: borrowed };
  return idea.fact === 'idea-joined' ? { fact: 'idea-turned', beats: idea.beats } : idea;
}
