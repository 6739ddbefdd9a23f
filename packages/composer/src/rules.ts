/**
 * A lesson's limits as rules over cells and moves.
 *
 * Conventions: cells as indices into the vocabulary; beats from 0 through all bars.
 */
import {
  type Cell,
  type ComposeLimits,
  isStruck,
  type Lesson,
  type Mark,
  type PatternRules,
  struckSlots,
} from '@shedbook/core';
import type { Ground } from './ground.ts';
import { isPlayable, speedLimit, strokeTimes } from './hand-speed.ts';

/** The cells of a lesson's vocabulary, each once. */
export function vocabularyOf(lesson: Lesson): readonly Cell[] {
  const byText = new Map(lesson.vocabulary.map(({ cell }) => [cell.text, cell]));
  return [...byText.values()];
}

function mayStand(ground: Ground, limits: ComposeLimits, beat: number, cell: Cell): boolean {
  const inBar = beat % ground.meter.beats.length;
  const listed = limits.beats[String(inBar + 1)];
  if (listed && !listed.includes(cell.text)) return false;
  if (inBar === 0 && limits.start && !limits.start.includes(cell.text)) return false;
  if (inBar === 0 && limits.neverStart.includes(cell.text)) return false;
  if (struckSlots(cell).some((slot) => ground.isBusy(beat, slot, cell.marks.length))) return false;
  return isPlayable(strokeTimes(ground, beat, cell), speedLimit(ground, limits.handSpeed));
}

/** Whether an off-beat stroke hangs over a silent beat. */
function hangsOver(cell: Cell, next: Cell): boolean {
  const last = struckSlots(cell).at(-1) ?? 0;
  return last > 0 && !isStruck(next.marks[0] as Mark);
}

function mayMove(ground: Ground, limits: ComposeLimits, beat: number, cell: Cell, next: Cell): boolean {
  const after = (beat + 1) % ground.length;
  const crossesBarLine = after % ground.meter.beats.length === 0;
  if (crossesBarLine && !limits.overBarLine && hangsOver(cell, next)) return false;
  const length = ground.beatSeconds(beat);
  const times = strokeTimes(ground, after, next).map((time) => time + length);
  return isPlayable([...strokeTimes(ground, beat, cell), ...times], speedLimit(ground, limits.handSpeed));
}

/** The rules by which patterns over a ground are allowed; every question is answered from a table. */
export function rulesOf(ground: Ground, cells: readonly Cell[], limits: ComposeLimits): PatternRules {
  const beats = Array.from({ length: ground.length }, (_, beat) => beat);
  const stands = beats.map((beat) => cells.map((cell) => mayStand(ground, limits, beat, cell)));
  const moves = beats.map((beat) =>
    cells.map((cell) => cells.map((next) => mayMove(ground, limits, beat, cell, next))),
  );
  return {
    cells,
    beats: ground.meter.beats.length,
    bars: ground.bars,
    allows: (beat, cell) => stands[beat]?.[cell] ?? false,
    allowsMove: (beat, from, to) => moves[beat]?.[from]?.[to] ?? false,
    strokes: limits.strokes,
    rests: limits.rests,
  };
}
