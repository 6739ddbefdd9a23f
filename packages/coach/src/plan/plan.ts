/**
 * What to practise today.
 *
 * Conventions: the same task gives the same plan, however often it is asked for on a day. What a section stands on comes
 * first, then what the teacher set; then short visits take turns: what is new among what is known, what is at the goal and due, what is on its
 * way, and for at most a quarter of the time what is stuck, taken apart. Nothing is counted up and nothing is lost by
 * a day without practice.
 */
import { seededRandom } from '@shedbook/core';
import type { ShortPlanFact } from '../fact.ts';
import { identityOf } from '../mastery/identity.ts';
import { formatDay, momentOf } from '../time/moment.ts';
import { type Candidates, findCandidates, inTheMorning } from './candidates.ts';
import { layOut, playingMinutes } from './lay-out.ts';
import type { PlanTask, PracticePlan } from './plan-item.ts';
import { inBlocks, takeTurns, VISIT_MINUTES, type Visit } from './turns.ts';

const ASSIGNED_MINUTES = 5;
const SHORTEST_ASSIGNED_MINUTES = 2;

/** Longest session that is planned, in minutes. */
const LONGEST_MINUTES = 240;

/** What the teacher set, all of it where there is time for it. */
function assignedVisits({ assigned }: Candidates, minutes: number): readonly Visit[] {
  const each = Math.floor(minutes / Math.max(1, assigned.length));
  const box = Math.max(SHORTEST_ASSIGNED_MINUTES, Math.min(ASSIGNED_MINUTES, each));
  return assigned.map((candidate) => ({ candidate, minutes: box }));
}

/** Most of the minutes that what comes first may have where there is something else, so that the day is not all preparation. */
const FIRST_SHARE = 0.5;

/** What comes first, a visit each, as long as there is time for it. */
function firstVisits(candidates: Candidates, minutes: number): readonly Visit[] {
  const { first, assigned, fresh, due, open, stuck } = candidates;
  const isAlone = [assigned, fresh, due, open, stuck].every(({ length }) => length === 0);
  const share = isAlone ? 1 : FIRST_SHARE;
  const most = Math.max(1, Math.floor((minutes * share) / VISIT_MINUTES));
  return first.slice(0, most).map((candidate) => ({ candidate, minutes: VISIT_MINUTES }));
}

function visitsOf(task: PlanTask, candidates: Candidates, minutes: number): readonly Visit[] {
  const playing = playingMinutes(minutes);
  const first = firstVisits(candidates, playing);
  const afterFirst = playing - first.length * VISIT_MINUTES;
  const set = assignedVisits(candidates, afterFirst);
  const left = afterFirst - set.reduce((sum, visit) => sum + visit.minutes, 0);
  const random = seededRandom(`${task.seed} ${formatDay(momentOf(task.now).day)}`);
  const turns = takeTurns(candidates, left, random);
  return [...first, ...set, ...((task.interleave ?? true) ? turns : inBlocks(turns))];
}

function emptyPlan(task: PlanTask, note: ShortPlanFact['fact']): PracticePlan {
  return {
    day: formatDay(momentOf(task.now).day),
    seed: task.seed,
    minutes: 0,
    items: [],
    notes: [{ fact: note }],
  };
}

/**
 * The plan for today.
 * @throws RangeError when `minutes` is not a number or `now` is not a moment.
 */
export function planPractice(task: PlanTask): PracticePlan {
  if (Number.isNaN(task.minutes)) throw new RangeError('Internal error: minutes is not a number');
  const day = formatDay(momentOf(task.now).day);
  const minutes = Math.floor(Math.min(task.minutes, LONGEST_MINUTES));
  if (minutes < 1) return emptyPlan(task, 'no-time-today');
  const morning = inTheMorning(task);
  const last = morning.log.entries.at(-1)?.lesson;
  const { itemOf } = identityOf(task.shelf);
  const groove =
    task.shelf.find(({ id }) => last !== undefined && itemOf(id, null) === itemOf(last, null)) ??
    task.shelf[0];
  if (!groove) return emptyPlan(task, 'no-lesson-yet');
  const candidates = findCandidates(morning);
  const items = layOut(visitsOf(task, candidates, minutes), minutes, groove);
  const total = items.reduce((sum, item) => sum + item.minutes, 0);
  return { day, seed: task.seed, minutes: total, items, notes: candidates.notes };
}
