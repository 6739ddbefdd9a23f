/**
 * A take that was recorded beside a loudspeaker whose sound is known: what it played is taken out before listening, and
 * strokes that might be what is left of it are not held for the student's.
 *
 * Conventions: mono samples of one rate; levels in dB.
 */
import { type Hertz, type LoudspeakerHeard, Samples, Seconds, samplesToSeconds } from '@shedbook/core';
import { energyOf, powerToDb } from '@shedbook/signal';
import { echoOf } from './room.ts';

/** So far may a filter that holds still leave what it takes out, in dB: what is softer may be left of it. */
const LEFT_DB = 12;
/** A stroke is compared from so long before its onset to so long after it. */
const BEFORE_SECONDS = 0.005;
const AFTER_SECONDS = 0.06;
const TINY = 1e-12;

/** A take without what a loudspeaker played. */
export interface WithoutLoudspeaker {
  readonly samples: Float32Array;
  /** Null where it is not in the take. */
  readonly loudspeaker: LoudspeakerHeard | null;
  /** Whether what sounds at a moment may be the loudspeaker's. */
  readonly isDoubtful: (seconds: number) => boolean;
}

/** Takes what a loudspeaker played out of a take. @param known from the take's first sample on */
export function withoutLoudspeaker(
  take: Float32Array,
  known: Float32Array,
  sampleRateHz: Hertz,
): WithoutLoudspeaker {
  const found = echoOf(known, take);
  if (!found) return { samples: take, loudspeaker: null, isDoubtful: () => false };
  const { samples: echo, delay } = found;
  const levelDb = powerToDb(energyOf(echo) + TINY) - powerToDb(energyOf(take) + TINY);
  const samples = take.map((sample, i) => sample - echo[i]!);
  const energyAt = (sound: Float32Array, seconds: number) =>
    energyOf(
      sound.subarray(
        Math.max(0, Math.round((seconds - BEFORE_SECONDS) * sampleRateHz)),
        Math.max(0, Math.round((seconds + AFTER_SECONDS) * sampleRateHz)),
      ),
    );
  return {
    samples,
    loudspeaker: { delaySeconds: Seconds(samplesToSeconds(Samples(delay), sampleRateHz)), levelDb },
    isDoubtful: (seconds) =>
      powerToDb(energyAt(echo, seconds) + TINY) - powerToDb(energyAt(samples, seconds) + TINY) > LEFT_DB,
  };
}
