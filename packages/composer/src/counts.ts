/**
 * What makes a bar hard, counted beat by beat and from each beat to the next.
 *
 * Conventions: counts by the names of `compose.weights`; beats from 0, the last leads to the first. All counts but
 * those of Longuet-Higgins & Lee and Keith are sums over beats and over moves between neighbouring beats, so that
 * tables of them grade any bar.
 * Sources: WNBD as in core's `syncopation.ts` (a note ending on the second beat counts once), in its sum, since
 * a mean would make a bar easier by adding strokes to it; evidence against the pulse as in `syncopation-pulse.ts`.
 * Differs from the sources: a stroke's neighbours are looked for in its own beat and at the end of the beat before;
 * where another limb plays the beat, a silent one counts only as far as an off-beat stroke hangs over it: a missing
 * beat is heard as syncopation though a metronome sounds it (Song, Simpson, Harte, Pearce & Sandler 2013, PLoS ONE
 * 8(9)), but a rest is none, and a stroke in unison with the lead hand neither hangs over a beat nor hides one. Shares for strokes alone are ours.
 */
import {
  type Cell,
  greatestCommonDivisor,
  isAccent,
  isStruck,
  type Letter,
  letterOf,
  type Mark,
  SILENT_PULSE_WEIGHT,
  struckSlots,
} from '@shedbook/core';
import { mean } from '@shedbook/signal';
import type { Ground } from './ground.ts';
import { speedCost, speedLimit, strokeTimes } from './hand-speed.ts';
import type { PartName } from './parts.data.ts';

/** Counts of the parts that a beat or a move has; those left out are 0. */
export type Counts = Readonly<Partial<Record<PartName, number>>>;

/** A stroke alone on the beat, as a share of one off it. */
const ALONE_ON_BEAT = 0.5;

/** A stroke alone just after the beat, which leads nowhere, as a share of one in the later half. */
const ALONE_AFTER_BEAT = 1.25;

function aloneShare(slot: number, slots: number): number {
  if (slot === 0) return ALONE_ON_BEAT;
  return slot / slots < 0.5 ? ALONE_AFTER_BEAT : 1;
}

const SOFT_TO_LOUD = { ghost: 0, stroke: 1, accent: 2 } as const;

function loudness(mark: Mark): number {
  if (mark === 'g') return SOFT_TO_LOUD.ghost;
  return isAccent(mark) ? SOFT_TO_LOUD.accent : SOFT_TO_LOUD.stroke;
}

/** Whether a mark is an ornament, which is a change of touch by itself. */
const ORNAMENTS: Readonly<Record<Letter, boolean>> = {
  x: false,
  g: false,
  f: true,
  d: true,
  b: true,
  o: false,
  s: false,
  r: false,
  w: false,
};

function isOrnament(mark: Mark): boolean {
  const letter = letterOf(mark);
  return letter !== null && ORNAMENTS[letter];
}

function struckMarks(cell: Cell): readonly Mark[] {
  return cell.marks.filter(isStruck);
}

function dynamicsIn(cell: Cell): number {
  const marks = struckMarks(cell);
  const ornaments = marks.filter(isOrnament).length;
  return marks
    .slice(1)
    .reduce((sum, mark, i) => sum + Math.abs(loudness(mark) - loudness(marks[i] as Mark)), ornaments);
}

/** How often the cell goes from playing with the lead hand to playing between its strokes, or to leaving it alone. */
function switchesIn(ground: Ground, beat: number, cell: Cell): number {
  return mean(
    ground.meetings(beat, cell).map((way) => way.slice(1).filter((each, i) => each !== way[i]).length),
  );
}

/** The same from a beat to the next: the last moment of the one against the first of the other. */
function switchesAcross(ground: Ground, beat: number, cell: Cell, next: Cell): number {
  const after = ground.meetings((beat + 1) % ground.length, next);
  return mean(
    ground.meetings(beat, cell).map((way, i) => {
      const last = way.at(-1);
      const first = after[i]?.[0];
      return last !== undefined && first !== undefined && last !== first ? 1 : 0;
    }),
  );
}

