/**
 * What to practise today.
 *
 * Conventions: the same task gives the same plan. What the teacher set comes first, then one new thing while the
 * hands are fresh, then what is due, taking turns; what is unfinished fills the rest, and then everything comes
 * round once more. Nothing is counted up and nothing is lost by a day without practice.
 */
import { type Random, seededRandom } from '@shedbook/core';
import type { PlanNoteFact, ShortPlanFact } from '../fact.ts';
import { formatDay, momentOf } from '../time/moment.ts';
import { type Candidate, type Candidates, findCandidates } from './candidates.ts';
import { layOut } from './lay-out.ts';
import type { PlanTask, PracticePlan } from './plan-item.ts';
import { inBlocks, takeTurns, type Visit } from './turns.ts';

const ASSIGNED_MINUTES = 5;
const NEW_MINUTES = 5;
const AGAIN_MINUTES = 3;
const TIME_MINUTES = 3;

/** From this many minutes left over on, it is said that they are. */
const SPARE_MINUTES = 5;

/** How often everything may come round once more. */
const ROUNDS_MORE = 2;

/** Longest session that is planned, in minutes. */
const LONGEST_MINUTES = 240;

function box(candidates: readonly Candidate[], minutes: number): readonly Visit[] {
  return candidates.map((candidate) => ({ candidate, minutes }));
}

/** Everything that was visited, once more in the same order. */
function onceMore(visits: readonly Visit[]): readonly Visit[] {
  const candidates = visits.flatMap(({ candidate }) => candidate ?? []);
  const different = [...new Map(candidates.map((candidate) => [candidate.standing, candidate])).values()];
  const again = different.map(
    (candidate): Candidate => ({
      ...candidate,
      kind: 'once more',
      reason: { fact: 'once-more' },
    }),
  );
  return Array.from({ length: ROUNDS_MORE }, () => box(again, AGAIN_MINUTES)).flat();
}

/** Between neighbouring visits to the same exercise, some time alone. */
function partNeighbours(visits: readonly Visit[]): readonly Visit[] {
  return visits.flatMap((visit, index): Visit[] => {
    const last = visits[index - 1]?.candidate?.standing;
    if (last === undefined || last !== visit.candidate?.standing) return [visit];
    return [{ candidate: null, minutes: TIME_MINUTES }, visit];
  });
}

function visitsOf(candidates: Candidates, random: Random, interleave: boolean): readonly Visit[] {
  const arrange = (list: readonly Candidate[]) => (interleave ? takeTurns(list, random) : inBlocks(list));
  const planned = [
    ...box(candidates.assigned, ASSIGNED_MINUTES),
    ...box(candidates.fresh, NEW_MINUTES),
    ...arrange(candidates.due),
    ...arrange(candidates.unfinished),
  ];
  return partNeighbours([...planned, ...onceMore(planned)]);
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
  const last = task.log.entries.at(-1)?.lesson;
  const groove = task.shelf.find((each) => each.id === last) ?? task.shelf[0];
  if (!groove) return emptyPlan(task, 'no-lesson-yet');
  const candidates = findCandidates(task);
  const random = seededRandom(`${task.seed} ${day}`);
  const items = layOut(visitsOf(candidates, random, task.interleave ?? true), minutes, groove);
  const total = items.reduce((sum, item) => sum + item.minutes, 0);
  const spare: PlanNoteFact[] = minutes - total >= SPARE_MINUTES ? [{ fact: 'enough-today' }] : [];
  return { day, seed: task.seed, minutes: total, items, notes: [...candidates.notes, ...spare] };
}
