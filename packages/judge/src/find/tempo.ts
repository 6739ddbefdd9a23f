/**
 * The performance as a whole: how late it is beside a click, whether it leaves the click or its own tempo, and whether
 * it has the tempo that was asked.
 *
 * Conventions: milliseconds, positive late; percent of tempo, positive faster.
 */
import { type Bpm, Milliseconds } from '@shedbook/core';
import { median } from '@shedbook/signal';
import { allowedTempoPercent, tempoChangePercent } from '../perception/perception.ts';
import type { Finding } from '../verdict/finding.ts';
import type { TimedRound } from './timed-round.ts';
import type { Timing } from './timing.ts';

/** From this lateness of the whole performance on, it is worth a word. */
const OFFSET_MS = 20;
/** Leaving a click by this many times what limbs may be apart, over one round, is rushing or dragging. */
const LEAVES = 3;

function offsetFinding(rounds: readonly TimedRound[]): readonly Finding[] {
  const ms = median(rounds.map(({ wholeMs }) => wholeMs));
  if (Math.abs(ms) < OFFSET_MS) return [];
  return [{ what: 'offset', ms: Milliseconds(Math.round(ms)), strength: 1 }];
}

/** What is to be said of rounds along a click. */
export function alongClick(rounds: readonly TimedRound[], { limits }: Timing): readonly Finding[] {
  const leaves = rounds.map(({ tempoRatio, seconds }) => 1000 * seconds * (tempoRatio - 1));
  const ms = median(leaves);
  const strength = Math.abs(ms) / (LEAVES * limits.togetherMs);
  const percent = Math.abs(100 * (median(rounds.map(({ tempoRatio }) => tempoRatio)) - 1));
  return [{ what: ms > 0 ? 'rushing' : 'dragging', percent, strength }, ...offsetFinding(rounds)];
}

/** What is to be said of rounds without one. */
export function byOneself(rounds: readonly TimedRound[], timing: Timing): readonly Finding[] {
  const limit = allowedTempoPercent(timing.limits);
  const changed = rounds.reduce((sum, { changePercent }) => sum + changePercent, 0);
  const away = rounds.map(({ tempoRatio, linesBpm }, round) => {
    const bpm = tempoRatio * linesBpm;
    return { bpm, percent: tempoChangePercent(bpm, timing.askedBpm(round, bpm)) };
  });
  const off = median(away.map(({ percent }) => percent));
  const bpm = median(away.map((round) => round.bpm)) as Bpm;
  return [
    {
      what: changed > 0 ? 'rushing' : 'dragging',
      percent: Math.abs(changed),
      strength: Math.abs(changed) / limit,
    },
    { what: off > 0 ? 'fast' : 'slow', percent: Math.abs(off), bpm, strength: Math.abs(off) / limit },
  ];
}
