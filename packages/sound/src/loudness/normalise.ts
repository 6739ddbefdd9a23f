/**
 * Setting loudness: one gain for the whole, and a limiter for the few peaks that would then be too high.
 *
 * Conventions: LUFS integrated; true peaks stay at or under −1 dBTP. When the limiter takes something away the
 * gain is raised a little to make up for it, so the target is met whenever it can be. It cannot where a stroke would
 * lose more than 1.5 dB beside the others: of drums alone the peaks are the accents, and a groove whose backbeat is turned
 * down is another groove.
 * Source: EBU R 128 for the ceiling of −1 dBTP.
 */
import { FullScaleDb, Lufs } from '@shedbook/core';
import { gainToDb, peakOf } from '@shedbook/signal';
import type { StereoAudio } from '../stereo.ts';
import { amplify } from './amplify.ts';
import { limitTruePeak } from './limiter.ts';
import { measureIntegrated } from './measure.ts';
import { mostLoss, strokeSteps } from './stroke-loss.ts';

/** Loudness of recordings and films where nothing else is asked for: what is usual for speech and music on a telephone. */
export const RECORDING_LUFS = Lufs(-16);

/** Highest true peak of normalised sound, in dBTP. */
export const CEILING_DBTP = FullScaleDb(-1);
/** Gains vary while the limiter works, which moves peaks by less than this. */
const MARGIN_DB = 0.1;
const CLOSE_ENOUGH_LU = 0.1;
const MOST_ROUNDS = 6;
/** No stroke loses more of its level than this to the limiter: about what is just noticed of one among others. */
const MOST_LOSS_DB = 1.5;
/** Where −16 LUFS would take more, the most limiting that takes no more is sought in steps of this. */
const LIMITING_STEP_DB = 0.25;

/** What is known of a sound whose loudness is to be set. */
export interface PlainLoudness {
  readonly plainLufs: Lufs;
  /** Its highest sample, in dB of full scale. */
  readonly peakDb: number;
}

/** What a gain and the limiter made of a sound. */
export interface LimitedLoudness {
  readonly lufs: Lufs;
  /** See {@link mostLoss}. */
  readonly lossDb: number;
}

/** A gain that is too high for the balance, by how much of it peaks are turned down. */
interface TooHigh {
  readonly limitingDb: number;
  readonly lossDb: number;
}

/** Seeks the most limiting that takes 1.5 dB of a stroke at most. @param freeDb gain at which nothing is limited */
function* seekMostLimiting(freeDb: number, found: TooHigh): Generator<number, void, LimitedLoudness> {
  let most = { steps: 0, lossDb: 0 };
  let over = { steps: Math.ceil(found.limitingDb / LIMITING_STEP_DB), lossDb: found.lossDb };
  const gainAt = (steps: number) => freeDb + steps * LIMITING_STEP_DB;
  let last = over.steps;
  while (over.steps - most.steps > 1) {
    const share = (MOST_LOSS_DB - most.lossDb) / (over.lossDb - most.lossDb);
    const between = most.steps + Math.ceil(share * (over.steps - most.steps));
    const steps = Math.min(between, over.steps - 1);
    const { lossDb } = yield gainAt(steps);
    last = steps;
    if (lossDb <= MOST_LOSS_DB) most = { steps, lossDb };
    else over = { steps, lossDb };
  }
  if (last !== most.steps) yield gainAt(most.steps);
}

/**
 * Seeks the one gain, in dB, with which a sound meets a loudness once its peaks are limited, or the most with which no
 * stroke loses more than 1.5 dB to the limiter. Each gain that it gives out is answered by what the sound is with it; the
 * last is the one.
 */
export function* seekGain(
  { plainLufs, peakDb }: PlainLoudness,
  targetLufs: Lufs,
  ceilingDbtp: FullScaleDb,
): Generator<number, void, LimitedLoudness> {
  const freeDb = ceilingDbtp - peakDb;
  let gainDb = targetLufs - plainLufs;
  for (let round = 1; ; round += 1) {
    const { lufs, lossDb } = yield gainDb;
    if (lossDb > MOST_LOSS_DB)
      return yield* seekMostLimiting(freeDb, { limitingDb: gainDb - freeDb, lossDb });
    const lacking = targetLufs - lufs;
    if (Math.abs(lacking) <= CLOSE_ENOUGH_LU || round === MOST_ROUNDS) return;
    gainDb += lacking;
  }
}

/** Sound at its new loudness, and what was done to it. */
export interface Normalised {
  readonly audio: StereoAudio;
  readonly loudnessLufs: Lufs;
  /** Gain applied to the whole, in dB. */
  readonly gainDb: number;
  /** Whether peaks had to be limited. */
  readonly limited: boolean;
}

/**
 * Sound at a loudness, nowhere above −1 dBTP.
 * @param targetLufs e.g. −18; −70 to 0.
 * @returns the sound and what was done; silence comes back as it is. Where the target would take
 * more than 1.5 dB off a stroke, the loudest that takes no more.
 * @throws RangeError when the target is not −70 to 0.
 */
export function normaliseLoudness(audio: StereoAudio, targetLufs: Lufs): Normalised {
  if (!(targetLufs >= -70 && targetLufs <= 0)) {
    throw new RangeError(`At targetLufs: found ${targetLufs}, expected −70 to 0. Is the sign missing?`);
  }
  const plainLufs = measureIntegrated(audio);
  if (plainLufs === Number.NEGATIVE_INFINITY)
    return { audio, loudnessLufs: plainLufs, gainDb: 0, limited: false };
  const peakDb = gainToDb(Math.max(peakOf(audio.left), peakOf(audio.right)));
  const search = seekGain({ plainLufs, peakDb }, targetLufs, CEILING_DBTP);
  let plainSteps: Float64Array | null = null;
  for (let step = search.next(); ; ) {
    const gainDb = step.value as number;
    const amplified = amplify(audio, gainDb);
    const result = limitTruePeak(amplified, FullScaleDb(CEILING_DBTP - MARGIN_DB));
    if (result === amplified)
      return { audio: result, loudnessLufs: Lufs(plainLufs + gainDb), gainDb, limited: false };
    const loudnessLufs = measureIntegrated(result);
    plainSteps ??= strokeSteps(audio);
    const lossDb = mostLoss(plainSteps, strokeSteps(result), gainDb);
    step = search.next({ lufs: loudnessLufs, lossDb });
    if (step.done) return { audio: result, loudnessLufs, gainDb, limited: true };
  }
}
