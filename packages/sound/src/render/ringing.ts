/**
 * How much an instrument rings already when it is struck again: what that leaves for the new stroke to do, and how
 * much wash a cymbal adds.
 *
 * What is asked of a stroke is what is to be heard over its first 100 ms. While earlier strokes ring on, part of
 * that is there already, and the new one is a little softer, so that the balance holds at any tempo.
 *
 * A plate that moves strongly passes energy from its low modes to its high ones: repeated strokes gather a wash
 * that no single stroke has. Its gain grows with the energy that earlier strokes have left and then levels off.
 *
 * Conventions: powers are relative to a plain stroke's over its first 100 ms; seconds.
 * Source: Rossing and Fletcher, The Physics of Musical Instruments, ch. 20 (energy transfer); the laws are ours.
 */
import { dbToPower } from '@shedbook/signal';
import { FADING_STEP_SECONDS, type MeasuredSound } from '../kit/measured-sound.ts';

/** Energy left in a cymbal falls to 1/e in this time. */
const RINGING_SECONDS = 0.9;
/** A stroke keeps at least this part of its power, however much rings already. */
const LEAST_SHARE = 0.4;
/** Strokes longer ago than the last few are left out. */
const REMEMBERED = 8;

/** What a new stroke finds. */
export interface Found {
  /** Factor on the stroke's gain, at most 1. */
  readonly ownGain: number;
  /** Gain of its wash relative to the stroke, 0…1. */
  readonly washGain: number;
}

/** The state of one instrument. */
export interface Ringing {
  /** Takes in a stroke and tells what it found. */
  strike(sound: MeasuredSound, timeSeconds: number, levelDb: number): Found;
  /** The instrument is silenced. */
  choke(): void;
}

interface Past {
  readonly timeSeconds: number;
  readonly sound: MeasuredSound;
  readonly power: number;
  readonly washPower: number;
}

function at(fading: Float64Array, seconds: number): number {
  return fading[Math.round(seconds / FADING_STEP_SECONDS)] ?? 0;
}

/** An instrument at rest. */
export function createRinging(): Ringing {
  let past: readonly Past[] = [];
  return {
    strike(sound, timeSeconds, levelDb) {
      const asked = dbToPower(levelDb);
      const since = (stroke: Past) => Math.max(0, timeSeconds - stroke.timeSeconds);
      const heard = past.reduce((sum, stroke) => {
        const { fading, washFading } = stroke.sound;
        const wash = stroke.washPower * at(washFading, since(stroke));
        return sum + stroke.power * at(fading, since(stroke)) + wash;
      }, 0);
      const left = past.reduce((sum, each) => sum + each.power * Math.exp(-since(each) / RINGING_SECONDS), 0);
      const washGain = Math.tanh(0.5 * Math.sqrt(left));
      const share = Math.max(LEAST_SHARE, 1 - heard / asked);
      const power = asked * share;
      past = [...past.slice(1 - REMEMBERED), { timeSeconds, sound, power, washPower: power * washGain ** 2 }];
      return { ownGain: Math.sqrt(share), washGain };
    },
    choke() {
      past = [];
    },
  };
}