/** What a cell on a beat counts by itself. */
export function countBeat(ground: Ground, beat: number, cell: Cell, handSpeed: number): Counts {
  const slots = cell.marks.length;
  const struck = struckSlots(cell);
  const inBar = ground.meter.beats.length;
  const companies = struck.map((slot) => ground.company(beat, slot, slots));
  const first = beat % inBar;
  const sum = (values: readonly number[]) => values.reduce((total, each) => total + each, 0);
  return {
    alone: sum(companies.map((company, i) => company.alone * aloneShare(struck[i] as number, slots))),
    foot: sum(companies.map((company) => company.foot)),
    lead: sum(companies.map((company) => company.lead)),
    silence: first === 0 && struck[0] !== 0 ? 1 : 0,
    offBeatness: struck.filter((slot) => greatestCommonDivisor(first * slots + slot, inBar * slots) === 1)
      .length,
    density: struck.length,
    speed: speedCost(strokeTimes(ground, beat, cell), speedLimit(ground, handSpeed)),
    dynamics: dynamicsIn(cell),
    switch: switchesIn(ground, beat, cell),
  };
}

/** Weighted note-to-beat distance of the strokes of a cell, given the cell after it. */
function distanceOf(cell: Cell, next: Cell): number {
  const slots = cell.marks.length;
  const struck = struckSlots(cell);
  const held = struckSlots(next)[0] ?? 0;
  return struck.reduce((sum, slot, i) => {
    if (slot === 0) return sum;
    const isLast = i === struck.length - 1;
    return sum + ((isLast && held > 0 ? 2 : 1) * slots) / Math.min(slot, slots - slot);
  }, 0);
}

/** Whether the stroke on a beat is heard without an accent, given the cell before it. */
function isUnaccented(before: Cell, cell: Cell): boolean {
  const slots = cell.marks.length;
  const struck = (slot: number) => slot < slots && isStruck(cell.marks[slot] as Mark);
  if (!struck(0) || !struck(1)) return false;
  const neighbour = before.marks.length >= slots && isStruck(before.marks.at(-1) as Mark);
  return neighbour || !struck(2);
}

/** How far an off-beat stroke of the beat before hangs over a silent start, 0 to 1; one in unison does not. */
function hangingOver(ground: Ground, beat: number, before: Cell): number {
  const last = struckSlots(before).at(-1) ?? 0;
  if (last === 0) return 0;
  return 1 - ground.company((beat + ground.length - 1) % ground.length, last, before.marks.length).lead;
}

function pulseOf(ground: Ground, beat: number, before: Cell, cell: Cell): number {
  if (isStruck(cell.marks[0] as Mark)) {
    return isUnaccented(before, cell) ? 1 - ground.company(beat, 1, cell.marks.length).lead : 0;
  }
  const { alone } = ground.company(beat, 0, 1);
  return SILENT_PULSE_WEIGHT * (alone + (1 - alone) * hangingOver(ground, beat, before));
}

/** What hand speed the two beats cost together, beyond what each costs alone. */
function crossingSpeed(ground: Ground, beat: number, cell: Cell, next: Cell, limit: number): number {
  const after = (beat + 1) % ground.length;
  const own = strokeTimes(ground, beat, cell).slice(-2);
  const others = strokeTimes(ground, after, next).slice(0, 2);
  const length = ground.beatSeconds(beat);
  const across = speedCost([...own, ...others.map((time) => time + length)], limit);
  return across - speedCost(own, limit) - speedCost(others, limit);
}

/** What the move from a cell on a beat to the cell on the next beat counts. */
export function countMove(ground: Ground, beat: number, cell: Cell, next: Cell, handSpeed: number): Counts {
  const after = (beat + 1) % ground.length;
  const last = struckMarks(cell).at(-1);
  const first = struckMarks(next)[0];
  const touches = last !== undefined && first !== undefined;
  return {
    wnbd: distanceOf(cell, next),
    pulse: pulseOf(ground, after, cell, next),
    switch: switchesAcross(ground, beat, cell, next),
    change: cell.text === next.text ? 0 : 1,
    speed: touches ? crossingSpeed(ground, beat, cell, next, speedLimit(ground, handSpeed)) : 0,
    dynamics: touches ? Math.abs(loudness(first) - loudness(last)) : 0,
  };
}
