/**
 * How each skill stands, from every loop of every exercise that needs it.
 *
 * Conventions: a use of a skill went well when nothing was wrong on its beat, whichever limb. Faults that hold
 * throughout say nothing about a single cell and are left out. Only what an ear heard counts: a student's own
 * verdict does not say where.
 */
import type { LoopRecord, PracticeEntry, PracticeLog } from '@shedbook/core';
import type { ReviewGrade } from '../spacing/card.ts';
import { momentOf } from '../time/moment.ts';
import { type DayEvidence, type Evidence, weighEvidence } from './evidence.ts';
import { identityOf, type ShelfLesson } from './identity.ts';
import { exercisesOf, type ShelfExercise } from './shelf.ts';
import { type Skill, type SkillUse, skillsInLoop } from './skills.ts';

/** How one skill stands. */
export interface SkillStanding {
  readonly skill: Skill;
  readonly evidence: Evidence;
}

interface Tally {
  readonly skill: Skill;
  readonly days: Map<number, { tries: number; successes: number }>;
}

const GOOD_SHARE = 0.9;
const HARD_SHARE = 0.6;

function gradeShare(share: number): ReviewGrade {
  return share >= GOOD_SHARE ? 'good' : share >= HARD_SHARE ? 'hard' : 'again';
}

function isFaulty(loop: LoopRecord, use: SkillUse): boolean {
  return loop.faults.some(({ place }) => place?.bar === use.bar && place.beat === use.beat);
}

function tallyEntry(tallies: Map<string, Tally>, uses: readonly SkillUse[], entry: PracticeEntry): void {
  const { day } = momentOf(entry.startedAt);
  const loops = entry.loops.filter((loop) => loop.verdict !== 'unheard');
  for (const use of uses) {
    const tally = tallies.get(use.skill.id) ?? { skill: use.skill, days: new Map() };
    tallies.set(use.skill.id, tally);
    const sum = tally.days.get(day) ?? { tries: 0, successes: 0 };
    const successes = loops.filter((loop) => !isFaulty(loop, use)).length;
    tally.days.set(day, { tries: sum.tries + loops.length, successes: sum.successes + successes });
  }
}

function usesOf(shelf: readonly ShelfLesson[]): (entry: PracticeEntry) => readonly SkillUse[] {
  const { itemOf } = identityOf(shelf);
  const exercises = new Map(exercisesOf(shelf).map((each) => [each.item, each]));
  const known = new Map<string, readonly SkillUse[]>();
  const compute = (each: ShelfExercise, name: string) => {
    const form = each.lesson.forms.find((candidate) => candidate.name === name);
    return form ? skillsInLoop(each.lesson, each.exercise, form) : [];
  };
  return (entry) => {
    const item = itemOf(entry.lesson, entry.exercise);
    const key = `${item} ${entry.form}`;
    const exercise = exercises.get(item);
    const uses = known.get(key) ?? (exercise ? compute(exercise, entry.form) : []);
    known.set(key, uses);
    return uses;
  };
}

function daysOf(tally: Tally): readonly DayEvidence[] {
  return [...tally.days]
    .toSorted(([a], [b]) => a - b)
    .filter(([, { tries }]) => tries > 0)
    .map(([day, { tries, successes }]) => ({ day, tries, successes, grade: gradeShare(successes / tries) }));
}

/** How every skill that was ever heard stands on the day `today`, least sure first. */
export function standSkills(
  shelf: readonly ShelfLesson[],
  log: PracticeLog,
  today: number,
): readonly SkillStanding[] {
  const uses = usesOf(shelf);
  const tallies = new Map<string, Tally>();
  for (const entry of log.entries) {
    if (entry.heardBy !== 'ear' || momentOf(entry.startedAt).day > today) continue;
    tallyEntry(tallies, uses(entry), entry);
  }
  return [...tallies.values()]
    .flatMap((tally): SkillStanding[] => {
      const evidence = weighEvidence(daysOf(tally), today);
      return evidence ? [{ skill: tally.skill, evidence }] : [];
    })
    .toSorted((a, b) => a.evidence.confidence - b.evidence.confidence || (a.skill.id < b.skill.id ? -1 : 1));
}
