/**
 * How long something sounded: added up look by look, so that neither a clock that was set nor a night that the device
 * slept through is counted.
 *
 * Conventions: seconds of a clock that only goes forward.
 */

/** A look that comes later than this after the last one says that the device slept between, in seconds. */
const LONGEST_LOOK_SECONDS = 15;

/** Adds up. */
export class PlayedTime {
  #last: number;
  #seconds = 0;

  constructor(nowSeconds: number) {
    this.#last = nowSeconds;
  }

  /** What has been played, in seconds. */
  get seconds(): number {
    return this.#seconds;
  }

  /** Looks at the clock while it sounds. */
  look(nowSeconds: number): void {
    this.#seconds += Math.min(LONGEST_LOOK_SECONDS, Math.max(0, nowSeconds - this.#last));
    this.#last = nowSeconds;
  }
}
