/**
 * Where a theme strikes, in groups as a teacher would say them: beats that are struck alike are named together.
 *
 * Conventions: beats count from 1. Source: common practice, "4 with its let; the let of 1 and 2".
 */
import { type Cell, type PlaceFact, placeInBar, type Syllable, struckSlots } from '@shedbook/core';
import type { GroupFact } from './idea-fact.ts';
import type { CellFact } from './term-fact.ts';

/** Slots of a beat, at least, that are all struck before a group says so: two are a beat and its off-beat. */
const WHOLE = 3;

/** What is counted at the strokes of a cell after its beat, or null where one has no name. */
function syllablesOf(cell: Cell): readonly Syllable[] | null {
  const places = struckSlots(cell)
    .filter((slot) => slot > 0)
    .map((slot): PlaceFact => placeInBar(0, slot, cell.marks.length));
  const named = places.flatMap((place) => (place.fact === 'syllable' ? [place.syllable] : []));
  return named.length === places.length ? named : null;
}

function groupOf(cell: Cell, beats: readonly string[], syllables: readonly Syllable[]): GroupFact {
  const isOnBeat = struckSlots(cell)[0] === 0;
  if (syllables.length === 0) return { fact: 'group-beats', beats };
  const said = syllables.map((syllable) => ({ fact: 'counted', syllable }) as const);
  if (!isOnBeat) return { fact: 'group-between', beats, syllables: said };
  const isWhole = cell.marks.length >= WHOLE && syllables.length === cell.marks.length - 1;
  if (isWhole) return { fact: 'group-whole', beats };
  return { fact: 'group-with', beats, count: beats.length, syllables: said };
}

/** A cell of plain strokes as it is counted; the text of any other. */
export function cellFact(cell: Cell): CellFact | string {
  const syllables = syllablesOf(cell);
  if (syllables === null || cell.marks.some((mark) => mark !== '.' && mark !== 'x')) return cell.text;
  const isOnBeat = struckSlots(cell)[0] === 0;
  const said = syllables.map((syllable) => ({ fact: 'counted', syllable }) as const);
  if (said.length === 0) return { fact: isOnBeat ? 'cell-beat' : 'cell-silent' };
  return { fact: isOnBeat ? 'cell-with' : 'cell-between', syllables: said };
}

/** The groups of one bar, in the order of their first beats; null where a stroke has no name. */
export function groupsOf(cells: readonly Cell[]): readonly GroupFact[] | null {
  const groups = new Map<string, { readonly cell: Cell; readonly beats: string[] }>();
  const syllables = cells.map(syllablesOf);
  if (syllables.includes(null)) return null;
  cells.forEach((cell, beat) => {
    const slots = struckSlots(cell);
    if (slots.length === 0) return;
    const key = `${slots[0] === 0} ${(syllables[beat] ?? []).join()}`;
    const group = groups.get(key) ?? { cell, beats: [] };
    group.beats.push(String(beat + 1));
    groups.set(key, group);
  });
  return [...groups.values()].map(({ cell, beats }) => groupOf(cell, beats, syllablesOf(cell) ?? []));
}
