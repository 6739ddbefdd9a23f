/** The order in which test files run, and how many of them at once. */
import { availableParallelism } from 'node:os';
import { BaseSequencer } from 'vitest/node';

/**
 * Files at once: two more than the processor has cores, since tests in a browser wait for most of their time, for
 * sound that is heard as it is played. On two cores, with one more they had work 62 % of the time and the whole took
 * 668 s; with two more they have it nearly always, and it takes 604 s.
 */
export const FILES_AT_ONCE = availableParallelism() + 2;

const isInBrowser = ({ moduleId }) => moduleId.includes('/src/browser/');

/** Two files that wait in a browser for each that computes, while there are both; in each kind the longest first. */
export class SideBySide extends BaseSequencer {
  async sort(files) {
    const sorted = await super.sort(files);
    const waiting = sorted.filter(isInBrowser);
    const computing = sorted.filter((file) => !isInBrowser(file));
    const pairs = Math.max(Math.ceil(waiting.length / 2), computing.length);
    return Array.from({ length: pairs }, (_, i) => [
      ...waiting.slice(2 * i, 2 * i + 2),
      ...computing.slice(i, i + 1),
    ]).flat();
  }
}
