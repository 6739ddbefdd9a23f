/**
 * How late one voice is beside the performance as a whole, where it is so late that its strokes lie nearer to the next
 * slot than to their own: matched as they are, half of them would be missing and as many too many, though every one
 * was played.
 *
 * Conventions: seconds; positive is late. Found only where it explains the voice, and never as far as the next slot,
 * since a stroke in another slot is another stroke.
 */
import { groupBy, type Voice } from '@shedbook/core';
import { median } from '@shedbook/signal';
import type { Due } from './due.ts';
import { type LatenessAt, matchStrokes, type Pair, surfaceOf } from './match.ts';
import type { PlayedStroke } from './played.ts';

/** How far a voice may lie beside its slot, as a share of the way to the next one. */
const FARTHEST_SLOTS = 0.7;
const STEP_SECONDS = 0.005;
/** Fewer strokes say nothing about a lateness of their own. */
const FEWEST = 4;
/** So much of what was played must lie near one lateness, and near is within this share of a stroke's reach. */
const FOUND = 0.9;
const NEAR = 0.5;
/** With less of it played, nobody knows how late it is. */
const PLAYED = 0.5;

/** The lateness of each surface that has one of its own, beside that of the whole. */
export type VoiceLateness = ReadonlyMap<Voice, number>;

function tried(farthest: number): readonly number[] {
  const steps = Math.floor(farthest / STEP_SECONDS);
  const sides = Array.from({ length: steps }, (_, index) => (index + 1) * STEP_SECONDS);
  return sides.flatMap((seconds) => [seconds, -seconds]);
}

function latenessOf(due: readonly Due[], strokes: readonly PlayedStroke[], at: LatenessAt): number | null {
  const played = Math.min(due.length, strokes.length);
  if (played < FEWEST || played < PLAYED * due.length) return null;
  const plain = matchStrokes(due, strokes, at).pairs.length;
  // nothing can match more
  if (plain === played) return null;
  // `reachSeconds` is half of the way to the next slot
  const farthest = 2 * FARTHEST_SLOTS * Math.min(...due.map(({ reachSeconds }) => reachSeconds));
  // one stroke may always be another's, as at the edge of a round
  const least = Math.min(FOUND * played, played - 1);
  let most = plain;
  let best: readonly Pair[] | null = null;
  for (const seconds of tried(farthest)) {
    const near = (one: Due) => at(one) + seconds;
    const pairs = matchStrokes(due, strokes, near).pairs.filter(
      ({ due: one, lateSeconds }) => Math.abs(lateSeconds - near(one)) <= NEAR * one.reachSeconds,
    );
    if (pairs.length <= most || pairs.length < least) continue;
    most = pairs.length;
    best = pairs;
  }
  return best && median(best.map(({ due: one, lateSeconds }) => lateSeconds - at(one)));
}

/**
 * The surfaces that are late or early by themselves.
 * @param at the lateness of the whole
 */
export function voiceLateness(
  due: readonly Due[],
  strokes: readonly PlayedStroke[],
  at: LatenessAt,
): VoiceLateness {
  const found = new Map<Voice, number>();
  for (const [surface, own] of groupBy(due, ({ voice }) => surfaceOf(voice))) {
    const of = strokes.filter(({ voice }) => surfaceOf(voice) === surface);
    const seconds = latenessOf(own, of, at);
    if (seconds !== null) found.set(surface, seconds);
  }
  return found;
}
