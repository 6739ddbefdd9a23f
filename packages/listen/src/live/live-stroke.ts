/**
 * What a live listener hands over: strokes at once, reports when a loop is over.
 *
 * Conventions: every time is in seconds of the stream, counted from the first sample that was pushed; MIDI notes
 * are given in the same time. Loops count from 0; bars, beats and slots from 1 inside their loop. Offsets are
 * against the clock: positive is late.
 */
import type { Bpm, Hertz, Milliseconds, Seconds, TakeDb, Voice, WrittenPlace } from '@shedbook/core';
import type { KnownKit } from '../detect/known-kit.ts';
import type { Listened } from '../listened.ts';
import type { BesideStream } from '../loudspeaker/beside-stream.ts';

/** A written place in one of the loops. */
export interface LivePlace extends WrittenPlace {
  /** Which time through the form, from 0. */
  readonly loop: number;
}

/** A stroke, as soon as it is known. */
export interface LiveStroke {
  /** Physical onset in the stream. */
  readonly timeSeconds: Seconds;
  readonly voice: Voice;
  readonly levelDb: TakeDb;
  /** The nearest place at which this voice is written, or null where none is within reach. */
  readonly written: LivePlace | null;
  /** Lateness against the clock, latency taken off; null where nothing is written. */
  readonly offsetMs: Milliseconds | null;
  /** 0 to 1. */
  readonly confidence: number;
  /** Whether enough is known of the kit to say that it was this voice; else a later look may take it back. */
  readonly isSure: boolean;
}

/** A bar that was announced. */
export interface LiveBar {
  /** Which time through the form, from 0. */
  readonly loop: number;
  /** Which bar of its loop, from 1. */
  readonly bar: number;
  /** When it is over, the latency not added. */
  readonly endSeconds: Seconds;
}

/** What a live listener has to know of its stream. */
export interface LiveOptions {
  /** Samples a second of the blocks, a whole number from 4000 to 384000; left out where only notes come. */
  readonly sampleRateHz?: Hertz;
  /** How much later than the clock says a stroke on the beat lies in the stream; 0 when left out. */
  readonly latencySeconds?: Seconds;
  /**
   * Whether one plays on one surface: every tap and every note is a stroke of the exercise. The lesson is as `ontoPad`
   * gives it; false when left out.
   */
  readonly onPad?: boolean;
  /** What plays beside the student and was taken out of the stream, where that is known. */
  readonly beside?: BesideStream;
  /** What a line check told of the kit, with whatever weights. */
  readonly kit?: KnownKit;
  /** What alone is wanted of sound, in half of the work: strokes at once, or reports; both when left out. */
  readonly only?: 'strokes' | 'reports';
}

/** Listens while the student plays. */
export interface LiveListener {
  /**
   * Says that one time through the form begins; bars announced from there on are forgotten. To be said before the
   * first stroke of the loop can come.
   * @returns the loop's number, from 0.
   */
  startLoop(startSeconds: Seconds, bpm: Bpm): number;
  /**
   * Says that the next bar of the form begins, at a tempo in quarter notes a minute; after the form's last bar a
   * new loop begins. For tempo that changes from bar to bar; bars announced from there on are forgotten.
   */
  bar(startSeconds: Seconds, bpm: Bpm): void;
  /** Says that nothing is asked from here on. */
  stop(atSeconds: Seconds): void;
  /**
   * Takes the next block of mono samples.
   * @returns the strokes that became known, in no particular order.
   * @throws RangeError when the listener was made without a sample rate.
   */
  push(block: Float32Array): readonly LiveStroke[];
  /** Takes a note of an electronic kit. Notes come in order of time. */
  note(timeSeconds: Seconds, voice: Voice, levelDb: TakeDb): LiveStroke;
  /** Says how late the stream is from here on, e.g. after it was measured. */
  setLatency(latencySeconds: Seconds): void;
  /** How many loops were begun. */
  readonly loops: number;
  /** The bars that were announced and not called off, in order. */
  readonly bars: readonly LiveBar[];
  /**
   * The report of one loop, bars counted from 1 inside it, its sound complete 150 ms after its last bar.
   * @throws RangeError when there is no such loop, or strokes alone were wanted.
   */
  loopReport(loop: number): Listened;
  /**
   * What can be said of a loop up to and with one of its bars, from 1, once that is over: the report as if the loop had ended
   * there. What was hard to tell of an earlier bar may be known by now.
   * @throws RangeError when there is no such bar, or strokes alone were wanted.
   */
  reportUpTo(loop: number, bar: number): Listened;
  /** The report of all loops, bars counted through them. @throws RangeError when strokes alone were wanted. */
  finish(): Listened;
}
