/**
 * Evidence from practice days: how often something was tried, how often it went well, and how sure we may be today.
 *
 * Conventions: days by the student's own calendar, in order; shares 0 to 1. A practice day counts a fifth less for
 * every later day on which the same thing was practised (our choice), so that what is true now outweighs what was.
 */
import { type ReviewGrade, retrievabilityAt, reviewCard, type SpacingCard } from '../spacing/card.ts';
import { wilsonLower } from './wilson.ts';

const KEPT_PER_DAY = 0.8;
const SECONDS_A_DAY = 86_400;

/** One day's practice of one thing. */
export interface DayEvidence {
  readonly day: number;
  readonly tries: number;
  /** How many tries went well. */
  readonly successes: number;
  readonly grade: ReviewGrade;
}

/** What is known of one thing. */
export interface Evidence {
  /** All tries, not weighted. */
  readonly tries: number;
  /** Share of successes, later days weighing more. */
  readonly share: number;
  readonly lastDay: number;
  readonly lastGrade: ReviewGrade;
  readonly dueDay: number;
  /** Probability that it is still there today, by spacing. */
  readonly retrievability: number;
  /** Lower bound of the share, times retrievability: grows with practice, fades with time. */
  readonly confidence: number;
}

/** The card after a day, by the day and the card before it: every plan goes through the same days again. */
const cards = new WeakMap<DayEvidence, { readonly before: SpacingCard | null; readonly card: SpacingCard }>();

function cardAfter(before: SpacingCard | null, day: DayEvidence): SpacingCard {
  const known = cards.get(day);
  if (known?.before === before) return known.card;
  const card = reviewCard(before, day.day * SECONDS_A_DAY, day.grade);
  cards.set(day, { before, card });
  return card;
}

/** The spacing card of some practice days, or null without any. */
export function cardOfDays(days: readonly DayEvidence[]): SpacingCard | null {
  return days.reduce<SpacingCard | null>(cardAfter, null);
}

/** What days come to, whatever day it is. */
interface Weighed {
  readonly card: SpacingCard;
  readonly all: number;
  /** Weighted. */
  readonly tries: number;
  readonly successes: number;
}

const weighedBefore = new WeakMap<readonly DayEvidence[], Weighed>();

function weigh(days: readonly DayEvidence[]): Weighed | null {
  const known = weighedBefore.get(days);
  if (known) return known;
  const card = cardOfDays(days);
  if (!card) return null;
  let [all, tries, successes] = [0, 0, 0];
  for (const day of days) {
    all += day.tries;
    tries = tries * KEPT_PER_DAY + day.tries;
    successes = successes * KEPT_PER_DAY + day.successes;
  }
  const weighed = { card, all, tries, successes };
  weighedBefore.set(days, weighed);
  return weighed;
}

/** What some practice days tell on the day `today`, or null without any. */
export function weighEvidence(days: readonly DayEvidence[], today: number): Evidence | null {
  const last = days.at(-1);
  const weighed = weigh(days);
  if (!last || !weighed) return null;
  const { card, all, tries, successes } = weighed;
  const retrievability = retrievabilityAt(card, today * SECONDS_A_DAY);
  return {
    tries: all,
    share: tries === 0 ? 0 : successes / tries,
    lastDay: last.day,
    lastGrade: last.grade,
    dueDay: Math.floor(card.dueSeconds / SECONDS_A_DAY),
    retrievability,
    confidence: wilsonLower(successes, tries) * retrievability,
  };
}
