/**
 * What a vocabulary has that one limb cannot play at the goal tempo, and that no page therefore asks for.
 *
 * Conventions: strokes a second at the goal tempo; cells and moves by their texts, in the order of the vocabulary.
 */
import type { ComposeLimits, PatternRules } from '@shedbook/core';
import type { CellMove } from './cell-move.ts';
import type { Ground } from './ground.ts';
import { isPlayable, speedLimit, strokeTimes } from './hand-speed.ts';
import type { Script } from './script.ts';

/** Cells and moves that are left out. */
export interface TooFast {
  readonly cells: readonly string[];
  /** Between cells that can be played by themselves. */
  readonly moves: readonly CellMove[];
}

/** What of the vocabulary is too fast on every beat. */
export function tooFast(
  ground: Ground,
  { cells }: PatternRules,
  limits: ComposeLimits,
  script: Pick<Script, 'lines'>,
): TooFast {
  const beats = Array.from({ length: ground.meter.beats.length }, (_, beat) => beat);
  const lines = cells.map((cell) => script.lines(cell));
  const timesOf = (beat: number, cell: number) =>
    (lines[cell] ?? []).map((line) => strokeTimes(line.ground, beat, line.cell));
  const limitOf = (cell: number, line: number) =>
    speedLimit(lines[cell]?.[line]?.ground ?? ground, limits.handSpeed);
  const canStrike = (cell: number) =>
    beats.some((beat) => timesOf(beat, cell).every((times, line) => isPlayable(times, limitOf(cell, line))));
  const canMove = (from: number, to: number) =>
    beats.some((beat) => {
      const next = timesOf((beat + 1) % ground.length, to);
      const length = ground.beatSeconds(beat);
      return timesOf(beat, from).every((times, line) =>
        isPlayable([...times, ...(next[line] ?? []).map((time) => time + length)], limitOf(from, line)),
      );
    });
  const playable = cells.map((_, cell) => canStrike(cell));
  const textOf = (cell: number) => cells[cell]?.text ?? '';
  const moves = cells.flatMap((_, from) =>
    cells.flatMap((__, to) =>
      playable[from] && playable[to] && !canMove(from, to) ? [{ from: textOf(from), to: textOf(to) }] : [],
    ),
  );
  return { cells: cells.filter((_, cell) => !playable[cell]).map(({ text }) => text), moves };
}
