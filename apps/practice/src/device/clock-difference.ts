/**
 * How far the clock of one audio context is ahead of another's, as it is now: a context that could not keep up falls
 * behind for good.
 *
 * Conventions: seconds.
 */
import { median } from '@shedbook/signal';

/** Milliseconds between looks: often at first, then now and then. */
const LOOK_MS = { first: 7, later: 120 } as const;

/** A clock steps from block to block: the median of so many looks is good to a part of a millisecond. */
const LOOKS = 11;

/** A smaller change is not told, in seconds. */
const SAME_SECONDS = 0.003;

/** A clock as it is read. */
export interface ContextClock {
  readonly currentTime: number;
}

/** Keeps looking. */
export class ClockDifference {
  readonly #clock: ContextClock;
  readonly #other: ContextClock;
  readonly #tell: (seconds: number) => void;
  #looks: readonly number[] = [];
  #told: number | null = null;
  #timer: ReturnType<typeof setTimeout> | null = null;
  /** Done when the difference was told for the first time. */
  readonly known: Promise<void>;

  /** @param tell hears how far `clock` is ahead of `other`, at first and whenever it has changed */
  constructor(clock: ContextClock, other: ContextClock, tell: (seconds: number) => void) {
    this.#clock = clock;
    this.#other = other;
    this.#tell = tell;
    this.known = new Promise((resolve) => {
      this.#wait(resolve);
    });
  }

  #wait(onKnown: () => void): void {
    const ms = this.#told === null ? LOOK_MS.first : LOOK_MS.later;
    this.#timer = setTimeout(() => {
      this.#look();
      if (this.#told !== null) onKnown();
      this.#wait(onKnown);
    }, ms);
  }

  #look(): void {
    const now = this.#clock.currentTime - this.#other.currentTime;
    this.#looks = [...this.#looks, now].slice(-LOOKS);
    if (this.#looks.length < LOOKS) return;
    const seconds = median(this.#looks);
    if (this.#told !== null && Math.abs(seconds - this.#told) < SAME_SECONDS) return;
    this.#told = seconds;
    this.#tell(seconds);
  }

  stop(): void {
    if (this.#timer !== null) clearTimeout(this.#timer);
  }
}
