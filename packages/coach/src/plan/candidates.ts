/**
 * What could be played today, and in which order of urgency: what the teacher set, what is new, what is due, what is
 * on its way, and what is stuck.
 *
 * Conventions: due means due by spacing on the student's own day. What counts is how things stood in the morning, so
 * that a plan that is opened again is the same plan.
 */

import { countedTempo, isClapped } from '@shedbook/core';
import type { PracticePart } from '../apart/apart.ts';
import type {
  AimedFact,
  AssignedFact,
  PlanNoteFact,
  PlanReasonFact,
  PlayedBeforeFact,
  PlayedCleanFact,
} from '../fact.ts';
import { type ExerciseStanding, standExercises } from '../mastery/exercises.ts';
import { identityOf } from '../mastery/identity.ts';
import { momentOf } from '../time/moment.ts';
import { aimBpmOf, tellAim } from './aim.ts';
import { comesFirst, withoutPastClapping } from './comes-first.ts';
import type { PlanKind, PlanTask } from './plan-item.ts';

/** An exercise that could be played today. */
export interface Candidate {
  readonly kind: PlanKind;
  readonly standing: ExerciseStanding;
  readonly part: PracticePart | null;
  readonly reason: PlanReasonFact;
  /** Where it is to come, in quarter notes a minute, where that is not the lesson's own goal. */
  readonly aimBpm?: number;
}

/** Everything that could be played today, each exercise once. */
export interface Candidates {
  /** What a student must have before what was set or comes next, in the order of the sheet. */
  readonly first: readonly Candidate[];
  readonly assigned: readonly Candidate[];
  /** In the order of the sheets, the one that was practised last first. */
  readonly fresh: readonly Candidate[];
  /** At the goal and due: least likely to be still there first. */
  readonly due: readonly Candidate[];
  /** Under the goal, and neither stuck nor new: longest ago first. */
  readonly open: readonly Candidate[];
  /** Without a faster clean tempo for some days: longest ago first. */
  readonly stuck: readonly Candidate[];
  readonly notes: readonly PlanNoteFact[];
}

/** Practice days without a faster clean tempo after which an exercise is stuck (our choice). */
export const STUCK_DAYS = 8;

function isDue(standing: ExerciseStanding, today: number): boolean {
  return standing.evidence !== null && standing.evidence.dueDay <= today;
}

/** Whether an exercise waits on a plateau. */
export function isStuck(standing: ExerciseStanding): boolean {
  return standing.stuckDays >= STUCK_DAYS;
}

/** Whether an exercise was once clean at the goal. */
function wasThere({ standing, cleanBpm, stuckDays }: ExerciseStanding): boolean {
  return standing === 'firm' || (standing === 'shaky' && cleanBpm !== null && stuckDays === 0);
}

/** The teacher's list in the teacher's order, pinned ones first; what is firm and not due can wait. */
function assignedOf(
  standings: readonly ExerciseStanding[],
  { shelf, assignments, isSilent = false }: PlanTask,
  today: number,
): readonly Candidate[] {
  const { itemOf } = identityOf(shelf);
  const byItem = new Map(standings.map((standing) => [standing.item, standing]));
  const ordered = [
    ...assignments.filter((each) => each.pinned),
    ...assignments.filter((each) => !each.pinned),
  ];
  const seen = new Set<string>();
  return ordered.flatMap((assignment): Candidate[] => {
    const key = itemOf(assignment.lesson, assignment.exercise);
    const standing = byItem.get(key);
    if (!standing || seen.has(key)) return [];
    const canWait = standing.standing === 'firm' && !isDue(standing, today);
    if (canWait && !assignment.pinned && !isSilent) return [];
    seen.add(key);
    const what: AssignedFact = { fact: assignment.pinned ? 'teacher-pinned' : 'teacher-set' };
    const aim = tellAim(assignment, standing, today);
    const aimed: AssignedFact | AimedFact = aim ? { fact: 'teacher-aims', what, aim } : what;
    const { note } = assignment;
    const reason: PlanReasonFact = note ? { fact: 'teacher-noted', what: aimed, note } : aimed;
    const aimBpm = aimBpmOf(assignment, standing);
    return [{ kind: 'assigned', standing, part: null, reason, aimBpm }];
  });
}

function playedBefore(
  { standing, evidence, cleanBpm, lesson }: ExerciseStanding,
  today: number,
): PlayedBeforeFact | PlayedCleanFact {
  const day = (evidence?.lastDay ?? today) - today;
  if (standing === 'shaky' || standing === 'firm') return { fact: `played-${standing}`, day };
  if (cleanBpm === null) return { fact: 'played-learning', day };
  const counted = (bpm: number) => countedTempo(lesson.meter, bpm);
  return { fact: 'played-clean', day, bpm: counted(cleanBpm), goalBpm: counted(lesson.tempo.goalBpm) };
}

function reviewReason(standing: ExerciseStanding, today: number): PlanReasonFact {
  const what = playedBefore(standing, today);
  const sore = standing.sore?.told;
  return sore ? { fact: 'listen-for', what, sore } : what;
}

/**
 * All that is new, in turn: of the lesson that was practised last first, then in the order in which lessons were set,
 * otherwise in that of the shelf; within a lesson as on the sheet.
 */
