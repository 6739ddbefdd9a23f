/**
 * Finding short taps on one surface, as soon as they sound.
 *
 * Conventions: mono samples in blocks of any length; seconds from the first sample that was given. A tap is where the
 * level of the differenced signal (which leaves out hum and rumble) rises well over what it was just before and over
 * the floor of the room.
 * Source: J. P. Bello and others, "A tutorial on onset detection in music signals", IEEE Trans. Speech and Audio
 * Processing 13(5), 2005, section III (energy of the first difference); the figures are our choice.
 */
import { type Hertz, TakeDb } from '@shedbook/core';
import { gainToDb } from '@shedbook/signal';

/** A tap. */
export interface Tap {
  /** When it begins, in seconds from the first sample. */
  readonly seconds: number;
  /** Peak, in dB relative to full scale. */
  readonly levelDb: TakeDb;
}

/** Length of a frame, in seconds. */
const FRAME_SECONDS = 0.001;
/** A tap rises over the level of the frames before it, and over the floor, by these factors. */
const RISES = 3;
const OVER_FLOOR = 6;
/** Nothing under this peak is a tap: a microphone in a silent room. */
const LEAST = 0.002;
/** Time after a tap in which there is no other, in seconds: sixteenth triplets at 200 are 50 ms apart. */
const DEAD_SECONDS = 0.045;
/** So long the room is listened to before the first tap, in seconds. */
const WARM_SECONDS = 0.1;
/** How fast the recent level is forgotten and the floor follows, a frame. */
const RECENT = 0.85;
const FLOOR = 0.995;

/** Finds taps in a stream. */
export class TapFinder {
  readonly #frame: number;
  readonly #rate: number;
  #at = 0;
  #last = 0;
  #filled = 0;
  #peak = 0;
  #first = -1;
  #recent = 0;
  #floor = 0;
  #deadUntil: number;

  constructor(rateHz: Hertz) {
    this.#rate = rateHz;
    this.#deadUntil = WARM_SECONDS * rateHz;
    this.#frame = Math.max(1, Math.round(FRAME_SECONDS * rateHz));
  }

  /** Takes the next samples. @returns the taps that end in them */
  push(samples: Float32Array): readonly Tap[] {
    const taps: Tap[] = [];
    for (const sample of samples) {
      const rise = Math.abs(sample - this.#last);
      this.#last = sample;
      if (this.#first < 0 && rise > this.#threshold()) this.#first = this.#at;
      this.#peak = Math.max(this.#peak, rise);
      this.#at += 1;
      this.#filled += 1;
      if (this.#filled < this.#frame) continue;
      const tap = this.#endFrame();
      if (tap) taps.push(tap);
    }
    return taps;
  }

  #threshold(): number {
    return Math.max(LEAST, RISES * this.#recent, OVER_FLOOR * this.#floor);
  }

  #endFrame(): Tap | null {
    const first = this.#first;
    const peak = this.#peak;
    if (this.#floor === 0) this.#floor = peak;
    const isTap = first >= 0 && this.#at >= this.#deadUntil;
    this.#recent = Math.max(peak, this.#recent * RECENT);
    // The floor follows what is soft at once and what is loud slowly: a tap is not the room.
    this.#floor =
      peak < this.#floor ? peak : this.#floor * FLOOR + (1 - FLOOR) * Math.min(peak, 4 * this.#floor);
    this.#floor = Math.max(this.#floor, LEAST / OVER_FLOOR / 4);
    this.#filled = 0;
    this.#peak = 0;
    this.#first = -1;
    if (!isTap) return null;
    this.#deadUntil = this.#at + DEAD_SECONDS * this.#rate;
    return { seconds: first / this.#rate, levelDb: TakeDb(gainToDb(peak)) };
  }
}
