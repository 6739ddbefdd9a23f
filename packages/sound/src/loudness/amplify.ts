/** One gain for both channels. */
import { dbToGain } from '@shedbook/signal';
import type { StereoAudio } from '../stereo.ts';

/** Sound that is louder by so many decibels, or softer where they are negative; peaks are left as high as they come. */
export function amplify({ left, right, sampleRateHz }: StereoAudio, gainDb: number): StereoAudio {
  const gain = dbToGain(gainDb);
  const scaled = (samples: Float32Array) => {
    const out = new Float32Array(samples.length);
    for (let i = 0; i < samples.length; i += 1) out[i] = (samples[i] as number) * gain;
    return out;
  };
  return { left: scaled(left), right: scaled(right), sampleRateHz };
}
