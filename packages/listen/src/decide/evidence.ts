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
  /** Index of the output that tells of it, at every event. */
  readonly output: Uint8Array;
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
  const claimed = new Set(
    voices.some((voice) => voice === 'rimshot') ? [...voices, 'snare' as const] : voices,
  );
  for (const voice of claimed) {
    const index = outputOf(voice);
    expected[index] = 1;
    const times = places
      .filter((place) => claims(place.expected.voice, voice))
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

function firstOf(events: readonly HeardEvent[], index: number): Float64Array {
  const first = new Float64Array(events.length);
  for (let e = 0; e < first.length; e += 1) first[e] = events[e]!.presence[index]!;
  return first;
}

/**
 * So many events count of a take that has a score, about a minute: on takes of dev's kit more left the foot unheard that
 * plays (0.76 where all counted, 0.88 so), and fewer had limbs believed that stayed out.
 */
const COUNTED = 400;

/** The outputs that may tell of a voice: whoever strikes the snare without its rim has struck the accent all the same. */
export function outputsOf(voice: Voice): readonly number[] {
  return voice === 'rimshot' ? [outputOf(voice), outputOf('snare')] : [outputOf(voice)];
}

/** The voices that a score claims where it writes one. */
function claims(written: Voice, voice: Voice): boolean {
  return written === voice || (written === 'rimshot' && voice === 'snare');
}

/** What tells of a voice: of several outputs the surest at each event. */
function surest([first, ...others]: readonly Float64Array[]): Float64Array {
  if (others.length === 0) return first!;
  return first!.map((one, e) => Math.max(one, ...others.map((column) => column[e]!)));
}

/** Which of several outputs is the surest at each event. */
function outputsAt(
  logit: Float64Array,
  columns: readonly Float64Array[],
  outputs: readonly number[],
): Uint8Array {
  if (outputs.length === 1) return new Uint8Array(logit.length).fill(outputs[0]!);
  return Uint8Array.from(logit, (most, e) => outputs[columns.findIndex((one) => one[e] === most)]!);
}

/** Gathers what outputs say of a voice. @param again rows of the second look with the score, or without one */
function evidenceOf(
  voice: Voice,
  events: readonly HeardEvent[],
  free: Float64Array,
  again: Float64Array,
): Evidence {
  const outputs = outputsOf(voice);
  const columns = outputs.map((index) => columnOf(again, index));
  const logit = surest(columns);
  const output = outputsAt(logit, columns, outputs);
  const alone = free === again ? logit : surest(outputs.map((index) => columnOf(free, index)));
  const first = surest(outputs.map((index) => firstOf(events, index)));
  return { voice, logit, free: alone, first, output, doubt: doubtOf(logit) };
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

/**
 * What the sound says of each voice at each event whatever is written; rows as in `second-look.ts`.
 * @param counted events that count at most; all when left out
 */
export function hearFreely(
  events: readonly HeardEvent[],
  network: StrokeNetwork,
  counted = Number.POSITIVE_INFINITY,
): Float64Array {
  return hearAgain(events, null, network.secondLook, { events: counted });
}

/** Evidence for each of the voices whatever is written. @param free as by {@link hearFreely} */
export function freeEvidence(
  events: readonly HeardEvent[],
  free: Float64Array,
  voices: readonly Voice[],
): readonly Evidence[] {
  return voices.map((voice) => evidenceOf(voice, events, free, free));
}

/** Evidence for each of the voices, the score's claim weighed. @param free as by {@link hearFreely} */
export function gatherEvidence(
  events: readonly HeardEvent[],
  places: readonly Place[],
  voices: readonly Voice[],
  { network, free }: { readonly network: StrokeNetwork; readonly free: Float64Array },
): readonly Evidence[] {
  const claim = claimOf(events, places, voices);
  const indices = [...new Set(voices.flatMap(outputsOf))];
  const again = hearAgain(events, claim, network.secondLook, { voices: indices, events: COUNTED });
  return voices.map((voice) => evidenceOf(voice, events, free, again));
}
