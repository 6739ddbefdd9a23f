/**
 * From what the player says of itself to what the ear has to know: which loops begin when, at which tempo.
 *
 * A loop is the form gone through once; a form that repeats has several in one time round. The next loop is
 * announced while the last one is played, so that a stroke ahead of its first beat finds its place.
 *
 * Conventions: places in whole notes, seconds of the audio context.
 */
import type { Heard } from '@shedbook/stand';
import type { LoopTime } from './ear-messages.ts';

/** What follows from a look at the player. */
export type Follow =
  | { readonly kind: 'exercise'; readonly exercise: number | null }
  | { readonly kind: 'loop'; readonly loop: LoopTime }
  | { readonly kind: 'break off'; readonly seconds: number }
  | { readonly kind: 'silence' };

/** Loops that begin at the same time are the same loop. */
const SAME_SECONDS = 0.002;

/** A loop that began longer ago was not heard from its start. */
const LATE_SECONDS = 0.15;

function isSame(a: LoopTime, b: LoopTime): boolean {
  return Math.abs(a.startSeconds - b.startSeconds) < SAME_SECONDS && a.bpm === b.bpm;
}

/** The loops from the one that is heard to the first of the next time round. */
function loopsFrom(heard: Heard, repeat: number): readonly LoopTime[] {
  const { program, place, secondsOf, bpm } = heard;
  const length = program.end / repeat;
  const first = Math.max(0, Math.min(repeat - 1, Math.floor(place / length)));
  return Array.from({ length: repeat - first + 1 }, (_, index) => ({
    startSeconds: secondsOf((first + index) * length),
    endSeconds: secondsOf((first + index + 1) * length),
    bpm,
  }));
}

/** What is listened for as one: layers may join, exercise and form stay the same. */
function identityOf({ program }: Heard): string {
  return `${program.exercise} ${program.start} ${program.bars.map((bar) => bar.play).join()}`;
}

/** Follows a player. */
export class LoopFollower {
  #identity: string | null = null;
  #announced: readonly LoopTime[] = [];

  /**
   * What is new since the last look.
   * @param heard what the player says, or null when it is silent
   * @param repeat how often the form is gone through in one time round
   */
  look(heard: Heard | null, repeat: number): readonly Follow[] {
    if (!heard) return this.#silence();
    const now = heard.secondsOf(heard.place);
    const follows: Follow[] = [];
    const identity = identityOf(heard);
    if (identity !== this.#identity) {
      const seconds = Math.min(now, heard.secondsOf(0));
      if (this.#identity !== null) follows.push({ kind: 'break off', seconds });
      follows.push({ kind: 'exercise', exercise: heard.program.exercise });
      this.#identity = identity;
      this.#announced = [];
    }
    return [...follows, ...this.#loops(loopsFrom(heard, repeat), now)];
  }

  #silence(): readonly Follow[] {
    if (this.#identity === null) return [];
    this.#identity = null;
    this.#announced = [];
    return [{ kind: 'silence' }];
  }

  #loops(expected: readonly LoopTime[], now: number): readonly Follow[] {
    const follows: Follow[] = [];
    this.#announced = this.#announced.filter((loop) => loop.endSeconds > now);
    if (this.#announced.some((loop) => !expected.some((each) => isSame(each, loop)))) {
      follows.push({ kind: 'break off', seconds: now });
      this.#announced = [];
    }
    for (const loop of expected) {
      const isKnown = this.#announced.some((each) => isSame(each, loop));
      if (isKnown || loop.startSeconds < now - LATE_SECONDS) continue;
      follows.push({ kind: 'loop', loop });
      this.#announced = [...this.#announced, loop];
    }
    return follows;
  }
}
