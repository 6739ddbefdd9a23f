/**
 * What a story may say: who played what, heard how, at which level, and the verdict that a good teacher would give.
 *
 * Conventions: those of `stories.data.mjs` and `play.mjs`.
 */
import type { Voice } from '@shedbook/core';
import type { Level, Verdict } from '@shedbook/judge';

/** One value for all voices, or values by voice. */
type ByVoice = number | Partial<Record<Voice, number>>;

/** What goes otherwise than written. */
export interface Changes {
  readonly exercise?: number;
  readonly only?: readonly Voice[];
  readonly leaves?: readonly Voice[];
  readonly leavesAt?: readonly {
    readonly voice: Voice;
    readonly places?: readonly string[];
    readonly bars?: readonly number[];
    /** Rounds from 0. */
    readonly rounds?: readonly number[];
    /** Only strokes that are softer than this. */
    readonly softerThanDb?: number;
  }[];
  readonly adds?: readonly {
    readonly voice: Voice;
    readonly place: string;
    readonly inBars?: readonly number[];
  }[];
  readonly on?: Partial<Record<Voice, Voice>>;
  /** Swung off-beats in the middle: all, of some voices, or swung sixteenths. */
  readonly straight?: boolean | readonly Voice[] | 'sixteenths';
  readonly beatsLate?: ByVoice;
  readonly lateMs?: ByVoice;
  readonly spreadMs?: ByVoice;
  readonly lateAt?: readonly {
    readonly voice: Voice;
    readonly places?: readonly string[];
    readonly bars?: readonly number[];
    /** Rounds from 0. */
    readonly rounds?: readonly number[];
    readonly ms: number;
  }[];
  readonly tempo?: number;
  readonly drift?: number;
  readonly louderDb?: ByVoice;
  readonly spreadDb?: number;
  readonly sounds?: number;
  readonly silent?: boolean;
  /** The bars that come, one after the other, instead of those of the form. */
  readonly bars?: readonly number[];
  /** Off-beats of straight eighths, or every second straight sixteenth, as a shuffle's. */
  readonly swung?: boolean | 'sixteenths';
  /** How much louder than written soft strokes are. */
  readonly ghostsDb?: number;
  /** Bars in which nothing is played, the count going on; rounds from 0. */
  readonly rests?: readonly { readonly round?: number; readonly bars: readonly number[] }[];
  /** A stop, after which everything comes so many beats later. */
  readonly pause?: { readonly round: number; readonly bar: number; readonly beats: number };
  /** A bar that is left out, so that all that follows comes a bar sooner. */
  readonly skips?: { readonly round: number; readonly bar: number };
}

/** How it is played and heard. */
interface Situation {
  readonly sheet?: string;
  readonly exercise: number;
  readonly bpm?: number;
  readonly level: Level;
  /** Bars of the form. */
  readonly form?: number;
  readonly click?: boolean;
  readonly microphone?: boolean;
  readonly loudspeaker?: boolean;
  /** Whether the ear knows what the loudspeaker plays. */
  readonly isKnown?: boolean;
  readonly plays?: readonly Voice[];
  readonly sounding?: readonly Voice[];
  readonly rounds?: number;
  readonly silentRounds?: readonly number[];
  readonly ladder?: number;
  readonly takeOnly?: boolean;
  readonly play?: Changes;
}

/** A story with the verdict that it asks for. */
export interface Story extends Situation {
  readonly name: string;
  /** Whether it is heard from sound too. */
  readonly sound?: boolean;
  readonly is: Verdict['is'] | readonly Verdict['is'][];
  readonly first?: string | readonly string[];
  readonly voice?: Voice;
  readonly has?: readonly string[];
  readonly not?: readonly string[];
  readonly unevenOnly?: readonly Voice[];
}
