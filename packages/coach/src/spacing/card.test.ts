import fc from 'fast-check';
import { expect, it } from 'vitest';
import {
  DAILY_SPACING,
  GRADES,
  type ReviewGrade,
  retrievabilityAt,
  reviewCard,
  type SpacingCard,
} from './card.ts';

/** The source gives four decimals of stability and eight of difficulty. */
const STABILITY_DECIMALS = 4;
const DIFFICULTY_DECIMALS = 8;
const RETRIEVABILITY_DECIMALS = 7;

const DAY = 86_400;
/** The source's own beginning, 2022-12-29T12:30. */
const START = Date.UTC(2022, 11, 29, 12, 30) / 1000;
const REFERENCE = { retention: 0.9, withinDay: true, longestDays: 36_500 };
const BY_DAY = { ...REFERENCE, withinDay: false };

function spell(letters: string): readonly ReviewGrade[] {
  return [...letters].map((letter) => (letter === 'A' ? 'again' : 'good'));
}

it('[CH14] reviews on their due dates give the reference intervals of FSRS-6', () => {
  let card: SpacingCard | null = null;
  const days = spell('GGGGGGAAGGGGG').map((grade) => {
    card = reviewCard(card, card?.dueSeconds ?? START, grade, REFERENCE);
    return card.scheduledDays;
  });
  // library: ts-fsrs 5.4.1, packages/fsrs/__tests__/FSRS-6.test.ts, "ivl_history"
  expect(days).toEqual([0, 2, 11, 46, 163, 498, 0, 0, 2, 4, 7, 12, 21]);
});

function memoryAfter(rule: typeof REFERENCE): SpacingCard | null {
  const gaps = [0, 0, 1, 3, 8, 21];
  let at = START;
  return spell('AGGGGG').reduce<SpacingCard | null>((card, grade, i) => {
    at += (gaps[i] as number) * DAY;
    return reviewCard(card, at, grade, rule);
  }, null);
}

it('[CH14] uneven reviews give the reference memory of FSRS-6, within the day and by the day', () => {
  // library: fsrs-rs inference.rs, as quoted in ts-fsrs 5.4.1 FSRS-6.test.ts, "memory state"
  expect(memoryAfter(REFERENCE)?.stability).toBeCloseTo(53.62691, STABILITY_DECIMALS);
  expect(memoryAfter(BY_DAY)?.stability).toBeCloseTo(53.335106, STABILITY_DECIMALS);
  expect(memoryAfter(REFERENCE)?.difficulty).toBeCloseTo(6.3574867, STABILITY_DECIMALS);
  expect(memoryAfter(BY_DAY)?.difficulty).toBeCloseTo(6.3574867, STABILITY_DECIMALS);
});

it('[CH14] a first review gives the reference stability, difficulty and days of each grade', () => {
  const cards = GRADES.map((grade) => reviewCard(null, START, grade, REFERENCE));
  // library: ts-fsrs 5.4.1 FSRS-6.test.ts, "first repeat"
  expect(cards.map((card) => card.stability)).toEqual([0.212, 1.2931, 2.3065, 8.2956]);
  expect(cards.map((card) => card.scheduledDays)).toEqual([0, 0, 0, 8]);
  const difficulties = [6.4133, 5.11217071, 2.11810397, 1];
  cards.forEach((card, i) => {
    expect(card.difficulty).toBeCloseTo(difficulties[i] as number, DIFFICULTY_DECIMALS);
  });
});

it('[CH14] retrievability falls along the reference curve', () => {
  const easy = reviewCard(null, START, 'easy', REFERENCE);
  // library: ts-fsrs 5.4.1 FSRS-6.test.ts, "get retrievability"
  expect(retrievabilityAt(easy, easy.dueSeconds)).toBeCloseTo(0.9024733, RETRIEVABILITY_DECIMALS);
  const one = { ...easy, stability: 1 };
  // library: ts-fsrs 5.4.1 algorithm.test.ts: stability 1 after 0, 1, 2, 3 days
  expect([0, 1, 2, 3].map((day) => Number(retrievabilityAt(one, START + day * DAY).toFixed(8)))).toEqual([
    1, 0.9, 0.84588465, 0.8093881,
  ]);
});

const history = fc.array(
  fc.record({ grade: fc.constantFrom(...GRADES), gapDays: fc.integer({ min: 0, max: 60 }) }),
  { minLength: 1, maxLength: 25 },
);

it('[CH15] spacing by the day comes back after one day at least and half a year at most', () => {
  fc.assert(
    fc.property(history, (reviews) => {
      let at = START;
      let card: SpacingCard | null = null;
      for (const { grade, gapDays } of reviews) {
        at += gapDays * DAY;
        card = reviewCard(card, at, grade);
        expect(card.dueSeconds).toBeGreaterThanOrEqual(at + DAY);
        expect(card.dueSeconds).toBeLessThanOrEqual(at + DAILY_SPACING.longestDays * DAY);
      }
    }),
    { numRuns: 100, seed: 5 },
  );
});

it('[CH15] a better grade never comes back sooner', () => {
  fc.assert(
    fc.property(history, fc.integer({ min: 0, max: 60 }), (reviews, gapDays) => {
      let at = START;
      const card = reviews.reduce<SpacingCard | null>((before, { grade, gapDays: gap }) => {
        at += gap * DAY;
        return reviewCard(before, at, grade);
      }, null);
      const dues = GRADES.map((grade) => reviewCard(card, at + gapDays * DAY, grade).dueSeconds);
      expect(dues).toEqual(dues.toSorted((a, b) => a - b));
    }),
    { numRuns: 100, seed: 6 },
  );
});

it('[CH14] what is forgotten after it was known is counted as a lapse, each time', () => {
  const lapses = spell('GGGAGGGA').reduce<SpacingCard | null>(
    (card, grade) => reviewCard(card, card?.dueSeconds ?? START, grade, BY_DAY),
    null,
  )?.lapses;
  // definition: two reviews that were again, after it was known
  expect(lapses).toBe(2);
});

it('[CH15] a card is plain data: stored and read again it goes on the same', () => {
  const card = reviewCard(reviewCard(null, START, 'good'), START + 3 * DAY, 'hard');
  const stored = JSON.parse(JSON.stringify(card)) as SpacingCard;
  expect(stored).toEqual(card);
  expect(reviewCard(stored, START + 9 * DAY, 'good')).toEqual(reviewCard(card, START + 9 * DAY, 'good'));
});
