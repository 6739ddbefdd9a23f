/**
 * What a teacher would remark on in a take, before it is put into words.
 *
 * Conventions: `strength` is how many times over the limit of the student's level something is; from 1 on it is
 * worth a word. Praise has a strength under 1. Amounts are positive: ms, dB, bpm, percent.
 */
import type { Bpm, Voice } from '@shedbook/core';

/** A place of the pattern. */
export interface RemarkPlace {
  readonly beat: number;
  readonly slot: number;
  /** Slots in the beat's subdivision. */
  readonly slots: number;
  /** Bar of the form, or null where the place comes in every bar. */
  readonly bar: number | null;
}

/** How often, in how many times that it was due. */
export interface HowOften {
  readonly times: number;
  /** Number of times that it was due. */
  readonly of: number;
}

/** What a remark says. */
export type RemarkFact =
  | ({ readonly kind: 'missing'; readonly voice: Voice; readonly place: RemarkPlace } & HowOften)
  | ({ readonly kind: 'left-out'; readonly voice: Voice } & HowOften)
  | { readonly kind: 'added'; readonly voice: Voice; readonly count: number }
  | ({
      readonly kind: 'early' | 'late';
      readonly voice: Voice;
      readonly place: RemarkPlace;
      readonly ms: number;
    } & HowOften)
  /** All of a voice before or after the lead voice; `apart` where two strokes are heard instead of one. */
  | {
      readonly kind: 'before' | 'after';
      readonly voice: Voice;
      readonly lead: Voice;
      readonly ms: number;
      readonly apart: boolean;
    }
  | { readonly kind: 'unsteady'; readonly voice: Voice; readonly ms: number }
  | { readonly kind: 'slows' | 'hurries'; readonly fromBpm: number; readonly toBpm: number }
  | { readonly kind: 'wanders'; readonly percent: number }
  | { readonly kind: 'slower' | 'faster'; readonly bpm: Bpm; readonly askedBpm: number }
  | { readonly kind: 'flat-swing' | 'sharp-swing'; readonly ratio: number; readonly askedRatio: number }
  | { readonly kind: 'loud' | 'quiet'; readonly voice: Voice; readonly lead: Voice; readonly db: number }
  | { readonly kind: 'uneven'; readonly voice: Voice; readonly db: number }
  | { readonly kind: 'complete'; readonly count: number }
  | { readonly kind: 'steady'; readonly voice: Voice; readonly ms: number }
  | { readonly kind: 'holds'; readonly bpm: Bpm }
  | { readonly kind: 'balanced' };

/** A remark. */
export type Remark = RemarkFact & {
  /** Ratio to the limit of the student's level; praise has less than 1. */
  readonly strength: number;
};

/** Whether a remark is praise. */
export function isPraise({ strength }: Remark): boolean {
  return strength < 1;
}
