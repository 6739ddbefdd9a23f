/**
 * Time, once it is known what was played: the performance as a whole, then each limb by itself.
 */
import { groupBy } from '@shedbook/core';
import type { Finding } from '../verdict/finding.ts';
import { alongClick, byOneself } from './tempo.ts';
import { FEWEST_STROKES, type TimedRound } from './timed-round.ts';
import type { Timing } from './timing.ts';
import { voiceFindings } from './voices-in-time.ts';

/** What is to be said of time; what is under the limit too, to be sifted. */
export function timeFindings(rounds: readonly TimedRound[], timing: Timing): readonly Finding[] {
  const offsets = rounds.flatMap((round) => round.offsets);
  const byVoice = groupBy(offsets, ({ pair }) => pair.due.voice);
  const timed = rounds.filter((round) => round.offsets.length >= FEWEST_STROKES);
  const whole =
    timed.length === 0 ? [] : timing.isAlongClick ? alongClick(timed, timing) : byOneself(timed, timing);
  return [...whole, ...[...byVoice].flatMap(([voice, own]) => voiceFindings(voice, own, timing))];
}
