/**
 * Taking turns: related exercises come round again instead of standing in one block.
 *
 * Conventions: an order is reproducible from its seed. Whether turns or blocks help more differs between studies
 * of musicians, so turns are offered, not imposed, and nothing here claims a size of effect.
 */
import type { Random } from '@shedbook/core';
import type { Candidate } from './candidates.ts';

/** How many exercises take turns with each other. */
const AT_ONCE = 3;

/** One visit to an exercise, or to the groove alone where there is no candidate. */
export interface Visit {
  readonly candidate: Candidate | null;
  readonly minutes: number;
}

const VISIT_MINUTES = 2;

function shuffle<T>(items: readonly T[], random: Random): readonly T[] {
  const left = [...items];
  return items.map(() => left.splice(random.below(left.length), 1)[0] as T);
}

/** Candidates of one lesson stand together, in groups small enough to take turns. */
function groupRelated(candidates: readonly Candidate[]): readonly (readonly Candidate[])[] {
  const lessons = [...new Set(candidates.map(({ standing }) => standing.id))];
  return lessons.flatMap((id) => {
    const own = candidates.filter(({ standing }) => standing.id === id);
    const groups = Math.ceil(own.length / AT_ONCE);
    return Array.from({ length: groups }, (_, i) => own.slice(i * AT_ONCE, (i + 1) * AT_ONCE));
  });
}

/** A second round in another order that does not begin with what the first one ended on. */
function secondRound(first: readonly Candidate[], random: Random): readonly Candidate[] {
  const order = shuffle(first, random);
  return order[0] === first.at(-1) ? [...order.slice(1), ...order.slice(0, 1)] : order;
}

/** Visits in turns: each exercise twice, with others in between. */
export function takeTurns(candidates: readonly Candidate[], random: Random): readonly Visit[] {
  return groupRelated(candidates).flatMap((group) => {
    const first = shuffle(group, random);
    if (group.length === 1) return inBlocks(group);
    const order = [...first, ...secondRound(first, random)];
    return order.map((candidate) => ({ candidate, minutes: VISIT_MINUTES }));
  });
}

/** Visits in blocks: each exercise once, for as long as two turns. */
export function inBlocks(candidates: readonly Candidate[]): readonly Visit[] {
  return candidates.map((candidate) => ({ candidate, minutes: 2 * VISIT_MINUTES }));
}
