/**
 * How long has been played without a break.
 *
 * Conventions: seconds of any clock that only goes forward. A silence of five minutes is a break (common practice).
 */

/** A silence this long is a break, in seconds. */
const BREAK_SECONDS = 5 * 60;

/** Put off once, it is said again after so many seconds of playing. */
const PUT_OFF_SECONDS = 10 * 60;

/** Counts. */
export class PlayingTime {
  #last: number | null = null;
  #silent = 0;
  #played = 0;

  /** What has been played since the last break, in seconds. */
  get withoutBreakSeconds(): number {
    return this.#played;
  }

  /** Looks at the clock. @param isPlaying whether anything has played since the last look */
  look(nowSeconds: number, isPlaying: boolean): void {
    const passed = this.#last === null ? 0 : Math.max(0, nowSeconds - this.#last);
    this.#last = nowSeconds;
    if (isPlaying) {
      this.#played += passed;
      this.#silent = 0;
      return;
    }
    this.#silent += passed;
    if (this.#silent >= BREAK_SECONDS) this.#played = 0;
  }

  /** Not now: a little later. */
  putOff(): void {
    this.#played = Math.max(0, this.#played - PUT_OFF_SECONDS);
  }
}
