/**
 * From what could be played to the visits of a day: who gets how many of them, and in which order.
 *
 * Conventions: an order is reproducible from its seed. A visit is short, so that the page comes round often and no
 * exercise stands in one block.
 * Sources: interleaving (contextual interference): Shea & Morgan (1979), JEP: Human Learning and Memory 5(2), 179–187;
 * in music Carter & Grahn (2016), Frontiers in Psychology 7, 1251, whose effects are small and mixed: turns are
 * offered, not imposed, and nothing here claims a size of effect. Spacing: `spacing/card.ts`.
 * Differs from the sources: what is under the goal comes as often as there is time, longest ago first, and not by its
 * spacing, which was made for what is known once; shares of the minutes are our choice, tried in `internal/testing/simulated-practice`.
 */
import type { Random } from '@shedbook/core';
import { busiestBeat, type PartKind } from '../apart/apart.ts';
import { type Candidate, type Candidates, STUCK_DAYS } from './candidates.ts';

/** One visit to an exercise. */
export interface Visit {
  readonly candidate: Candidate;
  readonly minutes: number;
}

/** Minutes of a visit. */
export const VISIT_MINUTES = 2;

/** Most of the visits that what is new may have, while there is something else to come back to. */
const NEW_SHARE = 0.5;

/** Most of the minutes that what is stuck may have. */
const STUCK_SHARE = 0.34;

/** Minutes of a part, and of the whole that it is put back into. */
const PART_MINUTES = 1;

/** Visits to the same exercise in a day. */
const MOST_VISITS = 4;

/** The ways of taking apart, one a day, round and round: the sore place most often. */
const WAYS: readonly PartKind[] = [
  'cell alone',
  'move alone',
  'slower',
  'cell alone',
  'two limbs',
  'move alone',
  'sung',
];

/** What is stuck: a part of it, another one each day, and at once the whole again. */
function takenApart(candidate: Candidate): readonly Visit[] {
  const { standing } = candidate;
  const kind = WAYS[(standing.stuckDays - STUCK_DAYS) % WAYS.length] as PartKind;
  const part = { kind, beat: standing.sore?.beat ?? busiestBeat(standing.exercise) };
  const sore = standing.sore?.told ?? null;
  const reason = sore ? ({ fact: 'apart-there', sore } as const) : ({ fact: 'apart' } as const);
  return [
    { candidate: { kind: 'apart', standing, part, reason }, minutes: PART_MINUTES },
    { candidate: { ...candidate, reason: { fact: 'put-back' } }, minutes: VISIT_MINUTES },
  ];
}

function visitOf(candidate: Candidate): readonly Visit[] {
  return [{ candidate, minutes: VISIT_MINUTES }];
}

function again(candidate: Candidate): readonly Visit[] {
  return visitOf({ ...candidate, kind: 'once more', reason: { fact: 'once-more' } });
}

function shuffle<T>(items: readonly T[], random: Random): readonly T[] {
  const left = [...items];
  return items.map(() => left.splice(random.below(left.length), 1)[0] as T);
}

/** What is new at even distances among what is not. */
function spread<T>(fresh: readonly T[], known: readonly T[]): readonly T[] {
  const all: T[] = [];
  const every = (known.length + fresh.length) / Math.max(1, fresh.length);
  const left = [...known];
  fresh.forEach((candidate, index) => {
    all.push(candidate, ...left.splice(0, Math.round((index + 1) * every) - all.length - 1));
  });
  return [...all, ...left];
}

type Group = readonly Visit[];

function exerciseOf(group: Group | undefined): string | null {
  const standing = group?.[0]?.candidate.standing;
  return standing?.item ?? null;
}

/** Neighbours that are the same exercise change places with who comes later; where nobody does, the day ends. */
function partNeighbours(groups: readonly Group[]): readonly Group[] {
  const out: Group[] = [];
  const left = [...groups];
  for (;;) {
    const at = left.findIndex((group) => exerciseOf(group) !== exerciseOf(out.at(-1)));
    if (at < 0) return out;
    out.push(...left.splice(at, 1));
  }
}

/** The first round of a day: what there is time for, most urgent first, in an order of its own. */
function firstRound(candidates: Candidates, minutes: number, random: Random): readonly Group[] {
  const { due, open, stuck, fresh } = candidates;
  const slots = Math.floor(minutes / VISIT_MINUTES);
  const known = due.length + open.length + stuck.length;
  const most = Math.max(1, Math.floor(slots * NEW_SHARE));
  const news = fresh.slice(0, Math.max(most, slots - known - 1));
  const begun = known === 0 ? news.slice(0, most) : news;
  const apart = stuck.slice(
    0,
    Math.max(1, Math.floor((minutes * STUCK_SHARE) / (PART_MINUTES + VISIT_MINUTES))),
  );
  const left = minutes - begun.length * VISIT_MINUTES - apart.length * (PART_MINUTES + VISIT_MINUTES);
  const rest = [...due, ...open].slice(0, Math.max(0, Math.floor(left / VISIT_MINUTES)));
  return spread(begun.map(visitOf), shuffle([...apart.map(takenApart), ...rest.map(visitOf)], random));
}

/**
 * The visits of a day beside what the teacher set: everything once, then round and round while there is time.
 * @param minutes how much time there is
 */
export function takeTurns(candidates: Candidates, minutes: number, random: Random): readonly Visit[] {
  if (minutes < VISIT_MINUTES) return [];
  const first = firstRound(candidates, minutes, random);
  const isFirm = (group: Group) => candidates.due.includes(group[0]?.candidate as Candidate);
  const round = (groups: readonly Group[]) =>
    shuffle(groups, random).map((group) => again((group.at(-1) as Visit).candidate));
  const later = Array.from({ length: MOST_VISITS - 1 }, () => round(first.filter((group) => !isFirm(group))));
  return partNeighbours([...first, ...later.flat(), ...round(first.filter(isFirm))]).flat();
}

/** The same visits in blocks: those to one exercise stand together. */
export function inBlocks(visits: readonly Visit[]): readonly Visit[] {
  const blocks = new Map<string, Visit>();
  for (const visit of visits) {
    const { standing, part } = visit.candidate;
    const key = JSON.stringify([standing.item, part?.kind ?? null]);
    const there = blocks.get(key);
    blocks.set(key, there ? { ...there, minutes: there.minutes + visit.minutes } : visit);
  }
  return [...blocks.values()];
}
