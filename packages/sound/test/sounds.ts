/** What the tests of the kit share: one kit, and single strokes of it. */
import { Hertz, LeadDb, Seconds } from '@shedbook/core';
import { createKFilter, powerToLufs } from '@shedbook/signal';
import { keptKit } from '../../../internal/testing/kept-kit.mjs';
import type { Kit } from '../src/kit/kit.ts';
import { LEVEL_WINDOW_SECONDS } from '../src/kit/measured-sound.ts';
import type { SoundName } from '../src/kit/sound.ts';
import { render } from '../src/render/render.ts';
import type { SoundingStroke } from '../src/render/sound-of.ts';
import type { StereoAudio } from '../src/stereo.ts';

export const RATE = Hertz(32000);

/** The built-in kit as these sources make it, made once; a lower rate than usual keeps the tests quick. */
export function kit(): Kit {
  return keptKit({ sampleRateHz: RATE });
}

/** How every sound is asked for. */
export const STROKE_OF: Readonly<
  Record<SoundName, Pick<SoundingStroke, 'voice' | 'articulation' | 'mark' | 'how'>>
> = {
  ride: { voice: 'ride', articulation: 'normal', mark: 'x' },
  'ride-bell': { voice: 'ride', articulation: 'bell', mark: 'b' },
  hihat: { voice: 'hihat', articulation: 'normal', mark: 'x' },
  'hihat-open': { voice: 'hihat-open', articulation: 'normal', mark: 'x' },
  'hihat-foot': { voice: 'hihat-foot', articulation: 'normal', mark: 'x' },
  'hihat-splash': { voice: 'hihat-foot', articulation: 'splash', mark: 'o' },
  bass: { voice: 'bass', articulation: 'normal', mark: 'x' },
  snare: { voice: 'snare', articulation: 'normal', mark: 'x' },
  'snare-buzz': { voice: 'snare', articulation: 'buzz', mark: 'b' },
  'snare-tap': { voice: 'snare', articulation: 'tap', mark: 'x' },
  'snare-sweep': { voice: 'snare', articulation: 'sweep', mark: 'w' },
  sidestick: { voice: 'sidestick', articulation: 'normal', mark: 'x' },
  rimshot: { voice: 'rimshot', articulation: 'normal', mark: 'x' },
  crash: { voice: 'crash', articulation: 'normal', mark: 'x' },
  'tom-high': { voice: 'tom-high', articulation: 'normal', mark: 'x' },
  'tom-mid': { voice: 'tom-mid', articulation: 'normal', mark: 'x' },
  'tom-low': { voice: 'tom-low', articulation: 'normal', mark: 'x' },
  'tom-floor': { voice: 'tom-floor', articulation: 'normal', mark: 'x' },
  splash: { voice: 'splash', articulation: 'normal', mark: 'x' },
  china: { voice: 'china', articulation: 'normal', mark: 'x' },
  cowbell: { voice: 'cowbell', articulation: 'normal', mark: 'x' },
  clap: { voice: 'clap', articulation: 'normal', mark: 'x' },
  'bass-heel-down': { voice: 'bass', articulation: 'normal', mark: 'x', how: ['heel down'] },
  'snare-edge': { voice: 'snare', articulation: 'normal', mark: 'x', how: ['tip', 'edge'] },
  'hihat-shoulder': { voice: 'hihat', articulation: 'normal', mark: 'x', how: ['shoulder'] },
  'ride-shoulder': { voice: 'ride', articulation: 'normal', mark: 'x', how: ['shoulder', 'bow'] },
  'click-accent': { voice: 'click', articulation: 'normal', mark: 'X' },
  'click-beat': { voice: 'click', articulation: 'normal', mark: 'x' },
  'click-subdivision': { voice: 'click', articulation: 'normal', mark: 'g' },
};

/** The start of one stroke alone, dry and in the middle. */
export function strike(name: SoundName, levelDb: number, seed = 'test', seconds = 0.2): StereoAudio {
  const strokes = [{ ...STROKE_OF[name], timeSeconds: Seconds(0), levelDb: LeadDb(levelDb) }];
  const dry = { kit: kit(), room: false, picture: false, seed };
  return render({ strokes, durationSeconds: Seconds(seconds) }, { ...dry, tail: 'cut' });
}

/** One stroke alone, dry and in the middle, until it has died. */
export function ring(name: SoundName, levelDb: number): StereoAudio {
  const strokes = [{ ...STROKE_OF[name], timeSeconds: Seconds(0), levelDb: LeadDb(levelDb) }];
  return render({ strokes, durationSeconds: Seconds(0) }, { kit: kit(), room: false, picture: false });
}

/** K-weighted level of the 100 ms from a moment on, in LUFS: the level of a stroke as SPEC.md defines it. */
export function strokeLevelLufs(audio: StereoAudio, timeSeconds: number): number {
  const rate = audio.sampleRateHz;
  const from = Math.round(timeSeconds * rate);
  const length = Math.round(LEVEL_WINDOW_SECONDS * rate);
  const power = [audio.left, audio.right].reduce((sum, samples) => {
    const weighted = new Float64Array(length);
    const stretch = new Float32Array(length);
    stretch.set(samples.subarray(from, from + length));
    createKFilter(rate)(stretch, 0, length, weighted);
    return sum + weighted.reduce((total, value) => total + value * value, 0) / length;
  }, 0);
  return powerToLufs(power);
}
