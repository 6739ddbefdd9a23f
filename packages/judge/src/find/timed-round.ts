/**
 * A round against the student's own pulse.
 *
 * Conventions: milliseconds, positive late; percent of tempo, positive faster.
 */
import { groupBy, type Voice } from '@shedbook/core';
import { fitLine, median } from '@shedbook/signal';
import { tempoChangePercent } from '../perception/perception.ts';
import type { HeardRound } from '../take/hearing.ts';
import type { Match, Pair } from '../take/match.ts';
import { type OwnPulse, ownPulses } from '../take/own-pulse.ts';

/** A stroke, and how far it is from the student's own pulse. */
export interface Offset {
  readonly pair: Pair;
  readonly ms: number;
}

/** A round against its own pulse. */
export interface TimedRound {
  readonly offsets: readonly Offset[];
  /** How late the performance is as a whole, beside the bar lines. */
  readonly wholeMs: number;
  /** Tempo that was played, as a ratio to that of the bar lines. */
  readonly tempoRatio: number;
  /** Change of tempo inside the round, in percent. */
  readonly changePercent: number;
  readonly seconds: number;
  /** Quarter notes a minute of the bar lines. */
  readonly linesBpm: number;
}

/** A round is long enough to change its tempo from this many beats on. */
const FEWEST_BEATS = 12;
/** Tempo at the ends of a round is measured over this share of it, so that a steady change shows by two thirds. */
const END_SHARE = 1 / 3;
const ENDS_APART = 1 - END_SHARE;
/** Fewest strokes that a tempo is measured from. */
export const FEWEST_STROKES = 5;

/** The slope of some strokes: seconds a beat. */
function slopeOf(pairs: readonly Pair[], biasOf: (voice: Voice) => number): number | null {
  if (pairs.length < FEWEST_STROKES) return null;
  const points = pairs.map(({ due, stroke }) => ({
    x: due.beats,
    y: stroke.seconds - biasOf(due.voice) / 1000,
    weight: 1,
  }));
  const { slope } = fitLine(points);
  return slope > 0 ? slope : null;
}

function changeWithin(offsets: readonly Offset[]): number {
  const beats = offsets.map(({ pair }) => pair.due.beats);
  const [from, to] = [Math.min(...beats), Math.max(...beats)];
  if (to - from < FEWEST_BEATS) return 0;
  const byVoice = groupBy(offsets, ({ pair }) => pair.due.voice);
  const biases = new Map([...byVoice].map(([voice, own]) => [voice, median(own.map(({ ms }) => ms))]));
  const within = (low: number, high: number) =>
    slopeOf(
      offsets.filter(({ pair }) => pair.due.beats >= low && pair.due.beats <= high).map(({ pair }) => pair),
      (voice) => biases.get(voice) ?? 0,
    );
  const first = within(from, from + END_SHARE * (to - from));
  const last = within(to - END_SHARE * (to - from), to);
  return first === null || last === null ? 0 : tempoChangePercent(first, last) / ENDS_APART;
}

interface MatchedRound extends Pick<HeardRound, 'bars'> {
  readonly match: Match;
}

/** A round against its own pulse. */
function timeRound({ bars, match }: MatchedRound, pulse: OwnPulse, quartersInBar: number): TimedRound {
  const { pairs } = match;
  const offsets = pairs.map((pair) => ({ pair, ms: 1000 * (pair.stroke.seconds - pulse.secondsAt(pair)) }));
  const late = pairs.map((pair) => 1000 * (pulse.secondsAt(pair) - pair.due.seconds));
  const seconds = bars.reduce((sum, { barSeconds }) => sum + barSeconds, 0);
  return {
    offsets,
    wholeMs: late.length === 0 ? 0 : median(late),
    tempoRatio: pulse.tempoRatio,
    changePercent: offsets.length === 0 ? 0 : changeWithin(offsets),
    seconds,
    linesBpm: (60 * quartersInBar * bars.length) / seconds,
  };
}

/** Rounds, each against its own pulse. */
export function timeRounds(
  rounds: readonly MatchedRound[],
  { lead, quartersInBar }: { readonly lead: Voice; readonly quartersInBar: number },
): readonly TimedRound[] {
  const pulses = ownPulses(
    rounds.map(({ match }) => match.pairs),
    lead,
  );
  return rounds.map((round, index) => timeRound(round, pulses[index]!, quartersInBar));
}
