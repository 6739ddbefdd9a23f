/**
 * Saying what a block is about and what each line makes of it.
 *
 * Conventions: places and beats count from 1; a displacement is in beats, later is positive.
 */
import { type Cell, isStruck, type PlaceFact, placeInBar, struckSlots } from '@shedbook/core';
import { figureOf } from './figures.ts';
import type { IdeaFact, ThemeFact } from './idea-fact.ts';
import { likeness } from './theme.ts';

/** Strokes, or strokes between the beats, that a heading lists by their places, at most. */
const LISTED = 3;

/** Where a bar strikes, or, from slot 1 on, where it strikes between the beats. */
function placesOf(cells: readonly Cell[], inBar: number, fromSlot = 0): readonly PlaceFact[] {
  return cells.flatMap((cell, beat) =>
    struckSlots(cell)
      .filter((slot) => slot >= fromSlot)
      .map((slot) => {
        const place = placeInBar(beat % inBar, slot, cell.marks.length);
        const bar = Math.floor(beat / inBar) + 1;
        return cells.length > inBar ? ({ fact: 'in-bar', place, bar } as const) : place;
      }),
  );
}

/** What a theme is, for a heading: its name, else where it strikes. */
export function themeFact(cells: readonly Cell[], text: string, inBar: number): ThemeFact {
  const figure = figureOf(text);
  if (figure) return { fact: `figure-${figure.name}` };
  const places = placesOf(cells, inBar);
  if (places.length <= LISTED) return { fact: 'theme-places', places };
  const between = placesOf(cells, inBar, 1);
  if (cells.length === inBar && between.length <= LISTED) {
    const beats = cells.flatMap((cell, beat) => (struckSlots(cell)[0] === 0 ? [String(beat + 1)] : []));
    return between.length === 0
      ? { fact: 'theme-places', places }
      : { fact: 'theme-beats-places', beats, places: between };
  }
  return { fact: 'theme-strokes', strokes: places.length };
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
