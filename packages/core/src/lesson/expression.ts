/**
 * What an exercise says beside its notes: how loud, what stands over and under its bars, and where the groove is silent.
 *
 * Conventions: bars and beats count from 0 in the program and from 1 for people.
 */
import type { DynamicMark } from '../kit/dynamics.ts';
import type { Limb, Voice } from '../kit/voice.ts';

/** What begins or ends on a beat: a printed dynamic, and a hairpin. */
export interface DynamicSign {
  readonly bar: number;
  readonly beat: number;
  /** How loud it is from here on; null where only a hairpin begins or ends. */
  readonly mark: DynamicMark | null;
  /** A hairpin that begins here, or the end of one without a mark; null for neither. */
  readonly hairpin: 'louder' | 'softer' | 'end' | null;
}

/** Who is silent. */
export type Silent = Limb | Voice;

/** A fill: from a beat to the end of the exercise the groove is silent. */
export interface Fill {
  readonly bar: number;
  readonly beat: number;
  /** Whose part of the groove is silent; null for all of it. */
  readonly silences: readonly Silent[] | null;
}

/** What an exercise says beside its notes; each is left out where nothing is said. */
export interface Expression {
  /** In order of place; at most one on a beat. */
  readonly dynamics?: readonly DynamicSign[];
  /** Text over each bar, null where there is none; no longer than the exercise. */
  readonly above?: readonly (string | null)[];
  /** Text under each bar. */
  readonly below?: readonly (string | null)[];
  readonly fill?: Fill;
  /** Limbs and voices of the groove that are silent throughout. */
  readonly rests?: readonly Silent[];
}
