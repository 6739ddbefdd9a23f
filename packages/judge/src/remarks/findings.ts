/**
 * What happens again and again at one written place of the pattern, in most of the times it comes round.
 *
 * Conventions: lateness in ms beside the voice's own median; positive is late.
 */
import type { FullReport, PlacePlayed } from '@shedbook/core';
import { median } from '@shedbook/signal';
import { justNoticedMs } from '../perception/perception.ts';

/** What happens again and again at one written place. */
export interface PlaceFinding {
  readonly place: PlacePlayed;
  readonly kind: 'early' | 'late' | 'missed';
  /** Median lateness in ms; for a missed stroke 0. */
  readonly offsetMs: number;
  /** How often. */
  readonly times: number;
  /** How often it was played, or due where it is missed. */
  readonly of: number;
}

/** Fewer times say nothing; and in less than this share of them it does not happen again and again. */
const FEWEST_LOOPS = 3;
const MOST_OF = 0.6;

function findingOf(place: PlacePlayed, noticedMs: number): readonly PlaceFinding[] {
  const { missed, offsetsMs } = place;
  const due = missed + offsetsMs.length;
  if (due >= FEWEST_LOOPS && missed / due >= MOST_OF)
    return [{ place, kind: 'missed', offsetMs: 0, times: missed, of: due }];
  const middle = median(offsetsMs);
  const times = offsetsMs.filter((offset) => offset * Math.sign(middle) > noticedMs).length;
  const of = offsetsMs.length;
  if (of < FEWEST_LOOPS || times / of < MOST_OF) return [];
  return [{ place, kind: middle < 0 ? 'early' : 'late', offsetMs: middle, times, of }];
}

/** The findings of a take: what is late or early counts from what is just noticed among eighths on. */
export function findingsOf({ places = [], alignment }: FullReport): readonly PlaceFinding[] {
  const noticedMs = justNoticedMs(60 / Math.max(alignment.bpm, 1) / 2);
  return places.flatMap((place) => findingOf(place, noticedMs));
}
