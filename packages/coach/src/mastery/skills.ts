/**
 * Skills inside an exercise: each cell, and each move from one cell to the next, over what the other limbs play. What is
 * clapped is a skill of its own, and what two hands play in turn is one of both.
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
  homeOf,
  isRest,
  type Lesson,
  LIMBS,
  type Limb,
  type PerformedBar,
  perform,
  type SetUp,
  type Stroke,
  sideOf,
  type Voice,
} from '@shedbook/core';
import type { SkillFact } from '../fact.ts';

/** Who plays a skill: one limb, two hands in turn such as `R L`, or both clapping. */
export type SkillPlayer = { readonly limb: Limb } | { readonly hands: string } | { readonly claps: true };

/** A cell, or a move from one cell to another, by one limb or two hands over others. */
export interface Skill {
  readonly id: string;
  /** The cell before, or null for the cell alone. */
  readonly from: string | null;
  readonly to: string;
  readonly by: SkillPlayer;
  /** Limbs that play in the same beat, in the order of `LIMBS`. */
  readonly over: readonly Limb[];
}

/** A skill and a beat that needs it. */
export interface SkillUse {
  readonly skill: Skill;
  readonly bar: number;
  readonly beat: number;
}

function skillOf(from: string | null, to: string, by: SkillPlayer, over: readonly Limb[]): Skill {
  return { id: JSON.stringify([from, to, by, over]), from, to, by, over };
}

function isWrittenUnder(voice: Voice, { voice: sounding }: Stroke): boolean {
  return sounding === voice || (sounding !== 'click' && homeOf(sounding) === voice);
}

/** Who plays some strokes of one voice. */
function playerOf(voice: Voice, own: readonly Stroke[], usual: Limb): SkillPlayer {
  if (voice === 'clap') return { claps: true };
  const limbs = new Set(own.map(({ limb }) => limb));
  const hands = own.map(({ sticking }) => sticking);
  if (limbs.size > 1 || hands.includes('B')) return { hands: hands.join(' ') };
  return { limb: own[0]?.limb ?? usual };
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

function usesOfPart(lesson: Lesson, beats: readonly Beat[], voice: Voice, strokes: readonly Stroke[]) {
  const at = ({ bar, beat }: Beat) =>
    strokes.filter(({ written }) => written.bar === bar && written.beat === beat);
  const perBar = lesson.meter.beats.length;
  const position = ({ bar, beat }: Beat) => (bar - 1) * perBar + beat;
  return beats.flatMap((beat, index): SkillUse[] => {
    if (isSilent(beat.text)) return [];
    const here = at(beat);
    if (here.some((stroke) => stroke.role === 'ending')) return [];
    const own = here.filter((stroke) => stroke.role === 'pattern' && isWrittenUnder(voice, stroke));
    const by = playerOf(voice, own, lesson.limbs[voice]);
    const isOwn = (limb: Limb) => limb === lesson.limbs[voice] || own.some((stroke) => stroke.limb === limb);
    const over = LIMBS.filter((each) => !isOwn(each) && here.some((stroke) => stroke.limb === each));
    const before = beats[index - 1] ?? beats.at(-1);
    const follows = index === 0 || (before && position(beat) - position(before) === 1);
    const use = (from: string | null): SkillUse => ({
      skill: skillOf(from, beat.text, by, over),
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
    usesOfPart(lesson, beatsOf(exercise, index, bars), part.voice, strokes),
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
export function tellSkill({ from, to, by, over }: Skill, setUp: SetUp): SkillFact {
  const cells: SkillFact['cells'] =
    from === null ? { fact: 'cell', cell: to } : { fact: 'cell-move', from, to };
  if ('claps' in by) return { fact: 'skill-clapped', cells };
  if ('hands' in by) return { fact: 'skill-hands', cells, hands: by.hands };
  const own = { cells, limb: sideOf(by.limb, setUp) };
  if (over.length === 0) return { fact: 'skill-alone', ...own };
  return { fact: 'skill-over', ...own, over: over.map((each) => sideOf(each, setUp)) };
}
