/**
 * What may be praised where nothing is wrong, the most telling first.
 */
import { countedTempo, groupBy, type Voice } from '@shedbook/core';
import { median } from '@shedbook/signal';
import type { LoopTask } from '../loop/task.ts';
import type { Match } from '../take/match.ts';
import { spreadOf } from '../take/own-pulse.ts';
import type { PraiseFact } from '../verdict/fact.ts';
import type { TimedRound } from './timed-round.ts';

/** Half of a normal distribution lies within this many standard deviations. */
const HALF = 0.6745;
/** Fewest strokes of a voice that is called steady, and fewest beats over which a tempo holds. */
const FEWEST_STEADY = 8;
const FEWEST_BEATS = 12;

function steadiest(timed: readonly TimedRound[]): readonly PraiseFact[] {
  const byVoice = groupBy(
    timed.flatMap(({ offsets }) => offsets),
    ({ pair }) => pair.due.voice,
  );
  const voices = [...byVoice].flatMap(([voice, own]): { voice: Voice; ms: number }[] => {
    if (own.length < FEWEST_STEADY) return [];
    return [{ voice, ms: Math.max(1, Math.round(HALF * spreadOf(own.map(({ ms }) => ms)))) }];
  });
  const best = voices.toSorted((a, b) => a.ms - b.ms)[0];
  return best ? [{ fact: 'praise-steady', ...best }] : [];
}

/**
 * The praise.
 * @param untold voices that the ear could not tell: while there are any, nobody knows whether all is there
 */
export function praiseOf(
  { pairs, missed, extra }: Match,
  timed: readonly TimedRound[],
  { task, untold }: { readonly task: LoopTask; readonly untold: ReadonlySet<Voice> },
): readonly PraiseFact[] {
  const beats = pairs.map(({ due }) => due.beats);
  const isLong = timed.length > 1 || Math.max(0, ...beats) >= FEWEST_BEATS;
  const bpm = timed.map(({ linesBpm, tempoRatio }) => linesBpm * tempoRatio);
  return [
    ...(missed.length + extra.length + untold.size === 0 && pairs.length > 0
      ? [{ fact: 'praise-all-there', count: pairs.length } as const]
      : []),
    ...(isLong && bpm.length > 0
      ? [{ fact: 'praise-tempo-holds', bpm: countedTempo(task.meter, median(bpm)) } as const]
      : []),
    ...steadiest(timed),
  ];
}
