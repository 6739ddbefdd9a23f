/**
 * The languages that remarks and reports are said in.
 *
 * Conventions: one catalogue a language, all of the same shape; numbers come in as numbers and are written as the
 * language writes them.
 */
import type { Voice } from '@shedbook/core';
import type { Unheard } from '../report/take-report.ts';
import { english } from './english.data.ts';
import { german } from './german.data.ts';
import type { RemarkFact, RemarkPlace } from './remark.ts';

/** Languages of a report. */
export const REPORT_LANGUAGES = ['en', 'de'] as const;
export type ReportLanguage = (typeof REPORT_LANGUAGES)[number];

type FactOf<Kind, Fact = RemarkFact> = Fact extends { readonly kind: infer Kinds }
  ? Kind extends Kinds
    ? Fact
    : never
  : never;

type UnheardOf<Reason, Fact = Unheard> = Fact extends { readonly reason: infer Reasons }
  ? Reason extends Reasons
    ? Fact
    : never
  : never;

/** How each kind of remark is said. */
export type Sayings = {
  readonly [Kind in RemarkFact['kind']]: (fact: FactOf<Kind>) => string;
};

/** How each reason is said why something cannot be told. */
export type UnheardSayings = {
  readonly [Reason in Unheard['reason']]: (unheard: UnheardOf<Reason>) => string;
};

/** The words of the table and the picture. */
export interface ReportWords {
  readonly exercise: string;
  readonly voice: string;
  readonly heard: string;
  readonly extra: string;
  readonly time: string;
  readonly spread: string;
  readonly level: string;
  readonly inTime: string;
  readonly early: string;
  readonly late: string;
  readonly balance: string;
  readonly asked: string;
  readonly played: string;
  readonly tempo: string;
  /** Tempo, start and swing of the take. */
  readonly summary: (bpm: string, startSeconds: string, swing: string | null) => string;
  readonly heardOf: (hits: number, due: number) => string;
  /** How a displacement is drawn. */
  readonly displacement: (ms: number) => string;
  readonly missedMark: string;
  readonly extraMark: string;
  /** So many bars are not drawn. */
  readonly moreBars: (count: number) => string;
}

/** Everything that is said in one language. */
export interface Words {
  /** A number with some digits after the point. */
  readonly number: (value: number, digits?: number) => string;
  /** A voice as a heading or in a table. */
  readonly voices: Readonly<Record<Voice, string>>;
  /** A place with its preposition, e.g. "on the last triplet of 3". */
  readonly place: (place: RemarkPlace) => string;
  readonly sayings: Sayings;
  readonly unheard: UnheardSayings;
  readonly report: ReportWords;
}

const WORDS: Readonly<Record<ReportLanguage, Words>> = { en: english, de: german };

/** The words of a language. */
export function wordsOf(language: ReportLanguage): Words {
  return WORDS[language];
}
