/**
 * The report of a take: what was heard, limb by limb. Written by listening, read by coaching and by people.
 *
 * Conventions: seconds from the start of the file; milliseconds only where the name says so, positive is late;
 * dB relative to the take's own lead voice unless the name says otherwise, of a recording K-weighted (ITU-R
 * BS.1770-4) over the first 100 ms of a stroke; bars, beats and slots from 1; bpm counts quarter notes.
 */
import type { Fact } from '../fact.ts';
import type { WrittenPlace } from '../groove/stroke.ts';
import type { Voice } from '../kit/voice.ts';
import type { Bpm, LeadDb, Milliseconds, Seconds } from '../units.ts';

/** A stroke that was heard. */
export interface ReportStroke {
  /** Physical onset in the file. */
  readonly timeSeconds: Seconds;
  readonly voice: Voice;
  readonly levelDb: LeadDb;
  /** Where it is written, or null for an extra stroke. */
  readonly written: WrittenPlace | null;
  /** Lateness against the take's own pulse, or null for an extra stroke. */
  readonly offsetMs: Milliseconds | null;
  /** 0 to 1. */
  readonly confidence: number;
  /**
   * Whose stroke it may be where a loudspeaker played along: `loudspeaker` for sure, or `unknown` where the ear could
   * not tell. Left out for a stroke of the student.
   */
  readonly from?: 'loudspeaker' | 'unknown';
}

/** What was heard of one voice. */
export interface VoiceReport {
  readonly hits: number;
  readonly missed: number;
  readonly extra: number;
  /** Milliseconds after the written time; negative is early. */
  readonly offsetMs: { readonly median: Milliseconds; readonly spread: Milliseconds };
  readonly levelDb: LeadDb;
}

/** What the recording cannot tell, or what its figures rest on. */
export type Unheard =
  /** A voice that was due and not heard at all, or one that can hardly be told from the others. */
  | { readonly reason: 'not-heard' | 'hard-to-tell'; readonly voice: Voice }
  /** A voice that the ear does not know yet: its strokes are neither heard nor missed. */
  | { readonly reason: 'not-listened-for'; readonly voice: Voice }
  /** A voice that the loudspeaker played too: so many of its strokes cannot be told from the loudspeaker's. */
  | { readonly reason: 'from-loudspeaker'; readonly voice: Voice; readonly count: number }
  /** So many strokes of a voice lie under louder ones that are never struck without it: played or not, they sound alike. */
  | { readonly reason: 'under-others'; readonly voice: Voice; readonly count: number }
  /** So many times a brush was to be drawn over the head: that begins at no moment which could be heard. */
  | { readonly reason: 'brush-drawn'; readonly count: number }
  /** What was played is as much of these other exercises of the lesson, by their numbers. */
  | { readonly reason: 'as-other-exercises'; readonly exercises: readonly number[] }
  /** Played clearly slower or faster than asked, in quarter notes a minute. */
  | { readonly reason: 'other-tempo'; readonly bpm: Bpm; readonly askedBpm: Bpm }
  | { readonly reason: 'partly-recognised' };

/** How a take agrees with the exercise that was asked, and with the others of the lesson. */
export interface ExerciseAgreement {
  /** Share of the exercise's own strokes that were played there and not elsewhere, as an F-measure: 0 to 1. */
  readonly agreement: number;
  /** Number of the exercise that was clearly rather played; the asked one was not. */
  readonly rather?: number;
  /** Numbers of exercises that what was heard agrees with as well, so that it cannot be told which was played. */
  readonly cannotTellFrom?: readonly number[];
  /** Number of the exercise that the take is likeliest of, whatever was asked, where that is another one. */
  readonly likeliest?: number;
}

/** What a loudspeaker played during the take, as it was found in the recording. */
export interface LoudspeakerHeard {
  /** How much later than it was given it lies in the recording. */
  readonly delaySeconds: Seconds;
  /** How loud it is in the recording beside everything, in dB: 0 is all that there is. */
  readonly levelDb: number;
}

type FactOf<One> = One extends { readonly reason: infer Reason extends string }
  ? Fact & Omit<One, 'reason'> & { readonly fact: Reason }
  : never;

/** The same as facts, to be said: reports are kept with reasons. */
export type UnheardFact = FactOf<Unheard>;

/** What cannot be told, as a fact. */
export function unheardFact({ reason, ...values }: Unheard): UnheardFact {
  return { fact: reason, ...values } as UnheardFact;
}

/** Whether a voice can hardly be told from the others, so that its figures would only mislead. */
export function isGuess({ unheard = [] }: Pick<TakeReport, 'unheard'>, voice: Voice): boolean {
  return unheard.some((one) => one.reason === 'hard-to-tell' && one.voice === voice);
}

/** Version of the report that this program writes. */
export const REPORT_VERSION = 1;

/** Everything heard in a take. */
export interface TakeReport {
  readonly version: number;
  readonly take: { readonly kind: 'audio' | 'midi'; readonly durationSeconds: Seconds };
  readonly alignment: {
    readonly startSeconds: Seconds;
    readonly bpm: Bpm;
    readonly driftBpmPerMinute: number;
    readonly confidence: number;
  };
  readonly strokes: readonly ReportStroke[];
  readonly missed: readonly (WrittenPlace & { readonly voice: Voice })[];
  /** Written strokes of which it cannot be said whether they were played: neither heard nor missed. None when left out. */
  readonly unknown?: readonly (WrittenPlace & { readonly voice: Voice })[];
  /**
   * Written strokes that lie under louder ones, of which nobody can say whether they were played: neither heard nor missed.
   * None when left out.
   */
  readonly covered?: readonly (WrittenPlace & { readonly voice: Voice })[];
  /** The voices that this student plays, where not all: the others are neither heard nor missed. */
  readonly plays?: readonly Voice[];
  /** Left out where only the groove was asked, and in reports that were kept before it was told. */
  readonly exercise?: ExerciseAgreement;
  /** The name of the line check of the kit that it was heard with; left out where there was none. */
  readonly lineCheck?: string;
  /** Left out where nothing is known of a loudspeaker. */
  readonly loudspeaker?: LoudspeakerHeard;
  readonly voices: Readonly<Partial<Record<Voice, VoiceReport>>>;
  /** Ratio long : short of the swung beats, and how many there were; null where nothing swings. */
  readonly swingRatio: { readonly median: number; readonly spread: number; readonly count: number } | null;
  /** Median level of each voice relative to the lead voice. */
  readonly balanceDb: Readonly<Partial<Record<Voice, LeadDb>>>;
  /** Voices that a loudspeaker played during the take, where that is known. */
  readonly playing?: readonly Voice[];
  /** What could not be heard, and why; reports that were kept before there were reasons have none. */
  readonly unheard?: readonly Unheard[];
  /** The same in sentences, as a report that is written to a file has it for its readers. */
  readonly notHeard?: readonly string[];
}
