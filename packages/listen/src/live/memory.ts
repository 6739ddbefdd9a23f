/**
 * What a live listener remembers of the events so far, so that the next one is judged with them in mind.
 *
 * Conventions: claims as in `decide/second-look.ts`; logits of one event, one a voice.
 */

import type { Voice } from '@shedbook/core';
import { type Claim, claimAt, hearAgain } from '../decide/second-look.ts';
import type { HeardEvent } from '../detect/events.ts';
import { HEARD_COUNT, HEARD_VOICES, type SecondLookWeights } from '../network/network.ts';

/** Events that are kept: half a minute of swing, so that the kit is known and a moved microphone soon learnt. */
const KEPT = 128;

/** The last events with what the score claims of each. */
export class LiveMemory {
  readonly #weights: SecondLookWeights;
  readonly #expected = new Float64Array(HEARD_COUNT);
  readonly #events: HeardEvent[] = [];
  readonly #near: Float64Array[] = [];

  /** @param asked the voices that the exercise has. */
  constructor(weights: SecondLookWeights, asked: Iterable<Voice>) {
    this.#weights = weights;
    for (const voice of asked) this.#expected[HEARD_VOICES.indexOf(voice)] = 1;
  }

  /**
   * Takes the next event. `distanceOf` gives how far it is from the nearest written stroke of a voice, in seconds.
   * @returns the presence of each voice, as logits.
   */
  hear(event: HeardEvent, distanceOf: (voice: Voice) => number): Float64Array {
    const row = new Float64Array(HEARD_COUNT);
    HEARD_VOICES.forEach((voice, index) => {
      if (voice !== 'click' && this.#expected[index] === 1) row[index] = claimAt(distanceOf(voice));
    });
    this.#events.push(event);
    this.#near.push(row);
    if (this.#events.length > KEPT) {
      this.#events.shift();
      this.#near.shift();
    }
    const last = this.#events.length - 1;
    const again = hearAgain(this.#events, this.#claim(), this.#weights, { from: last });
    return again.subarray(last * HEARD_COUNT);
  }

  #claim(): Claim {
    const near = new Float64Array(this.#near.length * HEARD_COUNT);
    for (const [e, row] of this.#near.entries()) near.set(row, e * HEARD_COUNT);
    return { near, expected: this.#expected };
  }
}