function allNew(
  standings: readonly ExerciseStanding[],
  { shelf, log, assignments }: Pick<PlanTask, 'shelf' | 'log' | 'assignments'>,
): readonly ExerciseStanding[] {
  const { itemOf } = identityOf(shelf);
  const named = [log.entries.at(-1)?.lesson ?? '', ...assignments.map(({ lesson }) => lesson)];
  const items = named.map((id) => itemOf(id, null));
  const turn = new Map(items.map((item, at) => [item, at] as const).toReversed());
  const turnOf = (id: string) => turn.get(itemOf(id, null)) ?? items.length;
  const order = shelf.map(({ id }) => id).toSorted((a, b) => turnOf(a) - turnOf(b));
  return withoutPastClapping(shelf, standings)
    .filter(({ standing }) => standing === 'new')
    .toSorted((a, b) => order.indexOf(a.id) - order.indexOf(b.id));
}

/** What is new, in turn (see `allNew`); what must come first is not jumped over. */
export function newInTurn(
  standings: readonly ExerciseStanding[],
  task: Pick<PlanTask, 'shelf' | 'log' | 'assignments'>,
): readonly ExerciseStanding[] {
  const lacks = comesFirst(task.shelf, standings);
  return allNew(standings, task).filter((each) => !lacks(each));
}

function asNew(standing: ExerciseStanding): Candidate {
  return { kind: 'new', standing, part: null, reason: { fact: 'new-today' } };
}

/**
 * What must come before the exercises that are set, and what is clapped before the lesson whose turn it is: what else comes
 * first there is next on the sheet.
 */
function firstOf(
  standings: readonly ExerciseStanding[],
  assigned: readonly Candidate[],
  task: PlanTask,
): readonly Candidate[] {
  const lacks = comesFirst(task.shelf, standings);
  const [next, ...later] = allNew(standings, task);
  const waiting = next ? [next, ...later.filter(({ id }) => id === next.id)] : [];
  const isSet = (exercise: ExerciseStanding) => assigned.some(({ standing }) => standing === exercise);
  const found = new Map<ExerciseStanding, Candidate>();
  for (const exercise of [...assigned.map(({ standing }) => standing), ...waiting]) {
    const lacking = lacks(exercise);
    for (const standing of lacking?.exercises ?? []) {
      if (found.has(standing) || lacks(standing)) continue;
      if (!isSet(exercise) && !isClapped(standing.exercise)) continue;
      const kind = standing.standing === 'new' ? 'new' : 'review';
      const reason = { fact: 'comes-first', before: lacking?.before ?? '' } as const;
      found.set(standing, { kind, standing, part: null, reason });
    }
  }
  return [...found.values()];
}

function notesOf(task: PlanTask, standings: readonly ExerciseStanding[]): readonly PlanNoteFact[] {
  const { itemOf } = identityOf(task.shelf);
  const known = new Set(standings.map(({ item }) => item));
  const lost = task.assignments.filter((each) => !known.has(itemOf(each.lesson, each.exercise))).length;
  const stuck = task.isSilent ? 0 : standings.filter(isStuck).length;
  return [
    ...(lost > 0 ? [{ fact: 'set-and-gone', exercises: lost } as const] : []),
    ...(stuck > 0 ? [{ fact: 'taken-apart', exercises: stuck } as const] : []),
  ];
}

/** The task as it was in the morning: what was played today is left out. */
export function inTheMorning(task: PlanTask): PlanTask {
  const today = momentOf(task.now).day;
  const entries = task.log.entries.filter(({ startedAt }) => momentOf(startedAt).day < today);
  return { ...task, log: { ...task.log, entries } };
}

/** Everything that could be played today, as it stood in the morning. */
export function findCandidates(task: PlanTask): Candidates {
  const today = momentOf(task.now).day;
  const standings = standExercises(task.shelf, task.log, today);
  const assigned = assignedOf(standings, task, today);
  const notes = notesOf(task, standings);
  if (task.isSilent) return { first: [], assigned, fresh: [], due: [], open: [], stuck: [], notes };
  const first = firstOf(standings, assigned, task).filter(
    ({ standing }) => !assigned.some((each) => each.standing === standing),
  );
  const taken = new Set([...first, ...assigned].map(({ standing }) => standing.item));
  const rest = standings.filter(({ item }) => !taken.has(item));
  const review = (standing: ExerciseStanding): Candidate => {
    return { kind: 'review', standing, part: null, reason: reviewReason(standing, today) };
  };
  const by = (value: (standing: ExerciseStanding) => number) => (a: ExerciseStanding, b: ExerciseStanding) =>
    value(a) - value(b);
  const begun = rest.filter(({ standing }) => standing !== 'new');
  const longestAgo = by(({ evidence }) => evidence?.lastDay ?? 0);
  const open = begun.filter((standing) => !wasThere(standing));
  return {
    first,
    assigned,
    fresh: newInTurn(standings, task)
      .filter(({ item }) => !taken.has(item))
      .map(asNew),
    due: begun
      .filter((standing) => wasThere(standing) && isDue(standing, today))
      .toSorted(by(({ evidence }) => evidence?.retrievability ?? 0))
      .map(review),
    open: open
      .filter((standing) => !isStuck(standing))
      .toSorted(longestAgo)
      .map(review),
    stuck: open.filter(isStuck).toSorted(longestAgo).map(review),
    notes,
  };
}
