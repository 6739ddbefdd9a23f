/**
 * How sure the first look must be of each voice, learnt from this kit as it is played.
 *
 * The network is shy or bold with a kit that it never heard, by some units of its logit. Where a voice is written
 * and where it is not, its logits gather round two middles; the threshold of a written voice lies between them, in
 * proportion to their spreads. A voice that sounds no different where it is written is not believed for being
 * written: then more is asked of it.
 *
 * Conventions: logits; means and spreads of everything heard so far, a prior counting as some events.
 * Source: the boundary of two normal distributions that are equally likely, with spreads weighed linearly.
 */
import { VOICES, type Voice } from '@shedbook/core';

/** A written voice that sounds no different where it is written needs this, and one that is not written this. */
const WRITTEN = -0.4;
const UNWRITTEN = 1.6;
/** A voice that the exercise does not have anywhere needs this much more. */
const STRANGER = 1;
/** The threshold of a written voice stays within these. */
const LOWEST = -1.5;
const HIGHEST = 0.8;
/** The two middles must be this many mean spreads apart to be told apart. */
const APART = 1.8;

/** A running mean and spread. */
class Gathering {
  #weight: number;
  #mean: number;
  #square: number;

  constructor(prior: { readonly mean: number; readonly spread: number; readonly events: number }) {
    this.#weight = prior.events;
    this.#mean = prior.mean;
    this.#square = prior.spread ** 2 * prior.events;
  }

  add(value: number): void {
    this.#weight += 1;
    const before = value - this.#mean;
    this.#mean += before / this.#weight;
    this.#square += before * (value - this.#mean);
  }

  get mean(): number {
    return this.#mean;
  }

  get spread(): number {
    return Math.sqrt(this.#square / this.#weight);
  }
}

/** What was heard of one voice where it is written, and elsewhere. */
interface Sides {
  readonly there: Gathering;
  readonly elsewhere: Gathering;
  /** The last written place that was heard, and the highest logit near it so far. */
  place: unknown;
  highest: number;
}

/** Thresholds that follow the kit. */
export class Thresholds {
  readonly #asked: ReadonlySet<Voice>;
  readonly #sides = new Map<Voice, Sides>(
    VOICES.map((voice) => [
      voice,
      {
        there: new Gathering({ mean: 1.5, spread: 1.5, events: 4 }),
        elsewhere: new Gathering({ mean: -4, spread: 1.3, events: 6 }),
        place: null,
        highest: 0,
      },
    ]),
  );

  /** @param asked the voices that the exercise has. */
  constructor(asked: ReadonlySet<Voice>) {
    this.#asked = asked;
  }

  /**
   * Takes a logit of a voice. `place` is the written place that it was heard near, the same object each time, or
   * null elsewhere. Of all that is heard near a place the highest counts.
   */
  learn(voice: Voice, logit: number, place: unknown): void {
    const sides = this.#sides.get(voice)!;
    if (place === null) sides.elsewhere.add(logit);
    else if (place === sides.place) sides.highest = Math.max(sides.highest, logit);
    else {
      if (sides.place !== null) sides.there.add(sides.highest);
      sides.place = place;
      sides.highest = logit;
    }
  }

  /** The logit that a voice needs. */
  needed(voice: Voice, isWritten: boolean): number {
    if (!isWritten) return UNWRITTEN + (this.#asked.has(voice) ? 0 : STRANGER);
    const { there, elsewhere } = this.#sides.get(voice)!;
    const distance = there.mean - elsewhere.mean;
    if (distance < (APART * (there.spread + elsewhere.spread)) / 2) return WRITTEN;
    const boundary = elsewhere.mean + (distance * elsewhere.spread) / (there.spread + elsewhere.spread);
    return Math.max(LOWEST, Math.min(HIGHEST, boundary));
  }
}
