/**
 * Scripts: how the cells that a page is made of are played and written, by one limb or by two in dialogue.
 *
 * Conventions: a cell of a dialogue is called by the texts of its lines, `x../..x`, the comping voice's first; its
 * marks are those of the rhythm that both limbs make together.
 * Source: common practice: one rhythm is shared out between two limbs, each stroke to one, the other, or both.
 */
import {
  type Cell,
  cell,
  type Exercise,
  type ExercisePart,
  type Lesson,
  markFor,
  type Pattern,
  silentLike,
  struckSlots,
  type Voice,
} from '@shedbook/core';
import type { Ground } from './ground.ts';
import { type LimbCell, mergeCells } from './score.ts';

/** How the cells of a page are played, read and written. */
export interface Script {
  /** The text of the rhythm that limits go by. */
  rhythm(of: Cell): string;
  /** What each limb plays of a cell. */
  lines(of: Cell): readonly LimbCell[];
  /** The cells of an exercise. */
  read(exercise: Exercise): readonly Cell[];
  /** The parts of an exercise that has these cells. */
  write(cells: readonly Cell[]): readonly ExercisePart[];
}

/** A cell of a dialogue. */
interface JointCell extends Cell {
  readonly rhythm: string;
  readonly upper: Cell;
  readonly lower: Cell;
}

/** Cells with more strokes than this are played in turn, or in unison throughout. */
const MIXED_AT_MOST = 2;

/** Cells as bars of so many beats. */
export function splitBars(cells: readonly Cell[], beats: number): Pattern {
  const bars = cells.length / beats;
  return { bars: Array.from({ length: bars }, (_, bar) => cells.slice(bar * beats, (bar + 1) * beats)) };
}

/** What a voice plays in an exercise: silence where it has no part. */
function cellsOfVoice(exercise: Exercise, voice: Voice): readonly Cell[] {
  const part = exercise.parts.find((each) => each.voice === voice);
  const first = exercise.parts[0]?.pattern.bars.flat() ?? [];
  return part?.pattern.bars.flat() ?? first.map(silentLike);
}

/** One limb plays what is written. */
export function soloScript(lesson: Lesson, ground: Ground): Script {
  return {
    rhythm: (of) => of.text,
    lines: (of) => [{ ground, cell: of }],
    read: (exercise) =>
      (
        exercise.parts.find((each) => each.voice === lesson.comping) ?? exercise.parts[0]
      )?.pattern.bars.flat() ?? [],
    write: (cells) => [{ voice: lesson.comping, pattern: splitBars(cells, lesson.meter.beats.length) }],
  };
}

function joined(upper: Cell, lower: Cell): JointCell {
  const rhythm = mergeCells([upper, lower]);
  return { text: `${upper.text}/${lower.text}`, marks: rhythm.marks, rhythm: rhythm.text, upper, lower };
}

type Sharer = 'upper' | 'lower' | 'both';

/** Every way to share so many strokes. */
function sharings(strokes: number): readonly (readonly Sharer[])[] {
  const who: readonly Sharer[] = strokes > MIXED_AT_MOST ? ['upper', 'lower'] : ['upper', 'lower', 'both'];
  let ways: readonly (readonly Sharer[])[] = [[]];
  for (let i = 0; i < strokes; i += 1) ways = ways.flatMap((way) => who.map((each) => [...way, each]));
  return strokes > MIXED_AT_MOST ? [...ways, new Array<Sharer>(strokes).fill('both')] : ways;
}

/** Every way in which two voices can share the cells of a vocabulary. */
export function jointCells(vocabulary: readonly Cell[], voices: readonly [Voice, Voice]): readonly Cell[] {
  const [upper, lower] = voices;
  return vocabulary.flatMap((each) => {
    const slots = struckSlots(each);
    return sharings(slots.length).map((way) => {
      const line = (voice: Voice, mine: Sharer) =>
        cell(
          each.marks
            .map((mark, slot) => {
              const who = way[slots.indexOf(slot)];
              return who === mine || who === 'both' ? markFor(voice, mark) : '.';
            })
            .join(''),
        );
      return joined(line(upper, 'upper'), line(lower, 'lower'));
    });
  });
}

/** Two limbs in dialogue; cells must come from {@link jointCells} or from `read`. */
export function dialogueScript(
  lesson: Lesson,
  voices: readonly [Voice, Voice],
  grounds: readonly [Ground, Ground],
): Script {
  const [upper, lower] = voices;
  const beats = lesson.meter.beats.length;
  const joint = (of: Cell) => of as JointCell;
  return {
    rhythm: (of) => joint(of).rhythm,
    lines: (of) => [
      { ground: grounds[0], cell: joint(of).upper },
      { ground: grounds[1], cell: joint(of).lower },
    ],
    read: (exercise) => {
      const below = cellsOfVoice(exercise, lower);
      return cellsOfVoice(exercise, upper).map((each, beat) => joined(each, below[beat] ?? each));
    },
    write: (cells) => [
      {
        voice: upper,
        pattern: splitBars(
          cells.map((of) => joint(of).upper),
          beats,
        ),
      },
      {
        voice: lower,
        pattern: splitBars(
          cells.map((of) => joint(of).lower),
          beats,
        ),
      },
    ],
  };
}
