/**
 * What the page and the ear say to each other.
 *
 * Conventions: seconds of the audio context, latency not yet taken off.
 */
import type { Bpm, Voice } from '@shedbook/core';
import type { Asked, KnownKit, LearntKit, Limb, Listened, LiveStroke, Recording } from '@shedbook/listen';
import type { CapturedBlock } from '../device/capture-messages.ts';
import type { KitNote } from '../device/midi-clock.ts';

/** One time through the form, on the clock of the sound. */
export interface LoopTime {
  readonly startSeconds: number;
  readonly endSeconds: number;
  /** Quarter notes a minute. */
  readonly bpm: Bpm;
}

/**
 * What a worker of the ear does. Strokes are drawn at once; a report takes longer than a stroke may wait, so the two
 * listen side by side.
 */
export type EarRole = 'strokes' | 'reports';

/** From the page. */
export type EarOrder =
  /** Comes first. */
  | { readonly kind: 'role'; readonly role: EarRole }
  /** Begins to listen for something; what was asked before is reported on until its last loop is over. */
  | {
      readonly kind: 'ask';
      /** What comes of it carries this name. */
      readonly id: string;
      readonly asked: Asked;
      /** What every stroke is, where one plays on one surface; null on a drum set. */
      readonly onPad: Voice | null;
      /** Null where notes come instead of sound. */
      readonly sampleRateHz: number | null;
      readonly originSeconds: number;
      readonly latencySeconds: number;
      /** What a line check told of the kit; left out where there is none, and where one plays on one surface. */
      readonly kit?: KnownKit;
    }
  | { readonly kind: 'blocks'; readonly port: MessagePort }
  /** A block of what was recorded before. */
  | { readonly kind: 'block'; readonly block: CapturedBlock }
  | { readonly kind: 'note'; readonly note: KitNote }
  /** Where the clock stands; needed where no blocks say so. */
  | { readonly kind: 'time'; readonly seconds: number }
  | { readonly kind: 'loop'; readonly loop: LoopTime }
  /** What is being played was broken off: the open loop is not reported on. */
  | { readonly kind: 'break off'; readonly atSeconds: number }
  | { readonly kind: 'latency'; readonly seconds: number }
  /** Asks what a line check tells of a kit. */
  | { readonly kind: 'line check'; readonly check: Recording; readonly limbs: readonly Limb[] }
  /** Asks which kits were learnt with other weights. */
  | { readonly kind: 'which are old'; readonly kits: readonly KnownKit[] }
  /** Asks for the take, everything since `ask`, as soon as its last loop is over. */
  | { readonly kind: 'finish' };

/** What is listened for. */
export type EarAsked = Extract<EarOrder, { kind: 'ask' }>;

/** A stroke on the clock of the sound, with the time at which its sound was taken. */
export interface HeardStroke extends LiveStroke {
  /** Onset in seconds of the audio context. */
  readonly contextSeconds: number;
}

/** From the ear. */
export type EarReport =
  | { readonly kind: 'strokes'; readonly strokes: readonly HeardStroke[] }
  /** How loud the microphone is, as the peak of the last tenth of a second in dB re full scale. */
  | { readonly kind: 'level'; readonly peakDb: number }
  | { readonly kind: 'learnt'; readonly learnt: LearntKit }
  /** Names of the kits that were learnt with other weights. */
  | { readonly kind: 'old ones'; readonly names: readonly string[] }
  /** The line check that was asked with was made with other weights and is not used. */
  | { readonly kind: 'old line check'; readonly name: string }
  /** What was recorded since the last of these, in 16 bits: the whole of it, in order. */
  | { readonly kind: 'sound'; readonly id: string; readonly samples: Int16Array<ArrayBuffer> }
  /** A bar of a loop that goes on is over, from 1: what can be said of it by now. */
  | {
      readonly kind: 'bar';
      readonly id: string;
      readonly number: number;
      readonly loop: LoopTime;
      readonly bar: number;
      readonly heard: Listened;
    }
  | {
      readonly kind: 'loop';
      readonly id: string;
      readonly number: number;
      readonly loop: LoopTime;
      readonly heard: Listened;
    }
  | {
      readonly kind: 'take';
      readonly id: string;
      readonly heard: Listened;
      /** Null where notes came instead of sound. */
      readonly audio: Blob | null;
      readonly durationSeconds: number;
      readonly originSeconds: number;
      readonly loops: readonly LoopTime[];
    };
