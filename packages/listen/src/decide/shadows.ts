/**
 * Strokes that are a part of another voice's sound: a snare that rings low enough to pass for a bass drum, say.
 *
 * Two limbs never strike together to a millisecond again and again, nor equally far apart in level. Where unwritten
 * strokes of a voice come with strokes of another one, and do both, they are no strokes.
 *
 * Conventions: times in seconds, spreads in ms and dB, robust.
 * Source: taps of trained people scatter by about 2 % of the interval, 5 ms and more at the tempi of drumming (Repp,
 * Psychon. Bull. Rev. 12, 2005), and drummers' hi-hats lead their rides by 2 to 26 ms (J. New Music Res. 46, 2017); the
 * bounds lie between that and what rendered takes show for sounds with two parts.
 */
import { median, spread } from '@shedbook/signal';
import { firstFrom } from '../align/observations.ts';
import type { HeardStroke } from './heard-stroke.ts';

/** Strokes this near to each other come together. */
const TOGETHER_SECONDS = 0.03;
/** So many must come together, and so large a share of the other voice's strokes must have one. */
const FEWEST = 8;
const LEAST_SHARE = 0.2;
/** Times that scatter less than this are of one blow; so are times and levels that both scatter less than these. */
const ONE_BLOW_MS = 1.6;
const STEADY = { ms: 2.7, db: 1.5 };

/**
 * A stroke that is written nowhere is struck all the same where the ear is so sure of it, from 0 to 1, and it is as loud
 * as those that are written, if there are so many, within so many dB: what is a part of another sound has a level of its own.
 */
const PLAIN = { confidence: 0.95, db: 3, fewest: 4 } as const;

/** Whether a stroke is as plain as those of its voice that are written. */
function isPlainBeside(written: readonly HeardStroke[]): (stroke: HeardStroke) => boolean {
  if (written.length < PLAIN.fewest) return () => false;
  const usualDb = median(written.map(({ levelDb }) => levelDb));
  return ({ confidence, levelDb }) =>
    confidence >= PLAIN.confidence && Math.abs(levelDb - usualDb) <= PLAIN.db;
}

/** Finds the nearest of strokes in order of time, or null when none is together with a moment. */
function nearestOf(strokes: readonly HeardStroke[]): (seconds: number) => HeardStroke | null {
  const times = Float64Array.from(strokes, (stroke) => stroke.timeSeconds);
  return (seconds) => {
    const next = firstFrom(times, seconds);
    const distance = (index: number) => Math.abs((times[index] ?? Number.POSITIVE_INFINITY) - seconds);
    const best = distance(next - 1) <= distance(next) ? next - 1 : next;
    return distance(best) < TOGETHER_SECONDS ? strokes[best]! : null;
  };
}

/** The strokes of `extra` that are a part of what `others` sound like. */
function shadowsIn(extra: readonly HeardStroke[], others: readonly HeardStroke[]): readonly HeardStroke[] {
  const nearest = nearestOf(others);
  const pairs = extra.flatMap((stroke) => {
    const other = nearest(stroke.timeSeconds);
    return other ? [{ stroke, other }] : [];
  });
  if (pairs.length < Math.max(FEWEST, LEAST_SHARE * others.length)) return [];
  const ms = spread(pairs.map(({ stroke, other }) => 1000 * (stroke.timeSeconds - other.timeSeconds)));
  const db = spread(pairs.map(({ stroke, other }) => stroke.levelDb - other.levelDb));
  const isOneBlow = ms < ONE_BLOW_MS || (ms < STEADY.ms && db < STEADY.db);
  return isOneBlow ? pairs.map(({ stroke }) => stroke) : [];
}

/**
 * The strokes that are no more than a part of another voice's sound; strokes with a place are never among them.
 * @param strokes of all voices, in order of time
 */
export function shadowsOf(strokes: readonly HeardStroke[]): ReadonlySet<HeardStroke> {
  const found = new Set<HeardStroke>();
  const voices = new Set(strokes.map((stroke) => stroke.voice));
  for (const voice of voices) {
    const own = strokes.filter((stroke) => stroke.voice === voice);
    const placed = own.filter((stroke) => stroke.place);
    const isPlain = isPlainBeside(placed);
    const extra = own.filter((stroke) => !stroke.place && !isPlain(stroke));
    if (extra.length < FEWEST) continue;
    const written = nearestOf(placed);
    // where this voice is written too, the two tell nothing of each other
    const elsewhere = strokes.filter((stroke) => stroke.voice !== voice && !written(stroke.timeSeconds));
    for (const other of voices) {
      const others = elsewhere.filter((stroke) => stroke.voice === other);
      for (const stroke of shadowsIn(extra, others)) found.add(stroke);
    }
  }
  return found;
}
