/** What an entry of a log tells: what the teacher said, what an ear heard, and what the student said. */
import { HEARD_BY, type HeardBy, type LoopRecord, type PracticeEntry } from '@shedbook/core';

/**
 * The loops of some entries that count: the teacher's word above all, then what an ear heard, and the student's own
 * word where there was neither.
 */
export function loopsThatCount(entries: readonly PracticeEntry[]): {
  readonly loops: readonly LoopRecord[];
  readonly heardBy: HeardBy;
} {
  for (const heardBy of HEARD_BY) {
    const loops = entries
      .filter((entry) => entry.heardBy === heardBy)
      .flatMap((entry) => entry.loops)
      .filter((loop) => loop.verdict !== 'unheard');
    if (loops.length > 0) return { loops, heardBy };
  }
  return { loops: [], heardBy: 'student' };
}
