/**
 * Scores: what several limbs play in one exercise, graded as one thing.
 *
 * Conventions: one line a limb, the comping limb's first; cells by beat. A moment in which several limbs strike is
 * graded once, as a stroke of the first of them; what it costs to strike together is `unison`, what it costs to hand
 * over from one limb to another within a beat's length is `interlock`.
 * Source: limbs that move together hold more firmly than limbs that alternate (Haken, Kelso & Bunz 1985, Biological
 * Cybernetics 51(5)); the points are ours. Speed and dynamics count for each limb by itself.
 */
import {
  type Cell,
  commonGrid,
  type Exercise,
  isStruck,
  type Lesson,
  type Mark,
  struckSlots,
} from '@shedbook/core';
import { type Counts, countBeat, countMove } from './counts.ts';
import { type Ground, readGround } from './ground.ts';

/** What one limb plays on one beat, and the ground under it. */
export interface LimbCell {
  readonly ground: Ground;
  readonly cell: Cell;
}

/** What one limb plays in an exercise, beat by beat. */
export interface Line {
  readonly ground: Ground;
  readonly cells: readonly Cell[];
}

/** Phases closer than this are one moment. */
const SAME_MOMENT = 1e-6;

interface Moment {
  readonly phase: number;
  /** Numbers of the lines that strike. */
  readonly lines: readonly number[];
}

/** A cell that strikes wherever one of some cells does; a slot has the mark of the first that strikes it. */
export function mergeCells(cells: readonly Cell[]): Cell {
  const [first] = cells;
  if (first && cells.length === 1) return first;
  const slots = commonGrid(cells.map((each) => each.marks.length));
  const marks = Array.from({ length: slots }, (_, slot): Mark => {
    const there = cells.map((each) => {
      const stretch = slots / each.marks.length;
      return slot % stretch === 0 ? (each.marks[slot / stretch] ?? '.') : '.';
    });
    return there.find(isStruck) ?? '.';
  });
  return { text: marks.join(''), marks };
}

/** The moments of a beat in which a line strikes, in order. */
function momentsOf(beat: number, lines: readonly LimbCell[]): readonly Moment[] {
  const strokes = lines.flatMap(({ ground, cell }, line) =>
    struckSlots(cell).map((slot) => ({ phase: ground.phase(beat, slot, cell.marks.length), line })),
  );
  const moments: { phase: number; lines: number[] }[] = [];
  for (const { phase, line } of strokes.sort((a, b) => a.phase - b.phase)) {
    const last = moments.at(-1);
    if (last && phase - last.phase < SAME_MOMENT) last.lines.push(line);
    else moments.push({ phase, lines: [line] });
  }
  return moments;
}

function isHandOver(from: Moment, to: Moment): boolean {
  return !from.lines.some((line) => to.lines.includes(line));
}

/** The cell of a line without the strokes that an earlier line plays too. */
function withoutUnison(beat: number, lines: readonly LimbCell[], line: number): Cell {
  const { ground, cell } = lines[line] as LimbCell;
  const slots = cell.marks.length;
  const earlier = momentsOf(beat, lines.slice(0, line));
  const isDoubled = (slot: number) =>
    earlier.some(({ phase }) => Math.abs(phase - ground.phase(beat, slot, slots)) < SAME_MOMENT);
  const marks = cell.marks.map((mark, slot): Mark => (isStruck(mark) && isDoubled(slot) ? '.' : mark));
  return { text: marks.join(''), marks };
}

/** The lines without strokes that an earlier line plays too. */
export function withoutUnisons(lines: readonly Line[]): readonly Line[] {
  const at = (beat: number) => lines.map(({ ground, cells }) => ({ ground, cell: cells[beat] as Cell }));
  return lines.map(({ ground, cells }, i) => ({
    ground,
    cells: cells.map((_, beat) => withoutUnison(beat, at(beat), i)),
  }));
}

