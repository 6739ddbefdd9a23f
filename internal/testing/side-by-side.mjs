/** The order in which test files run, and how many of them at once. */
import { availableParallelism } from 'node:os';
import { BaseSequencer } from 'vitest/node';

/**
 * Files at once: one more than the processor has cores, since tests in a browser wait for most of their time, for
 * sound that is heard as it is played. With two more the whole took no less.
 */
export const FILES_AT_ONCE = availableParallelism() + 1;

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
