/**
 * What a limiter takes off strokes: how far their level over the first tenth of a second falls.
 *
 * Conventions: powers of steps of 10 ms, K-weighted, both channels added; a stroke begins in the step before the one in
 * which it is loudest.
 * Source: the level of a stroke, as this room's SPEC.md defines it.
 */
import { dbToPower, powerToDb, powerToLufs } from '@shedbook/signal';
import type { StereoAudio } from '../stereo.ts';
import { ABSOLUTE_GATE_LUFS, inFront, stepPowers } from './measure.ts';

const STEP_SECONDS = 0.01;
/** Steps of a stroke. */
const STROKE = 10;
/** Power of each hundredth of a second of a part of a longer sound, for {@link mostLoss}; a last, incomplete one is left out. */
export function strokeSteps(audio: StereoAudio): Float64Array {
  return stepPowers(inFront(audio), audio.sampleRateHz, STEP_SECONDS);
}

/** The powers of tenths of a second, for {@link integrateSteps}, of those of hundredths. */
export function tenthsOf(hundredths: Float64Array): Float64Array {
  return Float64Array.from({ length: Math.floor(hundredths.length / STROKE) }, (_, tenth) =>
    strokePower(hundredths, STROKE * tenth + 1),
  );
}

/** Whether a step is the loudest of a stroke, and not the beginning of a louder one in the window of a soft one. */
function isLoudest(powers: Float64Array, at: number): boolean {
  const power = powers[at] as number;
  for (let by = 1 - STROKE; by < STROKE; by += 1) if ((powers[at + by] ?? 0) > power) return false;
  return true;
}

function strokePower(powers: Float64Array, loudest: number): number {
  let sum = 0;
  for (let k = loudest - 1; k < loudest - 1 + STROKE; k += 1) sum += powers[k] ?? 0;
  return sum / STROKE;
}

/**
 * By how many decibels the stroke that lost most is softer than before; 0 where none lost anything.
 * @param before {@link strokeSteps} of a sound, one part after the other. @param after the same of what became of it
 * @param gainDb what the whole was made louder by, apart from what it lost
 */
export function mostLoss(before: Float64Array, after: Float64Array, gainDb: number): number {
  const gain = dbToPower(gainDb);
  let most = 0;
  for (let at = 0; at < before.length; at += 1) {
    const own = strokePower(before, at);
    if (powerToLufs(own) <= ABSOLUTE_GATE_LUFS || !isLoudest(before, at)) continue;
    most = Math.max(most, powerToDb((gain * own) / strokePower(after, at)));
  }
  return most;
}
