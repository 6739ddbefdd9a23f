/**
 * The full report of a take: the shared contract and what only people and pictures need.
 *
 * Conventions: as in core's take report; everything beyond it are extra fields that readers may ignore. Levels of a
 * recording are K-weighted (ITU-R BS.1770-4) over the first 100 ms of each stroke, as a lesson's are when it sounds, so
 * that the balance that was played and the one that was asked compare; all are relative to the take's lead voice.
 */
import type { Voice } from '../kit/voice.ts';
import type { Bpm, LeadDb, Milliseconds, Quarters, Seconds } from '../units.ts';
import type { TakeReport } from './report.ts';

/** Tempo at one bar line of the take. */
export interface TempoPoint {
  readonly timeSeconds: Seconds;
  readonly bpm: Bpm;
}

/** What was played at one written place each time that it came round. */
export interface PlacePlayed {
  readonly voice: Voice;
  /** The first bar of the form that has it. */
  readonly bar: number;
  readonly beat: number;
  readonly slot: number;
  /** Slots in the beat's subdivision. */
  readonly slots: number;
  /** Whether the voice plays the same in every bar, so that the bar need not be named. */
  readonly everyBar: boolean;
  /** How often it was due and not played. */
  readonly missed: number;
  /** Lateness in ms beside the voice's own median, for each time that it was played, in order. */
  readonly offsetsMs: readonly Milliseconds[];
}

/** How the levels of one voice's plain strokes scatter. */
export interface Evenness {
  readonly voice: Voice;
  /** In dB, of whatever scale. */
  readonly spreadDb: number;
}

/** What was asked, as far as remarks need it. */
export interface AskedOf {
  /** Quarter notes a minute. */
  readonly bpm: Bpm;
  /** The lesson's swing ratio at the tempo that was played, where eighths swing; null for an even feel. */
  readonly swingRatio: number | null;
  readonly beatsInBar: number;
  /** Where beats begin, as shares of the bar; of one length in reports that were kept before it was told. */
  readonly beats?: readonly number[];
  readonly quartersInBar: Quarters;
}

/** A report with everything that was measured. */
export interface FullReport extends TakeReport {
  /** When each of the missed strokes was due, in the same order. */
  readonly missedSeconds: readonly Seconds[];
  readonly tempo: readonly TempoPoint[];
  /**
   * The bar lines of the click that the student played along with, which offsets are measured against; left out where
   * they are measured against the take's own pulse.
   */
  readonly click?: readonly TempoPoint[];
  /** Median absolute change of tempo from bar to bar, in percent. */
  readonly barToBarPercent: number | null;
  /** Reports that were kept before places were told have none. */
  readonly places?: readonly PlacePlayed[];
  readonly evenness: readonly Evenness[];
  /** Bars of the form as they were played, in order; null where nothing of it was. */
  readonly playedBars: readonly (number | null)[];
  /** Median level that the lesson asks of each voice's strokes, accents and ghost notes as they are written. */
  readonly lessonBalanceDb: Readonly<Partial<Record<Voice, LeadDb>>>;
  readonly lead: Voice;
  readonly asked: AskedOf;
}
