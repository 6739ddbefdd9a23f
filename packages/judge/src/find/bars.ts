/**
 * Bars of the form that were not gone through: left out in the middle, or from where a round was broken off to where the
 * next one began.
 *
 * Conventions: bars from 1. Before the first round and behind the last one nobody knows what the recording left out.
 */
import type { Allowance } from '../level/levels.data.ts';
import type { RoundStrokes } from '../take/hearing.ts';
import { type Finding, NOT_YET } from '../verdict/finding.ts';

function absentIn(
  { bars }: RoundStrokes,
  count: number,
  { isFirst, isLast }: { readonly isFirst: boolean; readonly isLast: boolean },
): readonly number[] {
  const there = new Set(bars.map(({ bar }) => bar));
  const from = isFirst ? Math.min(...there) : 1;
  const to = isLast ? Math.max(...there) : count;
  return Array.from({ length: count }, (_, index) => index + 1).filter(
    (bar) => bar >= from && bar <= to && !there.has(bar),
  );
}

/** What is to be said of bars that were left out. */
export function barFindings(
  rounds: readonly RoundStrokes[],
  count: number,
  { stumbleShare }: Allowance,
): readonly Finding[] {
  const absent = rounds.flatMap((round, index) =>
    absentIn(round, count, { isFirst: index === 0, isLast: index === rounds.length - 1 }),
  );
  if (absent.length === 0) return [];
  const gone = rounds.reduce((sum, { bars }) => sum + bars.length, absent.length);
  const strength = Math.max(1, (NOT_YET * absent.length) / (gone * stumbleShare));
  const places = [...new Set(absent)].map((bar) => ({ bar, beat: 1, slot: 1 }));
  return [{ what: 'missing', places, times: absent.length, of: gone, strength }];
}
