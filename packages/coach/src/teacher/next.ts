/**
 * What to give a student next, and why.
 *
 * Conventions: a skill is shaky when it was tried often enough and went well too seldom (our choice of both). The
 * exercise that needs a shaky skill with the least else that is new comes first.
 */

import { countedTempo, isClapped, isFirstNumber } from '@shedbook/core';
import type { NextNewFact, NotSteadyFact, NotSteadyThereFact, SuggestionFact } from '../fact.ts';
import type { ExerciseStanding } from '../mastery/exercises.ts';
import { type Skill, skillsOf, tellSkill } from '../mastery/skills.ts';
import type { SkillStanding } from '../mastery/standings.ts';
import { resumeBpm } from '../plan/lay-out.ts';
import { clappingAdds } from './clapping.ts';

/** A suggestion to the teacher. */
export interface Suggestion {
  readonly exercise: ExerciseStanding;
  readonly why: SuggestionFact;
}

const ENOUGH_TRIES = 6;
const SHAKY_SHARE = 0.8;

/** Skills that were tried often enough and went well too seldom, worst first; moves before their cells. */
export function shakySkills(skills: readonly SkillStanding[]): readonly SkillStanding[] {
  return skills
    .filter(({ evidence }) => evidence.tries >= ENOUGH_TRIES && evidence.share < SHAKY_SHARE)
    .toSorted(
      (a, b) =>
        a.evidence.share - b.evidence.share || Number(a.skill.from === null) - Number(b.skill.from === null),
    );
}

interface Option {
  readonly exercise: ExerciseStanding;
  readonly skills: readonly Skill[];
  /** Skills that were never heard. */
  readonly unknown: readonly Skill[];
}

function optionsOf(standings: readonly ExerciseStanding[], known: ReadonlySet<string>): readonly Option[] {
  return standings
    .map((exercise): Option => {
      const skills = skillsOf(exercise.lesson, exercise.exercise);
      return { exercise, skills, unknown: skills.filter((skill) => !known.has(skill.id)) };
    })
    .toSorted((a, b) => a.unknown.length - b.unknown.length);
}

function forShaky(options: readonly Option[], shaky: SkillStanding): Suggestion | null {
  const found = options.find(({ skills }) => skills.some(({ id }) => id === shaky.skill.id));
  if (!found) return null;
  const { exercise, unknown } = found;
  return {
    exercise,
    why: {
      fact: 'seldom-holds',
      skill: tellSkill(shaky.skill, exercise.lesson.setUp),
      percent: shaky.evidence.share * 100,
      follows:
        exercise.standing === 'new'
          ? { fact: 'needs-skill', more: unknown.length }
          : { fact: 'again-from', bpm: resumeBeats(exercise) },
    },
  };
}

/** Where to begin again, in beats of the meter a minute. */
function resumeBeats(exercise: ExerciseStanding): number {
  return countedTempo(exercise.lesson.meter, resumeBpm(exercise));
}

function addsOf(
  { exercise, skills, unknown }: Option,
  standings: readonly ExerciseStanding[],
): NextNewFact['adds'] {
  if (isClapped(exercise.exercise)) return clappingAdds(exercise, standings);
  if (skills.length === 0) return { fact: 'adds-groove' };
  const first = unknown[0];
  if (!first) return { fact: 'adds-nothing' };
  const skill = tellSkill(first, exercise.lesson.setUp);
  const more = unknown.length - 1;
  return more === 0 ? { fact: 'adds-skill', skill } : { fact: 'adds-skills', skill, more };
}

/** Whether a lesson begins with an exercise. */
export function isStart({ exercise }: ExerciseStanding): boolean {
  return isFirstNumber(exercise.number);
}

/** Whether something was begun and does not go well yet: it was clean at no tempo, or slipped on its last day. */
function isUnderWay({ standing, cleanBpm, sore }: ExerciseStanding): boolean {
  return standing === 'shaky' || (standing === 'learning' && (cleanBpm === null || sore !== null));
}

interface Fresh {
  readonly standings: readonly ExerciseStanding[];
  readonly isHeard: boolean;
  readonly isInTurn: boolean;
}

function forFresh(option: Option, { standings, isHeard, isInTurn }: Fresh): Suggestion {
  const { exercise } = option;
  if (!isHeard && isStart(exercise))
    return { exercise, why: { fact: 'begin-lesson', lesson: exercise.lesson.title } };
  const isBeside = standings.some(isUnderWay);
  const [next, nearest] = isBeside
    ? (['beside-next', 'beside-nearest'] as const)
    : (['next-on-sheet', 'nearest-new'] as const);
  const fact = !isHeard ? 'after-set' : isInTurn ? next : nearest;
  return { exercise, why: { fact, adds: addsOf(option, standings) } };
}

/** Why something that slips is given again, and from where. */
export function whyUnsteady(exercise: ExerciseStanding): NotSteadyFact | NotSteadyThereFact {
  const bpm = resumeBeats(exercise);
  const sore = exercise.sore?.told;
  return sore ? { fact: 'not-steady-there', sore, bpm } : { fact: 'not-steady', bpm };
}

/**
 * What to give next, or null when everything is firm or set already.
 * @param inTurn what is new, in the turn that it comes in; left out, what adds least is next
 */
export function suggestNext(
  standings: readonly ExerciseStanding[],
  skills: readonly SkillStanding[],
  isAssigned: (standing: ExerciseStanding) => boolean,
  inTurn?: readonly ExerciseStanding[],
): Suggestion | null {
  const known = new Set(skills.map(({ skill }) => skill.id));
  const open = standings.filter((standing) => standing.standing !== 'firm' && !isAssigned(standing));
  const fresh = optionsOf(
    open.filter(({ standing }) => standing === 'new'),
    known,
  );
  const begun = optionsOf(
    open.filter(({ standing }) => standing !== 'new'),
    known,
  );
  for (const shaky of shakySkills(skills)) {
    const suggestion = forShaky(fresh, shaky) ?? forShaky(begun, shaky);
    if (suggestion) return suggestion;
  }
  const unsteady = begun.find(({ exercise }) => exercise.standing === 'shaky')?.exercise;
  if (unsteady) return { exercise: unsteady, why: whyUnsteady(unsteady) };
  const first = inTurn?.find((standing) => !isAssigned(standing));
  const next = first ? fresh.find(({ exercise }) => exercise === first) : fresh[0];
  const fresher = { standings, isHeard: known.size > 0, isInTurn: first !== undefined };
  return next ? forFresh(next, fresher) : null;
}
