/**
 * The take as alignment sees it: moments with how much they sound like each kind of voice.
 *
 * Conventions: four kinds, since a kit that was never heard before is told apart only roughly at first; and how
 * surely anything was struck. Values 0 to 1; times in seconds, ascending.
 */

import type { SoundingVoice, Voice } from '@shedbook/core';
import { sigmoid } from '@shedbook/signal';
import type { HeardEvent } from '../detect/events.ts';
import { HEARD_COUNT, HEARD_VOICES } from '../network/heard-voices.data.ts';

/** Kinds of sound that alignment tells apart. */
export const KINDS = ['cymbal', 'foot', 'low', 'drum', 'any'] as const;
/** How many kinds there are. */
export const KIND_COUNT = KINDS.length;
/** Index of the kind that every stroke is of. */
export const ANY = 4;

const KIND_OF: Readonly<Record<SoundingVoice, number>> = {
  ride: 0,
  hihat: 0,
  'hihat-open': 0,
  crash: 0,
  splash: 0,
  china: 0,
  cowbell: 0,
  clap: 0,
  'hihat-foot': 1,
  bass: 2,
  'tom-low': 2,
  'tom-floor': 2,
  snare: 3,
  sidestick: 3,
  rimshot: 3,
  'tom-high': 3,
  'tom-mid': 3,
  click: -1,
};

/** Index of the kind of a voice. */
export function kindOf(voice: Voice): number {
  return KIND_OF[voice];
}

/** Parallel columns, one entry a moment. */
export interface Observations {
  readonly times: Float64Array;
  /** KIND_COUNT values a moment. */
  readonly values: Float64Array;
}

/** Moments nearer than this are one. */
const MERGE_SECONDS = 0.03;
const LEAST = 0.3;
/** Logits are raised by this much, so that doubtful strokes help to find the pulse. */
const OPENNESS = 0.7;

function kindsOf(event: HeardEvent, logits: Float64Array): { time: number; values: Float64Array } {
  const values = new Float64Array(KIND_COUNT);
  let offset = 0;
  let best = 0;
  let nothing = 1;
  for (let voice = 0; voice < HEARD_COUNT; voice += 1) {
    const kind = KIND_OF[HEARD_VOICES[voice]!];
    if (kind < 0) continue;
    const p = sigmoid(logits[voice]! + OPENNESS);
    values[kind] = Math.max(values[kind]!, p);
    nothing *= 1 - p;
    if (p > best) {
      best = p;
      offset = event.offsetMs[voice]! / 1000;
    }
  }
  values[ANY] = 1 - nothing;
  return { time: event.timeSeconds + offset, values };
}

/**
 * The moments of a take at which something seems to have been struck.
 * @param free presence of every voice at every event, as by `hearFreely`
 */
export function observe(events: readonly HeardEvent[], free: Float64Array): Observations {
  const moments = events
    .map((event, e) => kindsOf(event, free.subarray(e * HEARD_COUNT, (e + 1) * HEARD_COUNT)))
    .filter((moment) => moment.values[ANY]! > LEAST)
    .toSorted((a, b) => a.time - b.time);
  const merged: typeof moments = [];
  for (const moment of moments) {
    const last = merged.at(-1);
    if (!last || moment.time - last.time > MERGE_SECONDS) merged.push(moment);
    else {
      if (moment.values[ANY]! > last.values[ANY]!) last.time = moment.time;
      for (let kind = 0; kind < KIND_COUNT; kind += 1) {
        last.values[kind] = Math.max(last.values[kind]!, moment.values[kind]!);
      }
    }
  }
  const values = new Float64Array(merged.length * KIND_COUNT);
  for (const [index, moment] of merged.entries()) values.set(moment.values, index * KIND_COUNT);
  return { times: Float64Array.from(merged, (moment) => moment.time), values };
}

/** Index of the first time not before `seconds`. */
export function firstFrom(times: Float64Array, seconds: number): number {
  let low = 0;
  let high = times.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (times[middle]! < seconds) low = middle + 1;
    else high = middle;
  }
  return low;
}
