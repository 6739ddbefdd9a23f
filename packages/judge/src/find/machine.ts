/**
 * Voices that no hand plays, in a take of which nobody said that a loudspeaker sounds: their strokes lie on one grid to a
 * fraction of a millisecond, while another limb plays as people do. Where all limbs are so even the take is a recording of a
 * machine, and as honest as a person's.
 *
 * Conventions: seconds; only strokes with nothing else at the same moment tell, since an ear hears those that come together as
 * one sound. The grid is a straight line through the strokes of a round.
 * Sources: even trained people's strokes scatter by some 2 % of the interval (`perception/perception.data.ts`), at sixteenths
 * of 120 a minute 2.5 ms; the ear itself is off by 0.3 ms where a stroke stands alone (measured on rendered takes).
 */
import { groupBy, type Voice } from '@shedbook/core';
import { fitLine, median, quantile } from '@shedbook/signal';
import type { HeardRound } from '../take/hearing.ts';
import type { Pair } from '../take/match.ts';
import { atLeast } from './chance.ts';
import { aloneIn, isOneSound } from './loudspeaker.ts';

/** So near to its grid is a machine's stroke. */
const ON_GRID_SECONDS = 0.001;
/** How likely a stroke of the evenest hand is so near by chance: of one that scatters by 3 ms. */
const BY_CHANCE = 0.26;
/** All chances together, of any voice of a take. */
const UNLIKELY = 1e-4;
/** A limb scatters as people do whose strokes lie so far from their grid in the middle. */
const HUMAN_SECONDS = 0.003;
/** Fewer strokes tell of no grid, and of no limb. */
const FEWEST = 6;
/** A round with fewer strokes than this has no line of its own. */
const FEWEST_IN_ROUND = 4;
/** A stroke this many times as far from the grid as most is no part of it. */
const OUTLIER = 3;

interface Point {
  readonly x: number;
  readonly y: number;
}

/** How far points lie from the line through most of them. */
function fromLine(points: readonly Point[]): readonly number[] {
  const x0 = median(points.map(({ x }) => x));
  const lineOf = (used: readonly Point[]) => fitLine(used.map(({ x, y }) => ({ x: x - x0, y, weight: 1 })));
  const away = (used: readonly Point[]) => {
    const { at, slope } = lineOf(used);
    return points.map(({ x, y }) => Math.abs(y - at - slope * (x - x0)));
  };
  const first = away(points);
  const bound = Math.max(ON_GRID_SECONDS, OUTLIER * median(first));
  return away(points.filter((_, index) => first[index]! <= bound));
}

/** How far the strokes of a voice lie from the grids of their rounds. */
function fromGrid(pairs: readonly Pair[]): readonly number[] {
  const rounds = [...groupBy(pairs, ({ due }) => due.bar.round).values()];
  return rounds
    .filter(({ length }) => length >= FEWEST_IN_ROUND)
    .flatMap((own) => fromLine(own.map(({ due, stroke }) => ({ x: due.beats, y: stroke.seconds }))));
}

function isOnGrid(away: readonly number[]): boolean {
  if (away.length < FEWEST) return false;
  const near = away.filter((seconds) => seconds <= ON_GRID_SECONDS).length;
  return atLeast(near, away.length, BY_CHANCE) < UNLIKELY;
}

/** Voices that a machine plays beside a person; none where nobody, or nothing but a machine, plays. */
export function machineVoices(rounds: readonly HeardRound[]): ReadonlySet<Voice> {
  const pairs = rounds.flatMap(({ match }) => match.pairs);
  const byVoice = [...groupBy(pairs, ({ due }) => due.voice)];
  const even = new Set(
    byVoice.flatMap(([voice, own]) => (isOnGrid(fromGrid(aloneIn(own, pairs))) ? [voice] : [])),
  );
  const isHuman = byVoice.some(([voice, own]) => {
    const away = fromGrid(own);
    return !even.has(voice) && away.length >= FEWEST && quantile(away, 0.5) > HUMAN_SECONDS;
  });
  if (even.size === 0 || !isHuman) return new Set();
  return new Set(
    byVoice.flatMap(([voice, own]) => (even.has(voice) || isOneSound(own, pairs) ? [voice] : [])),
  );
}
