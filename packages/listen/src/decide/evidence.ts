/**
 * Evidence for each written voice at each event: the second look, with what is written.
 *
 * Conventions: evidence is a logit, struck against not struck; seconds.
 */

import type { Voice } from '@shedbook/core';
import { sigmoid } from '@shedbook/signal';
import type { HeardEvent } from '../detect/events.ts';
import { HEARD_COUNT, outputOf } from '../network/heard-voices.data.ts';
import type { StrokeNetwork } from '../network/network.ts';
import type { Place } from './places.ts';
import { type Claim, claimAt, columnOf, hearAgain } from './second-look.ts';

/** Evidence for one voice at every event. */
export interface Evidence {
  readonly voice: Voice;
  readonly logit: Float64Array;
  /** The same whatever is written. */
  readonly free: Float64Array;
  /** The same by the first look, which knows nothing of the other events. */
  readonly first: Float64Array;
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
    const index = outputOf(voice);
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

function firstOf(events: readonly HeardEvent[], voice: Voice): Float64Array {
  const index = outputOf(voice);
  return Float64Array.from(events, ({ presence }) => presence[index]!);
}

function doubtOf(logits: Float64Array): number {
  let wrong = 0;
  let struck = 0;
  for (const logit of logits) {
    const p = sigmoid(logit);
    wrong += Math.min(p, 1 - p);
    struck += p;
  }
  return wrong / Math.max(1, struck);
}

/** What the sound says of each voice at each event whatever is written; rows as in `second-look.ts`. */
export function hearFreely(events: readonly HeardEvent[], network: StrokeNetwork): Float64Array {
  return hearAgain(events, null, network.secondLook);
}

/** Evidence for each of the voices whatever is written. @param free as by {@link hearFreely} */
export function freeEvidence(
  events: readonly HeardEvent[],
  free: Float64Array,
  voices: readonly Voice[],
): readonly Evidence[] {
  return voices.map((voice) => {
    const logit = columnOf(free, outputOf(voice));
    return { voice, logit, free: logit, first: firstOf(events, voice), doubt: doubtOf(logit) };
  });
}

/** Evidence for each of the voices, the score's claim weighed. @param free as by {@link hearFreely} */
export function gatherEvidence(
  events: readonly HeardEvent[],
  places: readonly Place[],
  voices: readonly Voice[],
  { network, free }: { readonly network: StrokeNetwork; readonly free: Float64Array },
): readonly Evidence[] {
  const claim = claimOf(events, places, voices);
  const indices = voices.map((voice) => outputOf(voice));
  const again = hearAgain(events, claim, network.secondLook, { voices: indices });
  return voices.map((voice, i) => {
    const logit = columnOf(again, indices[i]!);
    const alone = columnOf(free, indices[i]!);
    return { voice, logit, free: alone, first: firstOf(events, voice), doubt: doubtOf(logit) };
  });
}
