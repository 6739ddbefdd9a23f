/**
 * Skills inside an exercise: each cell, and each move from one cell to the next, over what the other limbs play.
 *
 * Conventions: cells without accents (`X` is `x`): the hands have to find the same places. A silent beat is where a
 * move may come from, not a skill. Bars and beats from 1, counted from the start of the loop. The move into the first beat comes from the last one where the pattern goes
 * round. Beats of time alone and beats that a fixed ending replaces are left out.
 */
import {
  barsOf,
  cell,
  type Exercise,
  type Form,
  isRest,
  type Lesson,
  LIMBS,
  type Limb,
  type PerformedBar,
  perform,
  type SetUp,
  type Stroke,
  sideOf,
} from '@shedbook/core';
import type { SkillFact } from '../fact.ts';

/** A cell, or a move from one cell to another, by one limb over others. */
export interface Skill {
  readonly id: string;
  /** The cell before, or null for the cell alone. */
  readonly from: string | null;
  readonly to: string;
  readonly limb: Limb;
  /** Limbs that play in the same beat, in the order of `LIMBS`. */
  readonly over: readonly Limb[];
}

/** A skill and a beat that needs it. */
export interface SkillUse {
  readonly skill: Skill;
  readonly bar: number;
  readonly beat: number;
}

function skillOf(from: string | null, to: string, limb: Limb, over: readonly Limb[]): Skill {
  return { id: JSON.stringify([from, to, limb, over]), from, to, limb, over };
}

interface Beat {
  readonly bar: number;
  readonly beat: number;
  readonly text: string;
}

/** The cells of one part, beat by beat, through the bars that play the pattern. */
function beatsOf(exercise: Exercise, part: number, bars: readonly PerformedBar[]): readonly Beat[] {
  const pattern = exercise.parts[part]?.pattern;
  return bars.flatMap(({ bar, play, patternBar }) => {
    if (play !== 'pattern' || patternBar === null) return [];
    const cells = pattern?.bars[patternBar % barsOf(exercise)] ?? [];
    return cells.map((cell, beat) => ({ bar, beat: beat + 1, text: cell.text.toLowerCase() }));
  });
}

function isSilent(text: string): boolean {
  return isRest(cell(text));
}

function usesOfPart(lesson: Lesson, beats: readonly Beat[], limb: Limb, strokes: readonly Stroke[]) {
  const at = ({ bar, beat }: Beat) =>
    strokes.filter(({ written }) => written.bar === bar && written.beat === beat);
  const perBar = lesson.meter.beats.length;
  const position = ({ bar, beat }: Beat) => (bar - 1) * perBar + beat;
  return beats.flatMap((beat, index): SkillUse[] => {
    if (isSilent(beat.text)) return [];
    const here = at(beat);
    if (here.some((stroke) => stroke.role === 'ending')) return [];
    const over = LIMBS.filter((each) => each !== limb && here.some((stroke) => stroke.limb === each));
    const before = beats[index - 1] ?? beats.at(-1);
    const follows = index === 0 || (before && position(beat) - position(before) === 1);
    const use = (from: string | null): SkillUse => ({
      skill: skillOf(from, beat.text, limb, over),
      bar: beat.bar,
      beat: beat.beat,
    });
    return before && follows ? [use(null), use(before.text)] : [use(null)];
  });
}

/** Every use of every skill in one loop of an exercise. */
export function skillsInLoop(lesson: Lesson, exercise: Exercise, form: Form): readonly SkillUse[] {
  const once = { ...form, repeat: 1, countInBars: 0 };
  const { bars, strokes } = perform(lesson, { exercise: exercise.number, form: once });
  return exercise.parts.flatMap((part, index) =>
    usesOfPart(lesson, beatsOf(exercise, index, bars), lesson.limbs[part.voice], strokes),
  );
}

/** The pattern of an exercise as a form: its bars once. */
export function patternForm(exercise: Exercise): Form {
  const section = { play: 'pattern' as const, bars: barsOf(exercise), ending: null };
  return { name: 'pattern', sections: [section], repeat: 1, countInBars: 0 };
}

/** The different skills that an exercise needs. */
export function skillsOf(lesson: Lesson, exercise: Exercise): readonly Skill[] {
  const uses = skillsInLoop(lesson, exercise, patternForm(exercise));
  return [...new Map(uses.map(({ skill }) => [skill.id, skill])).values()];
}

/** A skill as a fact, its limbs by their sides. */
export function tellSkill({ from, to, limb, over }: Skill, setUp: SetUp): SkillFact {
  const cells: SkillFact['cells'] =
    from === null ? { fact: 'cell', cell: to } : { fact: 'cell-move', from, to };
  const own = { cells, limb: sideOf(limb, setUp) };
  if (over.length === 0) return { fact: 'skill-alone', ...own };
  return { fact: 'skill-over', ...own, over: over.map((each) => sideOf(each, setUp)) };
}
