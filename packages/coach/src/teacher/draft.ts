/**
 * The draft of what a student is set next: what was set and how far it has come, what slips, and what is new.
 *
 * Conventions: a proposal, which the teacher changes; tempi in quarter notes a minute, in facts in beats of the meter.
 * What the teacher passed stands above what was heard. What is done is named too, as left out, so that nothing
 * disappears unsaid.
 * Differs from the plan of a day: no minutes and no turns, and as many exercises as a week has room for (our choice).
 */
import { countedTempo, type PracticeLog } from '@shedbook/core';
import type { DraftReasonFact } from '../fact.ts';
import { CLEAN_LOOPS } from '../ladder/ladder.ts';
import { type ExerciseStanding, standExercises } from '../mastery/exercises.ts';
import { identityOf } from '../mastery/identity.ts';
import { aimBpmOf } from '../plan/aim.ts';
import { resumeBpm } from '../plan/lay-out.ts';
import type { Assignment } from '../plan/plan-item.ts';
import { momentOf } from '../time/moment.ts';
import { whyUnsteady } from './next.ts';
import { type StudentFile, summariseStudent } from './summary.ts';

/** An exercise of a draft. */
export interface DraftItem {
  readonly exercise: ExerciseStanding;
  /** The names that it is set under. */
  readonly lesson: string;
  readonly key: string;
  readonly pinned: boolean;
  readonly note: string | null;
  /** The tempo that it is proposed for, in quarter notes a minute. */
  readonly toBpm: number;
  readonly why: DraftReasonFact;
  /** Whether it is proposed; what is done is not. */
  readonly isTaken: boolean;
}

/** Exercises up to which a draft is filled (our choice): with warm-up and time, half an hour has room for as many. */
const MOST_EXERCISES = 4;

/** Steps that a week goes on by, from where it has come (our choice). */
const STEPS_A_WEEK = 2;

/** A week further than a tempo, at most the goal. */
function further(bpm: number, { lesson }: ExerciseStanding): number {
  const { goalBpm, stepBpm } = lesson.tempo;
  return Math.max(bpm, Math.min(goalBpm, bpm + STEPS_A_WEEK * stepBpm));
}

/** The fastest that the teacher passed of each exercise, by its item. */
function passedTempi({ shelf, log }: { readonly log: PracticeLog } & Pick<StudentFile, 'shelf'>) {
  const { itemOf } = identityOf(shelf);
  const passed = new Map<string, number>();
  for (const { heardBy, lesson, exercise, loops } of log.entries) {
    if (heardBy !== 'teacher') continue;
    const item = itemOf(lesson, exercise);
    for (const { bpm } of loops) passed.set(item, Math.max(bpm, passed.get(item) ?? 0));
  }
  return passed;
}

type Judged = Pick<DraftItem, 'toBpm' | 'why' | 'isTaken'>;

/** What becomes of something that was set. */
function judged(exercise: ExerciseStanding, assignment: Assignment, passed: number | null): Judged {
  const { standing, cleanBpm, lesson } = exercise;
  const aim = aimBpmOf(assignment, exercise);
  const counted = (bpm: number) => countedTempo(lesson.meter, bpm);
  const { goalBpm } = lesson.tempo;
  const best = Math.max(passed ?? 0, cleanBpm ?? 0);
  const isTaken = assignment.pinned;
  if (standing === 'shaky') return { toBpm: aim, why: whyUnsteady(exercise), isTaken: true };
  if (passed !== null && passed >= Math.max(aim, goalBpm))
    return { toBpm: aim, why: { fact: 'done-passed', bpm: counted(passed) }, isTaken };
  if (standing === 'firm')
    return { toBpm: aim, why: { fact: 'done-firm', bpm: counted(Math.max(best, goalBpm)) }, isTaken };
  if (best >= aim && best > 0) {
    const toBpm = further(best, exercise);
    const fact = passed === best ? 'set-passed' : 'set-clean';
    return { toBpm, why: { fact, bpm: counted(best), aimBpm: counted(toBpm) }, isTaken: true };
  }
  if (best > 0)
    return {
      toBpm: aim,
      why: { fact: 'set-not-there', bpm: counted(best), aimBpm: counted(aim) },
      isTaken: true,
    };
  const why: DraftReasonFact =
    standing === 'new' ? { fact: 'set-not-played' } : { fact: 'set-not-clean', times: CLEAN_LOOPS };
  return { toBpm: aim, why, isTaken: true };
}

function setBefore(student: StudentFile, standings: readonly ExerciseStanding[]): readonly DraftItem[] {
  const { itemOf } = identityOf(student.shelf);
  const byItem = new Map(standings.map((standing) => [standing.item, standing]));
  const passed = passedTempi(student);
  const seen = new Set<string>();
  return student.assignments.flatMap((assignment): DraftItem[] => {
    const item = itemOf(assignment.lesson, assignment.exercise);
    const exercise = byItem.get(item);
    if (!exercise || seen.has(item)) return [];
    seen.add(item);
    const { lesson, exercise: key, pinned, note } = assignment;
    return [
      { exercise, lesson, key, pinned, note, ...judged(exercise, assignment, passed.get(item) ?? null) },
    ];
  });
}

/** Something that is not set yet. */
function added(exercise: ExerciseStanding, why: DraftReasonFact, isTaken: boolean): DraftItem {
  const { id: lesson, key } = exercise;
  const toBpm = further(resumeBpm(exercise), exercise);
  return { exercise, lesson, key, pinned: false, note: null, toBpm, why, isTaken };
}

/**
 * What a student could be set next, in order: what was set in its order, what slips, what comes next. While something
 * that was set is not played yet, what is new is named and not proposed.
 */
export function draftNext(student: StudentFile, now: string): readonly DraftItem[] {
  const standings = standExercises(student.shelf, student.log, momentOf(now).day);
  const before = setBefore(student, standings);
  const draft = [...before];
  const waits = before.some(({ exercise }) => exercise.standing === 'new');
  const add = (exercise: ExerciseStanding, why: DraftReasonFact) => {
    const taken = draft.filter(({ isTaken }) => isTaken).length;
    const isThere = draft.some((each) => each.exercise.item === exercise.item);
    const isTaken = !(waits && exercise.standing === 'new');
    if (!isThere && taken < MOST_EXERCISES) draft.push(added(exercise, why, isTaken));
  };
  if (student.isSilent) return draft;
  const { shaky, next } = summariseStudent(student, now);
  for (const each of shaky) add(each, whyUnsteady(each));
  if (next) add(next.exercise, next.why);
  return draft;
}
