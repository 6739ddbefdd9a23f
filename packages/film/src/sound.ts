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
  slowDown,
} from '@shedbook/sound';
import type { Film } from './film.ts';
import type { Shown } from './recorded.ts';
import type { PlayedScene, Scene } from './scene.ts';

/** Loudness of films: what is usual for speech and music on a telephone. */
const FILM_LUFS = Lufs(-16);
/** Highest true peak, before encoding, that is tried first: AAC and Opus add about so much to −1 dBTP. */
export const FIRST_CEILING_DBTP = FullScaleDb(-2);
/** What still rings at the end of a scene is faded out so fast. */
const FADE_SECONDS = 0.5;
/** A recording is cut in with a fade as short as that: too short to soften a stroke. */
const FADE_IN_SECONDS = 0.003;
const CLOSE_ENOUGH_LU = 0.1;
const MOST_ROUNDS = 4;

function fadeOut(samples: Float32Array, fade: number): void {
  const from = samples.length - fade;
  for (let i = Math.max(0, from); i < samples.length; i += 1)
    samples[i] = (samples[i] as number) * ((samples.length - i) / fade);
}

function fadeIn(samples: Float32Array, from: number, fade: number): void {
  for (let i = 0; i < fade && from + i < samples.length; i += 1)
    samples[from + i] = ((samples[from + i] as number) * i) / fade;
}

function loudnessOf(audio: StereoAudio): number {
  return integrateSteps([loudnessSteps(audio)]);
}

/** Adds one sound to another from a sample on, as far as there is room. */
function addInto(into: StereoAudio, sound: StereoAudio, start: number): void {
  for (const [from, to] of [
    [sound.left, into.left],
    [sound.right, into.right],
  ] as const)
    for (let i = 0; i < from.length && start + i < to.length; i += 1)
      to[start + i] = (to[start + i] as number) + (from[i] as number);
}

/** A recording as loud as the kit is when it plays the same. */
function asLoudAs(recording: StereoAudio, model: StereoAudio): StereoAudio {
  const gainDb = loudnessOf(model) - loudnessOf(recording);
  return Number.isFinite(gainDb) ? amplify(recording, gainDb) : recording;
}

/** A recording as fast as it is shown, of the same pitch; its strokes are known. */
function atSpeed({ left, right, sampleRateHz }: StereoAudio, shown: Shown): StereoAudio {
  const { recorded, fromSeconds, speed } = shown;
  const onsets = recorded.report.strokes.map(({ timeSeconds }) => timeSeconds - fromSeconds);
  const [slowLeft, slowRight] = slowDown([left, right], { rateHz: sampleRateHz, speed, onsets });
  return { left: slowLeft ?? left, right: slowRight ?? right, sampleRateHz };
}

/** What is heard of a scene from the end of its lead: the kit, or over a performance what was asked for. */
function soundOfScene(
  scene: PlayedScene,
  { request: { lesson, over } }: Pick<Film, 'request'>,
  { kit, recording }: SceneSources,
): readonly StereoAudio[] {
  const { strokes, durationSeconds, exercise, shown } = scene;
  const model = render({ strokes, durationSeconds }, { kit, setUp: lesson.setUp, seed: exercise ?? 0 });
  if (!recording || !shown || !over || over.heard === 'model') return [model];
  const teacher = asLoudAs(atSpeed(recording, shown), model);
  return over.heard === 'teacher' ? [teacher] : [teacher, amplify(model, over.modelDb)];
}

/** What the sound of a scene is made of. */
export interface SceneSources {
  readonly kit: Kit;
  /** What was recorded of a performance that the scene shows, at the kit's rate and as fast as it was played, or null. */
  readonly recording: StereoAudio | null;
}

/** A scene's sound, exactly as long as its frames, as loud as the kit is. */
export function renderScene(scene: Scene, film: Pick<Film, 'request'>, sources: SceneSources): StereoAudio {
  const { sampleRateHz } = sources.kit;
  const perFrame = sampleRateHz / film.request.framesPerSecond;
  const length = scene.frames * perFrame;
  const audio: StereoAudio = {
    ...{ left: new Float32Array(length), right: new Float32Array(length), sampleRateHz },
  };
  if (scene.kind === 'title') return audio;
  const start = scene.leadFrames * perFrame;
  for (const sound of soundOfScene(scene, film, sources)) addInto(audio, sound, start);
  for (const samples of [audio.left, audio.right]) {
    fadeIn(samples, start, Math.round(FADE_IN_SECONDS * sampleRateHz));
    fadeOut(samples, Math.round(FADE_SECONDS * sampleRateHz));
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
