/** What an entry of a log tells: what an ear heard, what the student said, and whether it is of the whole exercise. */
import type { LoopRecord, PracticeEntry } from '@shedbook/core';

/** The loops of some entries that count: those that an ear heard, and the student's own word where there was no ear. */
export function loopsThatCount(entries: readonly PracticeEntry[]): {
  readonly loops: readonly LoopRecord[];
  readonly heardBy: 'ear' | 'student';
} {
  const of = (by: 'ear' | 'student') =>
    entries
      .filter((entry) => entry.heardBy === by)
      .flatMap((entry) => entry.loops)
      .filter((loop) => loop.verdict !== 'unheard');
  const heard = of('ear');
  return heard.length > 0 ? { loops: heard, heardBy: 'ear' } : { loops: of('student'), heardBy: 'student' };
}
