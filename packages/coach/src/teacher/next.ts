/**
 * What to give a student next, and why.
 *
 * Conventions: a skill is shaky when it was tried often enough and went well too seldom (our choice of both). The
 * exercise that needs a shaky skill with the least else that is new comes first.
 */

import { limbName } from '@shedbook/judge';
import type { ExerciseStanding } from '../mastery/exercises.ts';
import { type Skill, sayCells, skillsOf } from '../mastery/skills.ts';
import type { SkillStanding } from '../mastery/standings.ts';
import { resumeBpm } from '../plan/lay-out.ts';

/** A suggestion to the teacher. */
export interface Suggestion {
  readonly exercise: ExerciseStanding;
  /** One or two sentences. */
  readonly why: string;
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

function sayList(words: readonly string[]): string {
  const [last, ...before] = words.toReversed();
  return before.length === 0 ? `${last}` : `${before.toReversed().join(', ')} and ${last}`;
}

function saySkill(skill: Skill, { lesson }: ExerciseStanding): string {
  const over = skill.over.map((limb) => limbName(limb, lesson.setUp));
  const company = over.length === 0 ? '' : ` with ${sayList(over)}`;
  return `${sayCells(skill)} in the ${limbName(skill.limb, lesson.setUp)}${company}`;
}

function forShaky(options: readonly Option[], shaky: SkillStanding): Suggestion | null {
  const found = options.find(({ skills }) => skills.some(({ id }) => id === shaky.skill.id));
  if (!found) return null;
  const percent = Math.round(shaky.evidence.share * 100);
  const why = `${saySkill(shaky.skill, found.exercise)} holds about ${percent} times in 100.`;
  const isNew = found.exercise.standing === 'new';
  const more = isNew
    ? `This one needs it, and ${found.unknown.length === 0 ? 'nothing else' : `${found.unknown.length} more`} that ${found.unknown.length > 1 ? 'are' : 'is'} new.`
    : `Give this one again, from ${resumeBpm(found.exercise)}.`;
  return { exercise: found.exercise, why: `${why} ${more}` };
}

function forFresh(option: Option, isFirst: boolean): Suggestion {
  const first = option.unknown[0];
  const adds = first
    ? `it adds ${saySkill(first, option.exercise)}${option.unknown.length > 1 ? ` and ${option.unknown.length - 1} more` : ''}`
    : 'it needs nothing that was not heard before';
  const lead = isFirst ? 'To begin with' : 'Nothing that was heard is shaky; of what is new, this is nearest';
  return { exercise: option.exercise, why: `${lead}: ${adds}.` };
}

/** What to give next, or null when everything on the shelf is firm or set already. */
export function suggestNext(
  standings: readonly ExerciseStanding[],
  skills: readonly SkillStanding[],
  isAssigned: (standing: ExerciseStanding) => boolean,
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
  if (unsteady) {
    const where = unsteady.sore ? `: listen for the ${unsteady.sore.says}` : '';
    return {
      exercise: unsteady,
      why: `Not steady when last played${where}. Again, from ${resumeBpm(unsteady)}.`,
    };
  }
  return fresh[0] ? forFresh(fresh[0], known.size === 0) : null;
}
