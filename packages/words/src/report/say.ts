/** From a verdict to what a teacher says. */
import type { PlaceFact } from '@shedbook/core';
import { adviceOn, figureOf, type Judgement, type VerdictFact } from '@shedbook/judge';
import { type Language, say } from '../facts/say.ts';
import type { HeardFact } from '../facts/sayable.ts';
import type { ReportCatalogue } from './catalogue.ts';

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
  language: Language<HeardFact>,
): Said {
  const told = (fact: VerdictFact) => say<VerdictFact | PlaceFact>(fact, language);
  const advice = about.flatMap((one) => adviceOn(one, task) ?? [])[0];
  const figures = about.flatMap((one) => figureOf(one, task) ?? []);
  return { advice: advice ? told(advice) : null, figures: [...praise, ...figures].map(told) };
}

/** Tempi of rounds further apart than this ratio were asked so: nobody steps by less, and takes drift by less. */
const CLIMBED = 1.02;

/**
 * The rounds of a take one by one, each with its tempo, its verdict and the weightiest figure: a take that climbed the
 * ladder is several tempi. Nothing where all rounds were asked at one tempo: there the take as a whole says it.
 */
export function sayRounds(
  { rounds, task }: Pick<Judgement, 'rounds' | 'task'>,
  { words, language }: ReportCatalogue,
): readonly string[] {
  const tempi = rounds.map(({ bpm }) => bpm);
  if (Math.max(...tempi) <= CLIMBED * Math.min(...tempi)) return [];
  return rounds.map(({ bpm, verdict }, index) => {
    const said = words.round({ n: index + 1, bpm, verdict: words.verdicts[verdict.is] });
    const figure =
      verdict.is === 'clean' ? null : (verdict.about.flatMap((one) => figureOf(one, task) ?? [])[0] ?? null);
    return figure ? `${said} ${say<VerdictFact | PlaceFact>(figure, language)}` : said;
  });
}

/** What a teacher would say of a take: three sentences at most, the weightiest first. */
export function teacherSentences(judgement: Judgement, language: Language<HeardFact>): readonly string[] {
  const { advice, figures } = sayVerdict(judgement, language);
  return [...(advice === null ? [] : [advice]), ...figures].slice(0, SENTENCES);
}
