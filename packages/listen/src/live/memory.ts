/**
 * What a live listener remembers of the events so far, so that the next one is judged with them in mind.
 *
 * Conventions: claims as in `decide/second-look.ts`; logits of one event, one a voice.
 */

import type { Voice } from '@shedbook/core';
import { gatherEvidence, hearFreely } from '../decide/evidence.ts';
import type { Place } from '../decide/places.ts';
import { type Claim, claimAt, hearAgain } from '../decide/second-look.ts';
import { needsIn } from '../decide/strokes.ts';
import type { Need } from '../decide/threshold.ts';
import type { HeardEvent } from '../detect/events.ts';
import { HEARD_COUNT, HEARD_VOICES, outputOf } from '../network/heard-voices.data.ts';
import type { StrokeNetwork } from '../network/network.ts';

/** Events that are kept: half a minute of swing, so that the kit is known and a moved microphone soon learnt. */
const KEPT = 128;
/**
 * What a stroke needs before a bar has told how the kit sounds: to be likelier than not. With less, some of what is left of a
 * loudspeaker is taken for strokes before anything is known.
 */
const FIRST: Need = { playing: 'perhaps', written: 0, alone: Number.NEGATIVE_INFINITY };

/** The last events with what the score claims of each. */
export class LiveMemory {
  readonly #network: StrokeNetwork;
  readonly #voices: readonly Voice[];
  readonly #expected = new Float64Array(HEARD_COUNT);
  readonly #events: HeardEvent[] = [];
  readonly #near: Float64Array[] = [];
  #needs: ReadonlyMap<Voice, Need> = new Map();

  /** @param asked the voices that the exercise has. */
  constructor(network: StrokeNetwork, asked: Iterable<Voice>) {
    this.#network = network;
    this.#voices = [...asked];
    for (const voice of this.#voices) this.#expected[outputOf(voice)] = 1;
  }

  /** When the first event that is kept was, in seconds of the stream. */
  get fromSeconds(): number {
    return this.#events[0]?.timeSeconds ?? Number.POSITIVE_INFINITY;
  }

  /**
   * Takes the next event. `distanceOf` gives how far it is from the nearest written stroke of a voice, in seconds.
   * @returns the presence of each voice, as logits, with the score and without it.
   */
  hear(
    event: HeardEvent,
    distanceOf: (voice: Voice) => number,
  ): { readonly told: Float64Array; readonly free: Float64Array } {
    const row = new Float64Array(HEARD_COUNT);
    HEARD_VOICES.forEach((voice, index) => {
      if (voice !== 'click' && this.#expected[index] === 1) row[index] = claimAt(distanceOf(voice));
    });
    this.#events.push(event);
    this.#near.push(row);
    if (this.#events.length > KEPT) for (const memory of [this.#events, this.#near]) memory.shift();
    const last = this.#events.length - 1;
    const look = (claim: Claim | null) =>
      hearAgain(this.#events, claim, this.#network.secondLook, { from: last }).slice(last * HEARD_COUNT);
    return { told: look(this.#claim()), free: look(null) };
  }

  /** Learns what strokes need from the bars that are over. @param places what was written in them, in order of time */
  learn(places: readonly Place[]): void {
    const free = hearFreely(this.#events, this.#network);
    const evidence = gatherEvidence(this.#events, places, this.#voices, { network: this.#network, free });
    this.#needs = needsIn(this.#events, evidence, places);
  }

  /** What a written stroke of a voice needs, by all that was learnt. */
  needed(voice: Voice): Need {
    return this.#needs.get(voice) ?? FIRST;
  }

  #claim(): Claim {
    const near = new Float64Array(this.#near.length * HEARD_COUNT);
    for (const [e, row] of this.#near.entries()) near.set(row, e * HEARD_COUNT);
    return { near, expected: this.#expected };
  }
}
