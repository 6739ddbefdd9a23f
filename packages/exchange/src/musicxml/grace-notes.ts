/**
 * Grace notes on their way to the stroke they belong to: one is a flam, two or more a drag.
 *
 * Conventions: grace notes stand before the event whose strokes they belong to, voice by voice.
 */
import type { Articulation, TextPlace, Voice } from '@shedbook/core';
import type { ProblemList } from './problems.ts';

/** Notes told of together, at the first of them. */
export interface NoteTally {
  readonly first: TextPlace;
  count: number;
}

/** Counts a note under a key. */
export function tally<K>(tallies: Map<K, NoteTally>, key: K, note: TextPlace): void {
  const known = tallies.get(key);
  if (known) known.count += 1;
  else tallies.set(key, { first: note, count: 1 });
}

/** The grace notes of one part. */
export class GraceNotes {
  readonly #problems: ProblemList;
  readonly #path: string;
  /** Those before the event that comes, and those of the event that is being read. */
  #waiting = new Map<Voice, NoteTally>();
  #current = new Map<Voice, NoteTally>();

  constructor(path: string, problems: ProblemList) {
    this.#path = path;
    this.#problems = problems;
  }

  /** Adds a grace note of a voice. */
  add(voice: Voice, note: TextPlace): void {
    tally(this.#waiting, voice, note);
  }

  /** An event begins: what waits is for it, and what the event before it left has no stroke. */
  beginEvent(): void {
    for (const [voice, { first, count }] of this.#current) {
      this.#problems.add(first, {
        code: 'musicxml-grace',
        path: this.#path,
        found: { fact: 'musicxml-graces-alone', notes: count, voice },
        expected: { fact: 'musicxml-stroke-after', voice },
        repair: { fact: 'musicxml-graces-left-out' },
      });
    }
    this.#current = this.#waiting;
    this.#waiting = new Map();
  }

  /** The bar ends: nothing may wait any longer. */
  endBar(): void {
    this.beginEvent();
    this.beginEvent();
  }

  /** The ornament of a stroke of the event that is being read. */
  take(voice: Voice): Articulation | null {
    const graces = this.#current.get(voice);
    this.#current.delete(voice);
    if (!graces) return null;
    return graces.count === 1 ? 'flam' : 'drag';
  }
}
