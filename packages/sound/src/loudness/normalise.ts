/**
 * Setting loudness: one gain for the whole, and a limiter for the few peaks that would then be too high.
 *
 * Conventions: LUFS integrated; true peaks stay at or under −1 dBTP. When the limiter takes something away the
 * gain is raised a little to make up for it, so the target is met whenever it can be. It cannot where peaks would have to
 * come down far: of drums alone the peaks are the accents, and a groove whose backbeat is turned down is another groove.
 * Source: EBU R 128 for the ceiling of −1 dBTP.
 */
import { FullScaleDb, Lufs } from '@shedbook/core';
import { gainToDb, peakOf } from '@shedbook/signal';
import type { StereoAudio } from '../stereo.ts';
import { amplify } from './amplify.ts';
import { limitTruePeak } from './limiter.ts';
import { measureIntegrated } from './measure.ts';

/** Loudness of recordings and films where nothing else is asked for: what is usual for speech and music on a telephone. */
export const RECORDING_LUFS = Lufs(-16);

/** Highest true peak of normalised sound, in dBTP. */
export const CEILING_DBTP = FullScaleDb(-1);
/** Gains vary while the limiter works, which moves peaks by less than this. */
const MARGIN_DB = 0.1;
const CLOSE_ENOUGH_LU = 0.1;
const MOST_ROUNDS = 6;
/**
 * A peak is turned down by no more than this: so much takes 1.6 dB at most off a stroke's level over its first 100 ms,
 * as measured of swing, shuffle, six-eight and slow twelve-eight; 16 dB took 6 to 11.
 */
const MOST_LIMITING_DB = 2;

/** What is known of a sound whose loudness is to be set. */
export interface PlainLoudness {
  readonly plainLufs: Lufs;
  /** Its highest sample, in dB of full scale. */
  readonly peakDb: number;
}

/**
 * Seeks the one gain, in dB, with which a sound meets a loudness once its peaks are limited, or the most that needs no
 * more than 2 dB of limiting. Each gain that it gives out is answered by the loudness that the sound has with it; the last is the one.
 */
export function* seekGain(
  { plainLufs, peakDb }: PlainLoudness,
  targetLufs: Lufs,
  ceilingDbtp: FullScaleDb,
): Generator<number, void, Lufs> {
  const mostDb = ceilingDbtp + MOST_LIMITING_DB - peakDb;
  let gainDb = Math.min(targetLufs - plainLufs, mostDb);
  for (let round = 1; ; round += 1) {
    const lacking = targetLufs - (yield gainDb);
    if (Math.abs(lacking) <= CLOSE_ENOUGH_LU || gainDb >= mostDb || round === MOST_ROUNDS) return;
    gainDb = Math.min(mostDb, gainDb + lacking);
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
 * @returns the sound and what was done; silence comes back as it is. Where the target would need more than 2 dB
 * of limiting, the loudest that needs no more.
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
  for (let step = search.next(); ; ) {
    const gainDb = step.value as number;
    const amplified = amplify(audio, gainDb);
    const result = limitTruePeak(amplified, FullScaleDb(CEILING_DBTP - MARGIN_DB));
    if (result === amplified)
      return { audio: result, loudnessLufs: Lufs(plainLufs + gainDb), gainDb, limited: false };
    const loudnessLufs = measureIntegrated(result);
    step = search.next(loudnessLufs);
    if (step.done) return { audio: result, loudnessLufs, gainDb, limited: true };
  }
}
