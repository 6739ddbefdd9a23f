/** The order in which test files run, and how many of them at once. */
import { statSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { BaseSequencer } from 'vitest/node';

/**
 * Files at once: two more than the processor has cores, since tests in a browser wait for most of their time, for
 * sound that is heard as it is played. On two cores, with one more they had work 62 % of the time and the whole took
 * 668 s; with two more it took 604 s.
 */
export const FILES_AT_ONCE = availableParallelism() + 2;

/** Files that take longer than their length tells, and how many seconds: they begin, so that none is left at the end. */
export const LONG_THOUGH_SMALL = {
  'apps/server/src/store/postgres/suites.test.ts': 69,
  'packages/composer/src/compose.test.ts': 64,
  'packages/listen/src/own-recordings.test.ts': 44,
  'apps/cli/src/commands/listen.test.ts': 43,
  'apps/server/src/films.test.ts': 40,
  'apps/cli/src/commands/one-verdict.test.ts': 39,
  'apps/cli/src/commands/own-model.test.ts': 37,
  'apps/cli/src/commands/serve.test.ts': 29,
  'packages/engrave/src/sheet/sheet.test.ts': 29,
  'packages/judge/src/stories.test.ts': 29,
  'apps/server/src/store/postgres/postgres.test.ts': 27,
  'apps/server/src/teachers.test.ts': 26,
  'apps/cli/src/program.test.ts': 24,
  'apps/cli/src/commands/pack.test.ts': 23,
  'internal/checks/doors/doors.test.ts': 22,
  'apps/server/src/demonstrations.test.ts': 19,
  'packages/listen/src/loudspeaker/live.test.ts': 18,
  'packages/host/src/decode/decode-sound.test.ts': 17,
  'packages/coach/src/plan/simulation.test.ts': 16,
  'packages/core/src/document/change-lesson.test.ts': 16,
  'packages/listen/src/loudspeaker/beside.test.ts': 16,
  'packages/engrave/src/sheet/collisions.test.ts': 15,
  'apps/cli/src/commands/backup.test.ts': 14,
  'apps/server/src/work/work.test.ts': 11,
  'apps/server/src/durable.test.ts': 9,
  'apps/server/src/safe-links.test.ts': 7,
};

/** Bytes of a file that take a second, on average: by these 450 files on two cores. */
const BYTES_A_SECOND = { waiting: 250, computing: 3000 };

const isInBrowser = ({ moduleId }) => moduleId.includes('/src/browser/');

/** Seconds of a file that takes longer than its length tells; of others none. */
function longSeconds({ moduleId }) {
  const [, seconds] = Object.entries(LONG_THOUGH_SMALL).find(([path]) => moduleId.endsWith(`/${path}`)) ?? [];
  return seconds;
}

/** How long a file takes, in seconds, as far as can be told before it ever ran. */
function expectedSeconds(file) {
  const bytes = () => statSync(file.moduleId).size;
  if (isInBrowser(file)) return bytes() / BYTES_A_SECOND.waiting;
  return longSeconds(file) ?? bytes() / BYTES_A_SECOND.computing;
}

const sum = (numbers) => numbers.reduce((all, each) => all + each, 0);

/**
 * Joins lists so that each is as far as the others at any moment, by the time that its files take. Where one list came
 * to its end before another, the cores would be at rest while only waiting is left, and too few while only computing is.
 * @template T
 * @param {readonly (readonly T[])[]} lists
 * @param {(item: T) => number} secondsOf
 * @returns {readonly T[]}
 */
export function evenly(lists, secondsOf) {
  const shares = lists.flatMap((list) => {
    const whole = sum(list.map(secondsOf));
    let before = 0;
    return list.map((item) => {
      const share = before / whole;
      before += secondsOf(item);
      return { item, share };
    });
  });
  return shares.toSorted((a, b) => a.share - b.share).map(({ item }) => item);
}

/** Files that wait in a browser and files that compute go on side by side to the end; in each kind the longest first. */
export class SideBySide extends BaseSequencer {
  async sort(files) {
    const sorted = await super.sort(files);
    const computing = sorted.filter((file) => !isInBrowser(file));
    const long = computing.filter((file) => longSeconds(file) !== undefined);
    const longest = long.toSorted((a, b) => (longSeconds(b) ?? 0) - (longSeconds(a) ?? 0));
    const others = computing.filter((file) => longSeconds(file) === undefined);
    return [...evenly([sorted.filter(isInBrowser), [...longest, ...others]], expectedSeconds)];
  }
}
