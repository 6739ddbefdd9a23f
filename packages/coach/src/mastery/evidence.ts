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

/** The spacing card of some practice days, or null without any. */
export function cardOfDays(days: readonly DayEvidence[]): SpacingCard | null {
  return days.reduce<SpacingCard | null>(
    (card, { day, grade }) => reviewCard(card, day * SECONDS_A_DAY, grade),
    null,
  );
}

/** What some practice days tell on the day `today`, or null without any. */
export function weighEvidence(days: readonly DayEvidence[], today: number): Evidence | null {
  const last = days.at(-1);
  const card = cardOfDays(days);
  if (!last || !card) return null;
  const weighted = days.map((each, index) => {
    const weight = KEPT_PER_DAY ** (days.length - 1 - index);
    return { tries: each.tries * weight, successes: each.successes * weight };
  });
  const tries = weighted.reduce((sum, each) => sum + each.tries, 0);
  const successes = weighted.reduce((sum, each) => sum + each.successes, 0);
  const retrievability = retrievabilityAt(card, today * SECONDS_A_DAY);
  return {
    tries: days.reduce((sum, each) => sum + each.tries, 0),
    share: tries === 0 ? 0 : successes / tries,
    lastDay: last.day,
    lastGrade: last.grade,
    dueDay: Math.floor(card.dueSeconds / SECONDS_A_DAY),
    retrievability,
    confidence: wilsonLower(successes, tries) * retrievability,
  };
}
