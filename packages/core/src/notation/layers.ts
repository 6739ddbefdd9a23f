/**
 * Which voices of a bar share a row of stems.
 *
 * Conventions: hands in layer 1 with stems up, feet in layer 2 with stems down. A voice whose beat divides otherwise
 * than those of its layer (triplets on the ride, sixteenths on the snare) goes to the other one where it fits, so that
 * each is beamed by its own beat; a voice that fits neither has a layer of its own.
 * Source: common practice: cymbals up and drums down where the hands play different subdivisions. The parts of a beat
 * that no single voice has (twelve, of threes and fours) are never written.
 */
import { VOICE_FACTS, type Voice } from '../kit/voice.ts';
import { type Cell, isHeld, type Mark, turningSlots } from '../rhythm/cell.ts';
import { commonGrid, reduceGrid } from '../rhythm/grid.ts';

/** One voice of one bar. */
export interface BarPart {
  readonly voice: Voice;
  /** One cell for each beat of the meter. */
  readonly cells: readonly Cell[];
  /** A hand for each stroke of this bar in order, or nothing. */
  readonly sticking?: readonly ('R' | 'L' | 'B')[];
  /** What is held into this bar, where its first mark is `~`; nothing where left out. */
  readonly held?: Mark;
  /** Whether what is held in this bar goes on into the next. */
  readonly goesOn?: true;
}

/** Voices under one row of stems. */
export interface Stave {
  /** From 1. */
  readonly layer: number;
  readonly stems: 'up' | 'down';
  readonly parts: readonly BarPart[];
}

/** The fewest slots that write a voice's strokes in a beat, from 0. */
export function gridOfPart(part: BarPart, beat: number): number {
  const cell = part.cells[beat];
  return cell ? reduceGrid(cell.marks.length, turningSlots(cell)).slots : 1;
}

/** Whether something is held in a part: ties and rolls go on under strokes of other voices. */
function holds({ cells, goesOn }: BarPart): boolean {
  return goesOn === true || cells.some(isHeld);
}

/** Whether one of the voices has the slots that all of them need, in every beat; what is held stands by itself. */
function agree(parts: readonly BarPart[]): boolean {
  if (parts.length > 1 && parts.some(holds)) return false;
  const beats = parts[0]?.cells.length ?? 0;
  return Array.from({ length: beats }, (_, beat) => parts.map((part) => gridOfPart(part, beat))).every(
    (grids) => grids.includes(commonGrid(grids)),
  );
}

function isHand({ voice }: BarPart): boolean {
  return VOICE_FACTS[voice].limb.endsWith('hand');
}

/** Lead hand, feet, other hand: who keeps the time stays where it is, and the comping hand gives way. */
function turnOf({ voice }: BarPart): number {
  return ['lead hand', 'lead foot', 'other foot', 'other hand'].indexOf(VOICE_FACTS[voice].limb);
}

/** Rows of stems for the voices that are struck in a bar; one at least. */
export function stavesOf(struck: readonly BarPart[]): readonly Stave[] {
  const staves: { layer: number; stems: 'up' | 'down'; parts: BarPart[] }[] = [
    { layer: 1, stems: 'up', parts: [] },
    { layer: 2, stems: 'down', parts: [] },
  ];
  for (const part of struck.toSorted((a, b) => turnOf(a) - turnOf(b))) {
    const stems = isHand(part) ? 'up' : 'down';
    const wanted = staves.toSorted((a, b) => Number(b.stems === stems) - Number(a.stems === stems));
    const home = wanted.find((stave) => agree([...stave.parts, part]));
    if (home) home.parts.push(part);
    else staves.push({ layer: staves.length + 1, stems: holds(part) ? 'down' : stems, parts: [part] });
  }
  const written = staves.filter(({ parts }) => parts.length > 0);
  const kept = written.length > 0 ? written : staves.slice(0, 1);
  return kept.map((stave) => ({ ...stave, parts: struck.filter((part) => stave.parts.includes(part)) }));
}
