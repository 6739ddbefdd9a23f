/**
 * The sound of a film, scene by scene, so that a long film takes no more memory than its longest scene.
 *
 * Conventions: stereo at the kit's rate, which the frames of a second divide; loudness in LUFS.
 */
import { FullScaleDb, Lufs } from '@shedbook/core';
import {
  amplify,
  integrateSteps,
  type Kit,
  limitTruePeak,
  loudnessSteps,
  render,
  type StereoAudio,
} from '@shedbook/sound';
import type { Film } from './film.ts';
import type { Scene } from './scenes.ts';

/** Loudness of films: what is usual for speech and music on a telephone. */
const FILM_LUFS = Lufs(-16);
/** Highest true peak, before encoding, that is tried first: AAC and Opus add about so much to −1 dBTP. */
export const FIRST_CEILING_DBTP = FullScaleDb(-2);
/** What still rings at the end of a scene is faded out so fast. */
const FADE_SECONDS = 0.5;
const CLOSE_ENOUGH_LU = 0.1;
const MOST_ROUNDS = 4;

function fadeOut(samples: Float32Array, fade: number): void {
  const from = samples.length - fade;
  for (let i = Math.max(0, from); i < samples.length; i += 1)
    samples[i] = (samples[i] as number) * ((samples.length - i) / fade);
}

/** A scene's sound, exactly as long as its frames, as loud as the kit is. */
export function renderScene(scene: Scene, film: Pick<Film, 'request'>, kit: Kit): StereoAudio {
  const { framesPerSecond, lesson } = film.request;
  const perFrame = kit.sampleRateHz / framesPerSecond;
  const length = scene.frames * perFrame;
  const audio: StereoAudio = {
    left: new Float32Array(length),
    right: new Float32Array(length),
    sampleRateHz: kit.sampleRateHz,
  };
  if (scene.kind === 'title') return audio;
  const { strokes, durationSeconds, exercise, leadFrames } = scene;
  const sound = render({ strokes, durationSeconds }, { kit, setUp: lesson.setUp, seed: exercise ?? 0 });
  const start = leadFrames * perFrame;
  for (const [from, into] of [
    [sound.left, audio.left],
    [sound.right, audio.right],
  ] as const) {
    into.set(from.subarray(0, length - start), start);
    fadeOut(into, Math.round(FADE_SECONDS * kit.sampleRateHz));
  }
  return audio;
}

/** Scenes that were rendered, kept somewhere and read again one by one. */
export interface KeptScenes {
  readonly count: number;
  read(index: number): Promise<StereoAudio>;
}

/** How a film's sound is brought to its loudness. */
export interface Mastering {
  /** Of the whole, in dB. */
  readonly gainDb: number;
  /** Highest true peak. */
  readonly ceilingDbtp: FullScaleDb;
}

/** A scene at its loudness, no peak too high. */
export function master(audio: StereoAudio, { gainDb, ceilingDbtp }: Mastering): StereoAudio {
  return limitTruePeak(amplify(audio, gainDb), ceilingDbtp);
}

/** Finds the one gain for all scenes with which the film is as loud as it should be, the limiter counted in. */
export async function findMastering(scenes: KeptScenes, ceilingDbtp: FullScaleDb): Promise<Mastering> {
  const loudness = async (gainDb: number | null): Promise<number> => {
    const steps: Float64Array[] = [];
    for (let index = 0; index < scenes.count; index += 1) {
      const audio = await scenes.read(index);
      steps.push(loudnessSteps(gainDb === null ? audio : master(audio, { gainDb, ceilingDbtp })));
    }
    return integrateSteps(steps);
  };
  const plain = await loudness(null);
  if (plain === Number.NEGATIVE_INFINITY) return { gainDb: 0, ceilingDbtp };
  let gainDb = FILM_LUFS - plain;
  for (let round = 1; round < MOST_ROUNDS; round += 1) {
    const lacking = FILM_LUFS - (await loudness(gainDb));
    if (Math.abs(lacking) <= CLOSE_ENOUGH_LU) break;
    gainDb += lacking;
  }
  return { gainDb, ceilingDbtp };
}
