/**
 * A lesson's limits as rules over cells and moves.
 *
 * Conventions: cells as indices into the vocabulary; beats from 0 through all bars.
 */
import {
  type Cell,
  type ComposeLimits,
  isEvenMeter,
  isStruck,
  type Lesson,
  type Mark,
  type PatternRules,
  struckSlots,
  unitsIn,
} from '@shedbook/core';
import type { Ground } from './ground.ts';
import { isPlayable, speedLimit, strokeTimes } from './hand-speed.ts';
import type { LimbCell } from './score.ts';
import type { Script } from './script.ts';

/** The cells of a lesson's vocabulary, each once. */
export function vocabularyOf(lesson: Lesson): readonly Cell[] {
  const byText = new Map(lesson.vocabulary.map(({ cell }) => [cell.text, cell]));
  return [...byText.values()];
}

/** What each limb plays of a cell, and the rhythm that limits go by. */
type Played = Pick<Script, 'lines' | 'rhythm'>;

function canStrike({ ground, cell }: LimbCell, limits: ComposeLimits, beat: number): boolean {
  if (struckSlots(cell).some((slot) => ground.isBusy(beat, slot, cell.marks.length))) return false;
  return isPlayable(strokeTimes(ground, beat, cell), speedLimit(ground, limits.handSpeed));
}

function mayStand(ground: Ground, limits: ComposeLimits, beat: number, cell: Cell, played: Played): boolean {
  const inBar = beat % ground.meter.beats.length;
  const rhythm = played.rhythm(cell);
  const listed = limits.beats[String(inBar + 1)];
  if (listed && !listed.includes(rhythm)) return false;
  if (inBar === 0 && limits.start && !limits.start.includes(rhythm)) return false;
  if (inBar === 0 && limits.neverStart.includes(rhythm)) return false;
  return played.lines(cell).every((line) => canStrike(line, limits, beat));
}

/** Whether a beat of so many units of the meter is divided as those are: none, once, in two or in four. */
function dividesAs(slots: number, units: number): boolean {
  return [1 / units, 1, 2, 4].includes(slots / units);
}

/**
 * Whether cells may stand on each beat by how it is divided. Where beats are not of one length, as in 2+2+3/8, those of
 * two parts take cells of two and those of three cells of three, wherever the vocabulary has any; common practice.
 */
function divisionsFit({ meter, length }: Ground, cells: readonly Cell[]): readonly (readonly boolean[])[] {
  const units = meter.beats.map((each) => unitsIn(meter, each));
  return Array.from({ length }, (_, beat) => {
    const fit = cells.map(({ marks }) => dividesAs(marks.length, units[beat % units.length] as number));
    return isEvenMeter(meter) || !fit.includes(true) ? cells.map(() => true) : fit;
  });
}

/** Whether an off-beat stroke hangs over a silent beat. */
function hangsOver(cell: Cell, next: Cell): boolean {
  const last = struckSlots(cell).at(-1) ?? 0;
  return last > 0 && !isStruck(next.marks[0] as Mark);
}

/** Whether a limb keeps up from a beat to the next. */
function canGoOn(from: LimbCell, to: Cell, limits: ComposeLimits, beat: number): boolean {
  const { ground, cell } = from;
  const length = ground.beatSeconds(beat);
  const times = strokeTimes(ground, (beat + 1) % ground.length, to).map((time) => time + length);
  return isPlayable([...strokeTimes(ground, beat, cell), ...times], speedLimit(ground, limits.handSpeed));
}

/**
 * The rules by which patterns over a ground are allowed; every question is answered from a table.
 * @param played how the cells are played; by one limb, as written, when left out
 */
export function rulesOf(
  ground: Ground,
  cells: readonly Cell[],
  limits: ComposeLimits,
  played: Played = { rhythm: ({ text }) => text, lines: (cell) => [{ ground, cell }] },
): PatternRules {
  const beats = Array.from({ length: ground.length }, (_, beat) => beat);
  const lines = cells.map((cell) => played.lines(cell));
  const fit = divisionsFit(ground, cells);
  const isListed = (beat: number) => `${(beat % ground.meter.beats.length) + 1}` in limits.beats;
  const stands = beats.map((beat) =>
    cells.map(
      (cell, index) =>
        (isListed(beat) || fit[beat]?.[index] === true) && mayStand(ground, limits, beat, cell, played),
    ),
  );
  const mayMove = (beat: number, from: number, to: number) => {
    const crossesBarLine = ((beat + 1) % ground.length) % ground.meter.beats.length === 0;
    if (crossesBarLine && !limits.overBarLine && hangsOver(cells[from] as Cell, cells[to] as Cell))
      return false;
    return (lines[from] ?? []).every((line, i) => canGoOn(line, lines[to]?.[i]?.cell as Cell, limits, beat));
  };
  const moves = beats.map((beat) =>
    cells.map((_, from) => cells.map((_next, to) => mayMove(beat, from, to))),
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
