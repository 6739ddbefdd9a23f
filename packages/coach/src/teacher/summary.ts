/**
 * The teacher's view of a student: what is firm, what is shaky, what is due, what to give next and why.
 *
 * Conventions: no points and no ranking; students stand in the order of the roster. Days by each student's own
 * calendar.
 */
import type { PracticeLog } from '@shedbook/core';
import { type ExerciseStanding, standExercises } from '../mastery/exercises.ts';
import { identityOf, type ShelfLesson } from '../mastery/identity.ts';
import { type SkillStanding, standSkills } from '../mastery/standings.ts';
import { newInTurn } from '../plan/candidates.ts';
import { withoutPastClapping } from '../plan/comes-first.ts';
import type { Assignment } from '../plan/plan-item.ts';
import { lessonsOf } from '../plan/student-plan.ts';
import { momentOf } from '../time/moment.ts';
import { easiestStart } from './first-start.ts';
import { type Suggestion, shakySkills, suggestNext } from './next.ts';

/** What the teacher has of a student. */
export interface StudentFile {
  readonly name: string;
  readonly shelf: readonly ShelfLesson[];
  readonly log: PracticeLog;
  readonly assignments: readonly Assignment[];
  /** Whether the teacher has told the coach to propose nothing. */
  readonly isSilent?: boolean;
}

/** How a student stands. */
export interface StudentSummary {
  readonly name: string;
  readonly firm: readonly ExerciseStanding[];
  readonly shaky: readonly ExerciseStanding[];
  readonly learning: readonly ExerciseStanding[];
  /** Due by spacing, whatever their standing. */
  readonly due: readonly ExerciseStanding[];
  /** Worst first. */
  readonly shakySkills: readonly SkillStanding[];
  readonly next: Suggestion | null;
  /** Played in the last seven days, in minutes. */
  readonly minutesThisWeek: number;
  /** Day of the last entry up to today, or null. */
  readonly lastDay: number | null;
}

const DAYS_A_WEEK = 7;

function minutesSince(log: PracticeLog, day: number, today: number): number {
  const seconds = log.entries
    .filter((entry) => {
      const played = momentOf(entry.startedAt).day;
      return played > day && played <= today;
    })
    .reduce((sum, entry) => sum + entry.durationSeconds, 0);
  return seconds === 0 ? 0 : Math.max(1, Math.round(seconds / 60));
}

/** Whether something is set for a student, by what it is the same as on a shelf. */
function setOn(shelf: readonly ShelfLesson[], { assignments }: StudentFile) {
  const { itemOf } = identityOf(shelf);
  const assigned = new Set(assignments.map((each) => itemOf(each.lesson, each.exercise)));
  return ({ item }: ExerciseStanding) => assigned.has(item);
}

/**
 * What to give next: of the lessons that the student practises from, as their plan has it; then, where something was
 * heard, of all others. Who has no lesson yet gets the easiest start.
 */
function nextFor(
  student: StudentFile,
  standings: readonly ExerciseStanding[],
  skills: readonly SkillStanding[],
  today: number,
): Suggestion | null {
  const { shelf, log, assignments } = student;
  const own = lessonsOf(shelf, assignments, log);
  if (own.length === 0) return easiestStart(standings);
  const ownStandings = withoutPastClapping(own, standExercises(own, log, today));
  const inTurn = newInTurn(ownStandings, { shelf: own, log, assignments });
  const next = suggestNext(ownStandings, skills, setOn(own, student), inTurn);
  return next || skills.length === 0
    ? next
    : suggestNext(withoutPastClapping(shelf, standings), skills, setOn(shelf, student));
}

/** How one student stands at the moment `now`. */
export function summariseStudent(student: StudentFile, now: string): StudentSummary {
  const { day: today } = momentOf(now);
  const standings = standExercises(student.shelf, student.log, today);
  const skills = standSkills(student.shelf, student.log, today);
  const of = (standing: ExerciseStanding['standing']) =>
    standings.filter((each) => each.standing === standing);
  // What a clock that was ahead has dated later counts when its day has come, here as in every standing.
  const last = student.log.entries.findLast(
    ({ heardBy, startedAt }) => heardBy !== 'teacher' && momentOf(startedAt).day <= today,
  );
  return {
    name: student.name,
    firm: of('firm'),
    shaky: of('shaky'),
    learning: of('learning'),
    due: standings.filter(({ evidence }) => evidence !== null && evidence.dueDay <= today),
    shakySkills: shakySkills(skills),
    next: student.isSilent ? null : nextFor(student, standings, skills, today),
    minutesThisWeek: minutesSince(student.log, today - DAYS_A_WEEK, today),
    lastDay: last ? momentOf(last.startedAt).day : null,
  };
}

/** How every student of a roster stands, in the order of the roster. */
export function summariseRoster(roster: readonly StudentFile[], now: string): readonly StudentSummary[] {
  return roster.map((student) => summariseStudent(student, now));
}
