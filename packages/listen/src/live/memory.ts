/**
 * What a live listener remembers of the events so far, so that the next one is judged with them in mind.
 *
 * Conventions: claims as in `decide/second-look.ts`; logits of one event, one a voice.
 */

import type { Voice } from '@shedbook/core';
import type { Moment } from '../decide/plays.ts';
import { type Claim, claimAt, hearAgain } from '../decide/second-look.ts';
import { needOf } from '../decide/threshold.ts';
import type { HeardEvent } from '../detect/events.ts';
import { HEARD_COUNT, HEARD_VOICES, outputOf } from '../network/heard-voices.data.ts';
import type { SecondLookWeights } from '../network/network.ts';

/** Events that are kept: half a minute of swing, so that the kit is known and a moved microphone soon learnt. */
const KEPT = 128;
/** A voice claimed for more than this is written there, one for less than the second figure is not. */
const WRITTEN = 0.5;
const UNWRITTEN = 0.05;

/** The last events with what the score claims of each. */
export class LiveMemory {
  readonly #weights: SecondLookWeights;
  readonly #expected = new Float64Array(HEARD_COUNT);
  readonly #events: HeardEvent[] = [];
  readonly #near: Float64Array[] = [];
  readonly #told: Float64Array[] = [];
  readonly #alone: Float64Array[] = [];

  /** @param asked the voices that the exercise has. */
  constructor(weights: SecondLookWeights, asked: Iterable<Voice>) {
    this.#weights = weights;
    for (const voice of asked) this.#expected[outputOf(voice)] = 1;
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
      for (const memory of [this.#events, this.#near, this.#told, this.#alone]) memory.shift();
    }
    const last = this.#events.length - 1;
    const look = (claim: Claim | null) =>
      hearAgain(this.#events, claim, this.#weights, { from: last }).slice(last * HEARD_COUNT);
    const told = look(this.#claim());
    this.#told.push(told);
    this.#alone.push(look(null));
    return told;
  }

  /** The evidence that a written stroke of a voice needs, by all that is remembered. */
  needed(voice: Voice): number {
    const index = outputOf(voice);
    const moments = this.#near.flatMap((row, e): Moment[] => {
      const isOwn = row[index]! > WRITTEN;
      const others = row.reduce(
        (bits, claim, other) => (other !== index && claim > WRITTEN ? bits | (1 << other) : bits),
        0,
      );
      if (!isOwn && (others === 0 || row[index]! >= UNWRITTEN)) return [];
      const early = this.#events[e]!.presence[index]!;
      return [{ isOwn, others, free: this.#alone[e]![index]!, early, told: this.#told[e]![index]! }];
    });
    return needOf(moments).written;
  }

  #claim(): Claim {
    const near = new Float64Array(this.#near.length * HEARD_COUNT);
    for (const [e, row] of this.#near.entries()) near.set(row, e * HEARD_COUNT);
    return { near, expected: this.#expected };
  }
}
