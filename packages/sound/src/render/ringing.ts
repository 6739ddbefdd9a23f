/**
 * How much a cymbal rings already when it is struck again, and how much wash that adds.
 *
 * A plate that moves strongly passes energy from its low modes to its high ones: repeated strokes gather a wash
 * that no single stroke has. The energy left by earlier strokes decays exponentially; the wash of a new stroke
 * grows with it and then levels off.
 *
 * Conventions: energy 1 is that of a plain stroke; seconds.
 * Source: Rossing and Fletcher, The Physics of Musical Instruments, ch. 20 (energy transfer); the law is ours.
 */

const RINGING_SECONDS = 0.9;
const MOST_WASH = 1;

/** The state of one cymbal. */
export interface Ringing {
  /** Takes in a stroke; returns the gain of its wash relative to the stroke, 0…1. */
  strike(timeSeconds: number, levelDb: number): number;
  /** The cymbal is silenced. */
  choke(timeSeconds: number): void;
}

/** A cymbal at rest. */
export function createRinging(): Ringing {
  let [energy, at] = [0, 0];
  const settle = (timeSeconds: number) => {
    energy *= Math.exp(-Math.max(0, timeSeconds - at) / RINGING_SECONDS);
    at = Math.max(at, timeSeconds);
  };
  return {
    strike(timeSeconds, levelDb) {
      settle(timeSeconds);
      const before = energy;
      energy += 10 ** (levelDb / 10);
      return MOST_WASH * Math.tanh(0.5 * Math.sqrt(before));
    },
    choke(timeSeconds) {
      settle(timeSeconds);
      energy = 0;
    },
  };
}
