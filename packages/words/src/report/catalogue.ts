/**
 * What a catalogue of a language has to say about a take and its report.
 *
 * Conventions: numbers come in as numbers and are written as the language writes them.
 */
import type { Unheard, Voice } from '@shedbook/core';
import type { RemarkFact, RemarkPlace } from '@shedbook/judge';

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
export interface ReportCatalogue {
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
