/**
 * Places of the pattern that come round again, in whatever bar: a voice that plays the same in several bars plays one
 * bar that comes round.
 */
import type { Voice, WrittenPlace } from '@shedbook/core';
import type { LoopTask } from '../loop/task.ts';
import type { Due } from '../take/due.ts';

/** From this share of its places on, a voice is off throughout, if there are so many of them. */
const THROUGHOUT_SHARE = 0.5;
const THROUGHOUT_PLACES = 3;

/** Places without those that come twice. */
export function onePlaceEach(places: readonly WrittenPlace[]): readonly WrittenPlace[] {
  return [...new Map(places.map((place) => [`${place.bar}.${place.beat}.${place.slot}`, place])).values()];
}

/** Places of a task by the name that all bars with the same strokes share. */
export class Places {
  readonly #nameOf = new Map<string, string>();
  readonly #placesOf = new Map<string, WrittenPlace[]>();
  readonly #ofVoice = new Map<Voice, Set<string>>();
  readonly #shapes = new Map<Voice, Set<string>>();

  constructor(task: LoopTask) {
    const shapes = new Map<string, string>();
    for (const { voice, written, slots } of task.strokes) {
      const bar = `${voice} ${written.bar}`;
      shapes.set(bar, `${shapes.get(bar) ?? ''} ${written.beat}.${written.slot}/${slots}`);
    }
    for (const { voice, written } of task.strokes) {
      const shape = shapes.get(`${voice} ${written.bar}`) ?? '';
      const name = `${voice} ${written.beat}.${written.slot} in${shape}`;
      this.#shapes.set(voice, (this.#shapes.get(voice) ?? new Set()).add(shape));
      this.#nameOf.set(`${voice} ${written.bar}.${written.beat}.${written.slot}`, name);
      this.#placesOf.set(name, [...(this.#placesOf.get(name) ?? []), written]);
      this.#ofVoice.set(voice, (this.#ofVoice.get(voice) ?? new Set()).add(name));
    }
  }

  /** The name of what was due, the same wherever it comes round. */
  nameOf({ voice, asked: { written } }: Due): string {
    return this.#nameOf.get(`${voice} ${written.bar}.${written.beat}.${written.slot}`) ?? '';
  }

  /** The places of a name, one in each bar that has it. */
  placesOf(name: string): readonly WrittenPlace[] {
    return this.#placesOf.get(name) ?? [];
  }

  /** Whether a place comes round in several bars, so that its bar need not be named. */
  comesRound(name: string): boolean {
    return this.placesOf(name).length > 1;
  }

  /** Whether the voice of a place plays the same in every bar in which it plays. */
  isInEveryBar(name: string): boolean {
    const voice = name.slice(0, name.indexOf(' ')) as Voice;
    return this.#shapes.get(voice)?.size === 1;
  }

  /** Whether so many places of a voice are all of it, for what is said. */
  isThroughout(voice: Voice, count: number): boolean {
    const all = this.#ofVoice.get(voice)?.size ?? 0;
    return count === all || (count >= THROUGHOUT_PLACES && count >= THROUGHOUT_SHARE * all);
  }
}
