/** The order in which test files run, and how many of them at once. */
import { availableParallelism } from 'node:os';
import { BaseSequencer } from 'vitest/node';

/**
 * Files at once: two more than the processor has cores, since tests in a browser wait for most of their time, for
 * sound that is heard as it is played. On two cores, with one more they had work 62 % of the time and the whole took
 * 668 s; with two more they have it nearly always, and it takes 604 s.
 */
export const FILES_AT_ONCE = availableParallelism() + 2;

/**
 * Files that are short to read and take more than ten seconds. On a machine that never ran them, vitest takes the
 * largest file for the longest: these would come last, one core at rest for half a minute.
 */
export const LONG_THOUGH_SMALL = [
  'apps/server/src/store/postgres/suites.test.ts',
  'apps/cli/src/commands/one-verdict.test.ts',
  'apps/cli/src/commands/own-model.test.ts',
  'internal/checks/doors/doors.test.ts',
  'packages/judge/src/stories.test.ts',
  'apps/server/src/teachers.test.ts',
  'apps/cli/src/commands/backup.test.ts',
  'apps/cli/src/commands/pack.test.ts',
  'apps/cli/src/commands/serve.test.ts',
  'packages/coach/src/plan/simulation.test.ts',
  'apps/server/src/safe-links.test.ts',
  'apps/server/src/work/work.test.ts',
  'apps/server/src/durable.test.ts',
  'apps/server/src/strangers.test.ts',
];

const isInBrowser = ({ moduleId }) => moduleId.includes('/src/browser/');

const isLong = ({ moduleId }) => LONG_THOUGH_SMALL.some((path) => moduleId.endsWith(`/${path}`));

/** Two files that wait in a browser for each that computes, while there are both; in each kind the longest first. */
export class SideBySide extends BaseSequencer {
  async sort(files) {
    const sorted = await super.sort(files);
    const waiting = sorted.filter(isInBrowser);
    const others = sorted.filter((file) => !isInBrowser(file));
    const computing = [...others.filter(isLong), ...others.filter((file) => !isLong(file))];
    const pairs = Math.max(Math.ceil(waiting.length / 2), computing.length);
    return Array.from({ length: pairs }, (_, i) => [
      ...waiting.slice(2 * i, 2 * i + 2),
      ...computing.slice(i, i + 1),
    ]).flat();
  }
}
