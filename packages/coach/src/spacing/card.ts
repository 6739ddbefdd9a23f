/**
 * Spacing: when something that was played should be played again.
 *
 * Conventions: times are seconds since 1970-01-01T00:00 by the student's own clock, so that a "day" is the
 * student's day; stability in days; difficulty 1 to 10; retrievability 0 to 1.
 * Source: FSRS-6 as in ts-fsrs 5.4, with its default weights. They were fitted to flash cards, not to drumming;
 * we use them to order practice, not to claim how well anything is remembered.
 * Differs from the source: steps within the day are off by default (practice is planned by the day), and no
 * interval is longer than half a year.
 */
import { type Card, createEmptyCard, type FSRS, fsrs, type Grade, Rating, type State } from 'ts-fsrs';

/** How a review went, worst first. */
export const GRADES = ['again', 'hard', 'good', 'easy'] as const;
/** How a review went. */
export type ReviewGrade = (typeof GRADES)[number];

/** How spacing works. */
export interface SpacingRule {
  /** Share that should still be there when it is due, 0 to 1. */
  readonly retention: number;
  /** Whether something new comes back after minutes rather than on another day. */
  readonly withinDay: boolean;
  readonly longestDays: number;
}

/** Spacing by the day, at most half a year. */
export const DAILY_SPACING: SpacingRule = { retention: 0.9, withinDay: false, longestDays: 182 };

/** What is remembered of the reviews of one thing. Plain data. */
export interface SpacingCard {
  readonly dueSeconds: number;
  readonly lastSeconds: number;
  /** Days until the probability of recall has fallen to 90 %. */
  readonly stability: number;
  /** From 1, easiest, to 10; no unit. */
  readonly difficulty: number;
  readonly scheduledDays: number;
  readonly learningStep: number;
  readonly reviews: number;
  readonly lapses: number;
  /** A number: 0 new, 1 learning, 2 review, 3 relearning. */
  readonly state: number;
}

const RATING: Readonly<Record<ReviewGrade, Grade>> = {
  again: Rating.Again,
  hard: Rating.Hard,
  good: Rating.Good,
  easy: Rating.Easy,
};

const SECONDS_A_DAY = 86_400;

function dateOf(seconds: number): Date {
  return new Date(seconds * 1000);
}

/** Schedulers by rule: making one costs more than using it, and they hold no state. */
const schedulers = new WeakMap<SpacingRule, FSRS>();

function schedulerOf(rule: SpacingRule): FSRS {
  const known = schedulers.get(rule);
  if (known) return known;
  const scheduler = fsrs({
    request_retention: rule.retention,
    maximum_interval: rule.longestDays,
    enable_fuzz: false,
    enable_short_term: rule.withinDay,
  });
  schedulers.set(rule, scheduler);
  return scheduler;
}

function toCard(card: SpacingCard): Card {
  return {
    due: dateOf(card.dueSeconds),
    stability: card.stability,
    difficulty: card.difficulty,
    elapsed_days: 0,
    scheduled_days: card.scheduledDays,
    learning_steps: card.learningStep,
    reps: card.reviews,
    lapses: card.lapses,
    state: card.state as State,
    last_review: dateOf(card.lastSeconds),
  };
}

/** The library keeps grades apart by a day even beyond its longest interval; here the longest is the longest. */
function fromCard(card: Card, seconds: number, longestDays: number): SpacingCard {
  return {
    dueSeconds: Math.min(card.due.getTime() / 1000, seconds + longestDays * SECONDS_A_DAY),
    lastSeconds: seconds,
    stability: card.stability,
    difficulty: card.difficulty,
    scheduledDays: Math.min(card.scheduled_days, longestDays),
    learningStep: card.learning_steps,
    reviews: card.reps,
    lapses: card.lapses,
    state: card.state,
  };
}

/**
 * The card after a review.
 * @param card what was remembered before, or null for the first review
 * @param seconds when, by the student's own clock; not before the last review
 */
export function reviewCard(
  card: SpacingCard | null,
  seconds: number,
  grade: ReviewGrade,
  rule: SpacingRule = DAILY_SPACING,
): SpacingCard {
  const now = dateOf(seconds);
  const before = card ? toCard(card) : createEmptyCard(now);
  return fromCard(schedulerOf(rule).next(before, now, RATING[grade]).card, seconds, rule.longestDays);
}

/** How likely it is still there, 0 to 1, by whole days since the last review. */
export function retrievabilityAt(card: SpacingCard, seconds: number): number {
  return schedulerOf(DAILY_SPACING).get_retrievability(toCard(card), dateOf(seconds), false);
}
