/**
 * What could be played today, and in which order of urgency: what the teacher set, one new thing, what is due.
 *
 * Conventions: due means due by spacing on the student's own day. How many unfinished exercises are enough is our
 * choice.
 */
import type {
  AssignedFact,
  PlanNoteFact,
  PlanReasonFact,
  PlayedBeforeFact,
  PlayedCleanFact,
} from '../fact.ts';
import { itemKey } from '../log/key.ts';
import { type ExerciseStanding, standExercises } from '../mastery/exercises.ts';
import { momentOf } from '../time/moment.ts';
import type { Assignment, PlanKind, PlanTask } from './plan-item.ts';

/** An exercise that could be played today. */
export interface Candidate {
  readonly kind: PlanKind;
  readonly standing: ExerciseStanding;
  readonly reason: PlanReasonFact;
}

/** Everything that could be played today, each exercise once. */
export interface Candidates {
  readonly assigned: readonly Candidate[];
  /** At most one. */
  readonly fresh: readonly Candidate[];
  /** Least likely to be still there first. */
  readonly due: readonly Candidate[];
  /** Unfinished and not due. */
  readonly unfinished: readonly Candidate[];
  readonly notes: readonly PlanNoteFact[];
}

/** With this many unfinished exercises nothing new is begun. */
const ENOUGH_UNFINISHED = 4;

function keyOf(standing: ExerciseStanding): string {
  return itemKey(standing.id, standing.key);
}

function isDue(standing: ExerciseStanding, today: number): boolean {
  return standing.evidence !== null && standing.evidence.dueDay <= today;
}

/** The teacher's list in the teacher's order, pinned ones first; what is firm and not due can wait. */
function assignedOf(
  standings: readonly ExerciseStanding[],
  assignments: readonly Assignment[],
  today: number,
): readonly Candidate[] {
  const byKey = new Map(standings.map((standing) => [keyOf(standing), standing]));
  const ordered = [
    ...assignments.filter((each) => each.pinned),
    ...assignments.filter((each) => !each.pinned),
  ];
  const seen = new Set<string>();
  return ordered.flatMap((assignment): Candidate[] => {
    const key = itemKey(assignment.lesson, assignment.exercise);
    const standing = byKey.get(key);
    if (!standing || seen.has(key)) return [];
    if (!assignment.pinned && standing.standing === 'firm' && !isDue(standing, today)) return [];
    seen.add(key);
    const what: AssignedFact = { fact: assignment.pinned ? 'teacher-pinned' : 'teacher-set' };
    const { note } = assignment;
    return [{ kind: 'assigned', standing, reason: note ? { fact: 'teacher-noted', what, note } : what }];
  });
}

function playedBefore(
  { standing, evidence, cleanBpm, lesson }: ExerciseStanding,
  today: number,
): PlayedBeforeFact | PlayedCleanFact {
  const day = (evidence?.lastDay ?? today) - today;
  if (standing === 'shaky' || standing === 'firm') return { fact: `played-${standing}`, day };
  if (cleanBpm === null) return { fact: 'played-learning', day };
  return { fact: 'played-clean', day, bpm: cleanBpm, goalBpm: lesson.tempo.goalBpm };
}

function reviewReason(standing: ExerciseStanding, today: number): PlanReasonFact {
  const what = playedBefore(standing, today);
  const sore = standing.sore?.told;
  return sore ? { fact: 'listen-for', what, sore } : what;
}

/** The lesson that was practised last stands first; otherwise the order of the shelf. */
function lessonOrder(task: PlanTask): readonly string[] {
  const last = task.log.entries.at(-1)?.lesson;
  const ids = task.shelf.map((each) => each.id);
  return ids.toSorted((a, b) => Number(b === last) - Number(a === last));
}

function freshOf(standings: readonly ExerciseStanding[], order: readonly string[]): readonly Candidate[] {
  const next = standings
    .filter(({ standing }) => standing === 'new')
    .toSorted((a, b) => order.indexOf(a.id) - order.indexOf(b.id))[0];
  return next ? [{ kind: 'new', standing: next, reason: { fact: 'new-today' } }] : [];
}

function notesOf(task: PlanTask, standings: readonly ExerciseStanding[], tooMuch: number | null) {
  const known = new Set(standings.map(keyOf));
  const lost = task.assignments.filter((each) => !known.has(itemKey(each.lesson, each.exercise))).length;
  const notes: PlanNoteFact[] = [];
  if (lost > 0) notes.push({ fact: 'set-and-gone', exercises: lost });
  if (tooMuch !== null) notes.push({ fact: 'nothing-new', exercises: tooMuch });
  return notes;
}

/** Everything that could be played today. */
export function findCandidates(task: PlanTask): Candidates {
  const today = momentOf(task.now).day;
  const standings = standExercises(task.shelf, task.log, today);
  const assigned = assignedOf(standings, task.assignments, today);
  const taken = new Set(assigned.map(({ standing }) => keyOf(standing)));
  const rest = standings.filter((standing) => !taken.has(keyOf(standing)));
  const review = (standing: ExerciseStanding): Candidate => ({
    kind: 'review',
    standing,
    reason: reviewReason(standing, today),
  });
  const due = rest
    .filter((standing) => isDue(standing, today))
    .toSorted((a, b) => (a.evidence?.retrievability ?? 0) - (b.evidence?.retrievability ?? 0));
  const begun = standings.filter(({ standing }) => standing === 'learning' || standing === 'shaky');
  const unfinished = rest.filter((standing) => begun.includes(standing) && !isDue(standing, today));
  const hasNew = assigned.some(({ standing }) => standing.standing === 'new');
  const isEnough = begun.length >= ENOUGH_UNFINISHED;
  return {
    assigned,
    fresh: hasNew || isEnough ? [] : freshOf(rest, lessonOrder(task)),
    due: due.map(review),
    unfinished: unfinished.map(review),
    notes: notesOf(task, standings, isEnough && !hasNew ? begun.length : null),
  };
}
