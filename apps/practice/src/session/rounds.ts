/**
 * Which round a student speaks of: the one that went by last, once; in the last bar of a round, the one that is about
 * to go by.
 *
 * Conventions: pure; tempi in quarter notes a minute. A round counts when it sounded from its first bar to its last
 * bar line.
 */
import type { Bpm, LoopVerdict } from '@shedbook/core';

/** A round that went by, and whether anybody has spoken of it. */
interface Gone {
  readonly bpm: Bpm;
  readonly isTold: boolean;
}

/** What is known of the rounds of a stretch of playing. */
export interface Rounds {
  readonly gone: Gone | null;
  /** Whether the last bar of a round sounds. */
  readonly isEnding: boolean;
  /** What was said of the round that is about to go by. */
  readonly said: LoopVerdict | null;
}

/** Why a word of the student counts for nothing yet: no round went by, or the last one is told already. */
export type TooEarly = 'no round yet' | 'told already';

/** What comes of a word: a round that is told, a word that waits for its round, or neither. */
export type Spoken =
  | { readonly kind: 'told'; readonly bpm: Bpm; readonly verdict: LoopVerdict }
  | { readonly kind: 'waits' }
  | { readonly kind: 'too early'; readonly why: TooEarly };

/** Before anything sounds. */
export const NO_ROUNDS: Rounds = { gone: null, isEnding: false, said: null };

/** A bar of the form begins. */
export function atBar(rounds: Rounds, bar: number, bars: number): Rounds {
  return { ...rounds, isEnding: bar === bars };
}

/** A round went by. @returns what was said of it while it ended, if anything was. */
export function goneBy(
  { said }: Rounds,
  bpm: Bpm,
): { readonly rounds: Rounds; readonly told: LoopVerdict | null } {
  return { rounds: { gone: { bpm, isTold: said !== null }, isEnding: false, said: null }, told: said };
}

/** The student says what a round was. */
export function speak(
  rounds: Rounds,
  verdict: LoopVerdict,
): { readonly rounds: Rounds; readonly spoken: Spoken } {
  const { gone, isEnding } = rounds;
  if (gone && !gone.isTold) {
    const told = { ...rounds, gone: { ...gone, isTold: true } };
    return { rounds: told, spoken: { kind: 'told', bpm: gone.bpm, verdict } };
  }
  if (isEnding) return { rounds: { ...rounds, said: verdict }, spoken: { kind: 'waits' } };
  return { rounds, spoken: { kind: 'too early', why: gone ? 'told already' : 'no round yet' } };
}