function sumOf(counts: readonly Counts[], part: keyof Counts): number {
  return counts.reduce((sum, each) => sum + (each[part] ?? 0), 0);
}

function firstGround(lines: readonly LimbCell[]): Ground {
  const [first] = lines;
  if (!first) throw new RangeError('Internal error: a score without lines');
  return first.ground;
}

/** What a beat of a score counts by itself. */
export function countScoreBeat(beat: number, lines: readonly LimbCell[], handSpeed: number): Counts {
  const whole = mergeCells(lines.map((line) => line.cell));
  const all = countBeat(firstGround(lines), beat, whole, handSpeed);
  if (lines.length === 1) return all;
  const full = lines.map(({ ground, cell }) => countBeat(ground, beat, cell, handSpeed));
  const own = lines.map(({ ground }, i) => countBeat(ground, beat, withoutUnison(beat, lines, i), handSpeed));
  const moments = momentsOf(beat, lines);
  return {
    ...all,
    alone: sumOf(own, 'alone'),
    foot: sumOf(own, 'foot'),
    lead: sumOf(own, 'lead'),
    density: moments.length,
    speed: sumOf(full, 'speed'),
    dynamics: sumOf(full, 'dynamics'),
    unison: moments.filter((moment) => moment.lines.length > 1).length,
    interlock: moments.slice(1).filter((moment, i) => isHandOver(moments[i] as Moment, moment)).length,
  };
}

/** What the move from a beat of a score to the next counts. */
export function countScoreMove(
  beat: number,
  lines: readonly LimbCell[],
  next: readonly LimbCell[],
  handSpeed: number,
): Counts {
  const ground = firstGround(lines);
  const merged = (of: readonly LimbCell[]) => mergeCells(of.map((line) => line.cell));
  const all = countMove(ground, beat, merged(lines), merged(next), handSpeed);
  if (lines.length === 1) return all;
  const full = lines.map((line, i) =>
    countMove(line.ground, beat, line.cell, (next[i] as LimbCell).cell, handSpeed),
  );
  const changes = lines.some(({ cell }, i) => cell.text !== (next[i] as LimbCell).cell.text);
  const last = momentsOf(beat, lines).at(-1);
  const [first] = momentsOf((beat + 1) % ground.length, next);
  const near = last && first && first.phase < last.phase;
  return {
    ...all,
    change: changes ? 1 : 0,
    speed: sumOf(full, 'speed'),
    dynamics: sumOf(full, 'dynamics'),
    interlock: near && isHandOver(last, first) ? 1 : 0,
  };
}

/**
 * The lines of an exercise: one a limb, the first part's limb first. A part for the lead voice is the time, and so
 * part of the ground, unless the exercise has no other.
 */
export function linesOf(lesson: Lesson, exercise: Exercise): readonly Line[] {
  const others = exercise.parts.filter((part) => part.voice !== lesson.lead);
  const played = others.length > 0 ? others : exercise.parts;
  const time = exercise.parts.filter((part) => !played.includes(part));
  const groove = [
    ...lesson.groove.filter(({ voice }) => !time.some((part) => part.voice === voice)),
    ...time,
  ];
  const voices = played.map((part) => part.voice);
  const bars = exercise.parts[0]?.pattern.bars.length ?? 1;
  const limbs = [...new Set(voices.map((voice) => lesson.limbs[voice]))];
  return limbs.map((limb): Line => {
    const parts = played.filter((part) => lesson.limbs[part.voice] === limb);
    const beats = parts[0]?.pattern.bars.flat().map((_, beat) => beat) ?? [];
    const comping = parts[0]?.voice ?? lesson.comping;
    return {
      ground: readGround({ ...lesson, groove, comping }, bars, voices),
      cells: beats.map((beat) => mergeCells(parts.flatMap((part) => part.pattern.bars.flat()[beat] ?? []))),
    };
  });
}
