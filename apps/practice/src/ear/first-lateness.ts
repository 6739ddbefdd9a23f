/**
 * The way of the sound, found from the first rounds where it was not measured: a performance that is as late as a whole
 * in two rounds is not late, its devices are. Found once; after that, what is early or late stays so.
 *
 * Conventions: milliseconds, positive late.
 */
import { mean } from '@shedbook/signal';

/** Rounds that must agree, and how well. */
const ROUNDS = 2;
const AGREE_MS = 25;
/** A performance less late than this is left as it is. */
const WORTH_MS = 12;

/** Finds a lateness from rounds as they come. */
export class FirstLateness {
  readonly #rounds: number[] = [];
  #isFound = false;

  /**
   * Takes how late the next round was as a whole; null where it was not judged.
   * @returns by how much to take the latency for longer, once; else null
   */
  next(wholeMs: number | null): number | null {
    if (this.#isFound || wholeMs === null) return null;
    this.#rounds.push(wholeMs);
    const last = this.#rounds.slice(-ROUNDS);
    if (last.length < ROUNDS || Math.max(...last) - Math.min(...last) > AGREE_MS) return null;
    this.#isFound = true;
    const late = mean(last);
    return Math.abs(late) < WORTH_MS ? null : late;
  }
}
