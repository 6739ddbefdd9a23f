/**
 * Evidence for each written voice at each event: the second look, with what is written.
 *
 * Conventions: evidence is a logit, struck against not struck; seconds.
 */
import type { Voice } from '@shedbook/core';
import type { HeardEvent } from '../detect/events.ts';
import { HEARD_COUNT, HEARD_VOICES, type StrokeNetwork } from '../network/network.ts';
import type { Place } from './places.ts';
import { type Claim, claimAt, hearAgain } from './second-look.ts';

/** Evidence for one voice at every event. */
export interface Evidence {
  readonly voice: Voice;
  readonly logit: Float64Array;
  /** Share of the strokes of this voice that is expected to be decided wrongly, from 0. */
  readonly doubt: number;
}

/** What the score claims of each event. */
export function claimOf(
  events: readonly HeardEvent[],
  places: readonly Place[],
  voices: readonly Voice[],
): Claim {
  const near = new Float64Array(events.length * HEARD_COUNT);
  const expected = new Float64Array(HEARD_COUNT);
  for (const voice of voices) {
    const index = HEARD_VOICES.indexOf(voice);
    expected[index] = 1;
    const times = places
      .filter((place) => place.expected.voice === voice)
      .map((place) => place.likelySeconds);
    let next = 0;
    events.forEach(({ timeSeconds }, e) => {
      while (
        next + 1 < times.length &&
        Math.abs(times[next + 1]! - timeSeconds) <= Math.abs(times[next]! - timeSeconds)
      )
        next += 1;
      const distance = times.length > 0 ? Math.abs(times[next]! - timeSeconds) : Number.POSITIVE_INFINITY;
      near[e * HEARD_COUNT + index] = claimAt(distance);
    });
  }
  return { near, expected };
}

function doubtOf(logits: Float64Array): number {
  let wrong = 0;
  let struck = 0;
  for (const logit of logits) {
    const p = 1 / (1 + Math.exp(-logit));
    wrong += Math.min(p, 1 - p);
    struck += p;
  }
  return wrong / Math.max(1, struck);
}

/** Evidence for each of the voices; without places whatever is written. */
export function gatherEvidence(
  events: readonly HeardEvent[],
  places: readonly Place[] | null,
  voices: readonly Voice[],
  network: StrokeNetwork,
): readonly Evidence[] {
  const claim = places ? claimOf(events, places, voices) : null;
  const again = hearAgain(events, claim, network.secondLook);
  return voices.map((voice) => {
    const index = HEARD_VOICES.indexOf(voice);
    const logit = Float64Array.from(events, (_, e) => again[e * HEARD_COUNT + index]!);
    return { voice, logit, doubt: doubtOf(logit) };
  });
}
