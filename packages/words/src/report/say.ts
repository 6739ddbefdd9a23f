/** From a verdict to what a teacher says. */
import type { PlaceFact } from '@shedbook/core';
import { adviceOn, figureOf, type Judgement, type VerdictFact } from '@shedbook/judge';
import { type Language, say } from '../facts/say.ts';
import type { ScreenFact } from '../facts/sayable.ts';

/** How much a teacher says at once. */
export const SENTENCES = 3;

/** What is said of some playing: one thing to do, and the figures behind it and behind everything else. */
export interface Said {
  /** Null where there is nothing to do. */
  readonly advice: string | null;
  readonly figures: readonly string[];
}

/**
 * One thing to do, and the figures.
 * For example: sayVerdict(judgement, ENGLISH).advice
 *   // 'Let the snare fall later on the let of 2: the last triplet lies close to the next beat.'
 */
export function sayVerdict(
  { verdict: { about }, task, praise }: Judgement,
  language: Language<ScreenFact>,
): Said {
  const told = (fact: VerdictFact) => say<VerdictFact | PlaceFact>(fact, language);
  const advice = about.flatMap((one) => adviceOn(one, task) ?? [])[0];
  const figures = about.flatMap((one) => figureOf(one, task) ?? []);
  return { advice: advice ? told(advice) : null, figures: [...praise, ...figures].map(told) };
}

/** What a teacher would say of a take: three sentences at most, the weightiest first. */
export function teacherSentences(judgement: Judgement, language: Language<ScreenFact>): readonly string[] {
  const { advice, figures } = sayVerdict(judgement, language);
  return [...(advice === null ? [] : [advice]), ...figures].slice(0, SENTENCES);
}
