/**
 * The sound of a film, bit by bit, so that a long film takes no more memory than a short one.
 *
 * Conventions: stereo at the kit's rate, which the frames of a second divide; loudness in LUFS.
 */
import { FullScaleDb, type Hertz } from '@shedbook/core';
import { gainToDb, peakOf } from '@shedbook/signal';
import {
  addWords,
  amplify,
  countAloud,
  createRenderer,
  integrateSteps,
  type Kit,
  limitTruePeak,
  loudnessSteps,
  mostLoss,
  RECORDING_LUFS,
  render,
  type SpokenWord,
  type SpokenWords,
  type StereoAudio,
  seekGain,
  slowDown,
  strokeSteps,
  tenthsOf,
} from '@shedbook/sound';
import type { Film } from './film.ts';
import type { Shown } from './recorded.ts';
import type { PlayedScene, Scene } from './scene.ts';

/** Highest true peak, before encoding, that is tried first: AAC and Opus add about so much to −1 dBTP. */
const FIRST_CEILING_DBTP = FullScaleDb(-2);
/** What players decode stays under this true peak. */
const MOST_DBTP = -1.1;
/** How often a lower ceiling is tried. */
const MOST_TRIES = 4;
/** What still rings at the end of a scene is faded out so fast. */
const FADE_SECONDS = 0.5;
/** A recording is cut in with a fade as short as that: too short to soften a stroke. */
const FADE_IN_SECONDS = 0.003;

/** Where a block lies in its scene: samples from the scene's beginning. */
interface Place {
  readonly at: number;
  /** Where the scene's sound begins, and where the scene ends. */
  readonly start: number;
  readonly end: number;
}

/** Fades a block in where its scene's sound begins, and out where the scene ends. */
function fade({ left, right, sampleRateHz }: StereoAudio, { at, start, end }: Place): void {
  const [fadeIn, fadeOut] = [FADE_IN_SECONDS, FADE_SECONDS].map((each) =>
    Math.round(each * sampleRateHz),
  ) as [number, number];
  for (let i = 0; i < left.length; i += 1) {
    const [since, until] = [at + i - start, end - at - i];
    if (since >= fadeIn && until >= fadeOut) continue;
    const share = Math.max(0, Math.min(1, since / fadeIn, until / fadeOut));
    left[i] = (left[i] as number) * share;
    right[i] = (right[i] as number) * share;
  }
}

function loudnessOf(audio: StereoAudio): number {
  return integrateSteps([loudnessSteps(audio)]);
}

/** Adds one sound to another, as far as there is room. */
function addInto(into: StereoAudio, sound: StereoAudio): void {
  for (const [from, to] of [
    [sound.left, into.left],
    [sound.right, into.right],
  ] as const)
    for (let i = 0; i < from.length && i < to.length; i += 1) to[i] = (to[i] as number) + (from[i] as number);
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

/** What is heard of a scene that shows a recording, from the end of its lead. */
function soundOver(
  { strokes, durationSeconds, exercise }: PlayedScene,
  shown: Shown,
  { request: { lesson, over } }: Pick<Film, 'request'>,
  { kit, recording }: SceneSources,
): readonly StereoAudio[] {
  const model = render({ strokes, durationSeconds }, { kit, setUp: lesson.setUp, seed: exercise ?? 0 });
  if (!recording || !over || over.heard === 'model') return [model];
  const teacher = asLoudAs(atSpeed(recording, shown), model);
  return over.heard === 'teacher' ? [teacher] : [teacher, amplify(model, over.modelDb)];
}

/** What the sound of a scene is made of. */
export interface SceneSources {
  readonly kit: Kit;
  /** What was recorded of a performance that the scene shows, at the kit's rate and as fast as it was played, or null. */
  readonly recording: StereoAudio | null;
  /** What a film that counts aloud counts with, at the kit's rate; nothing is said where left out. */
  readonly words?: SpokenWords | null;
}

/** Samples that are rendered at a time, and how far ahead strokes are made ready, in seconds. */
const BLOCK = 1 << 16;
const AHEAD_SECONDS = 4;

function silence(length: number, sampleRateHz: StereoAudio['sampleRateHz']): StereoAudio {
  return { left: new Float32Array(length), right: new Float32Array(length), sampleRateHz };
}

/** Blocks of what the kit plays. @param length samples in all */
function* played(
  { strokes, exercise }: PlayedScene,
  { request: { lesson } }: Pick<Film, 'request'>,
  { kit, length }: { readonly kit: Kit; readonly length: number },
): Generator<StereoAudio> {
  const renderer = createRenderer({ kit, setUp: lesson.setUp, seed: exercise ?? 0 });
  let next = 0;
  for (let at = 0; at < length; at += BLOCK) {
    const until = (at + BLOCK) / kit.sampleRateHz + AHEAD_SECONDS;
    const later = strokes.findIndex(({ timeSeconds }, index) => index >= next && timeSeconds >= until);
    const end = later === -1 ? strokes.length : later;
    renderer.schedule(strokes.slice(next, end));
    next = end;
    const block = silence(Math.min(BLOCK, length - at), kit.sampleRateHz);
    renderer.render(block.left, block.right, block.left.length);
    yield block;
  }
}

/** What is counted aloud in a scene, from its first sample: a word on every click; nothing over a recording, whose own count is heard. */
function wordsIn(scene: PlayedScene, start: number, { words }: SceneSources): readonly SpokenWord[] {
  if (!words || scene.shown) return [];
  return countAloud(scene.strokes, words).map((word) => ({ ...word, from: word.from + start }));
}

/** Blocks of what a scene plays, without what is said over it. */
function* playedScene(
  scene: PlayedScene,
  film: Pick<Film, 'request'>,
  sources: SceneSources,
): Generator<StereoAudio> {
  const { sampleRateHz } = sources.kit;
  const perFrame = sampleRateHz / film.request.framesPerSecond;
  const end = scene.frames * perFrame;
  const start = scene.leadFrames * perFrame;
  if (start > 0) yield silence(start, sampleRateHz);
  if (scene.shown) {
    const audio = silence(end - start, sampleRateHz);
    for (const sound of soundOver(scene, scene.shown, film, sources)) addInto(audio, sound);
    fade(audio, { at: start, start, end });
    return yield audio;
  }
  let at = start;
  for (const block of played(scene, film, { kit: sources.kit, length: end - start })) {
    fade(block, { at, start, end });
    at += block.left.length;
    yield block;
  }
}

/**
 * A scene's sound block by block, together exactly as long as its frames, as loud as the kit is. What follows the grid is
 * rendered as it is asked for; over a recording it comes as one block, as long as the recording.
 */
export function* renderScene(
  scene: Scene,
  film: Pick<Film, 'request'>,
  sources: SceneSources,
): Generator<StereoAudio> {
  const { sampleRateHz } = sources.kit;
  const perFrame = sampleRateHz / film.request.framesPerSecond;
  if (scene.kind === 'title') return yield silence(scene.frames * perFrame, sampleRateHz);
  const words = wordsIn(scene, scene.leadFrames * perFrame, sources);
  let at = 0;
  for (const block of playedScene(scene, film, sources)) {
    addWords(block, words, at);
    at += block.left.length;
    yield block;
  }
}

/** Sound that is kept somewhere and read again in parts. */
export interface KeptSound {
  readonly samples: number;
  readonly sampleRateHz: Hertz;
  /** Reads the samples from one up to another. */
  read(from: number, to: number): Promise<StereoAudio>;
}

/** How a film's sound is brought to its loudness. */
export interface Mastering {
  /** Of the whole, in dB. */
  readonly gainDb: number;
  /** Highest true peak. */
  readonly ceilingDbtp: FullScaleDb;
}

/** Sound is mastered in parts of so many seconds: whole steps of the loudness meter. */
const PART_SECONDS = 20;
/** So much before and after a part is looked at, so that the limiter comes in and goes out as it would without parts. */
const BEFORE_SECONDS = 1;
const AFTER_SECONDS = 0.05;

/** Where the parts of kept sound begin. */
function partsOf({ samples, sampleRateHz }: KeptSound): readonly number[] {
  const size = PART_SECONDS * sampleRateHz;
  return Array.from({ length: Math.ceil(samples / size) }, (_, part) => part * size);
}

async function masteredPart(kept: KeptSound, from: number, { gainDb, ceilingDbtp }: Mastering) {
  const { samples, sampleRateHz } = kept;
  const to = Math.min(samples, from + PART_SECONDS * sampleRateHz);
  const first = Math.max(0, from - Math.round(BEFORE_SECONDS * sampleRateHz));
  const last = Math.min(samples, to + Math.round(AFTER_SECONDS * sampleRateHz));
  const { left, right } = limitTruePeak(amplify(await kept.read(first, last), gainDb), ceilingDbtp);
  const cut = (channel: Float32Array) => channel.subarray(from - first, to - first);
  return { left: cut(left), right: cut(right), sampleRateHz };
}

/** Kept sound at its loudness, no peak too high, part by part. */
export async function* master(kept: KeptSound, mastering: Mastering): AsyncGenerator<StereoAudio> {
  for (const from of partsOf(kept)) yield masteredPart(kept, from, mastering);
}

/** How loud kept sound is, part by part, its highest sample, and its strokes for {@link mostLoss}. */
async function measureKept(kept: KeptSound, read: (from: number, to: number) => Promise<StereoAudio>) {
  const [steps, strokes]: [Float64Array[], Float64Array[]] = [[], []];
  let peak = 0;
  for (const from of partsOf(kept)) {
    const part = await read(from, Math.min(kept.samples, from + PART_SECONDS * kept.sampleRateHz));
    const powers = strokeSteps(part);
    strokes.push(powers);
    steps.push(tenthsOf(powers));
    peak = Math.max(peak, peakOf(part.left), peakOf(part.right));
  }
  const powers = Float64Array.from(strokes.flatMap((part) => [...part]));
  return { lufs: integrateSteps(steps), peakDb: gainToDb(peak), powers };
}

/** Finds the one gain with which a film is as loud as recordings are, the limiter counted in. */
export async function findMastering(kept: KeptSound, ceilingDbtp: FullScaleDb): Promise<Mastering> {
  const plain = await measureKept(kept, (from, to) => kept.read(from, to));
  if (plain.lufs === Number.NEGATIVE_INFINITY) return { gainDb: 0, ceilingDbtp };
  const search = seekGain({ plainLufs: plain.lufs, peakDb: plain.peakDb }, RECORDING_LUFS, ceilingDbtp);
  for (let step = search.next(); ; ) {
    const gainDb = step.value as number;
    const found = await measureKept(kept, (from) => masteredPart(kept, from, { gainDb, ceilingDbtp }));
    const lossDb = mostLoss(plain.powers, found.powers, gainDb);
    step = search.next({ lufs: found.lufs, lossDb });
    if (step.done) return { gainDb, ceilingDbtp };
  }
}

/**
 * Masters and encodes kept sound. Encoding lets peaks grow: where they grow too high, it is done again with a lower ceiling.
 * @param encode encodes the sound it is given. @returns the true peak of what a player will decode, in dBTP
 * @param tell told the part that is done, 0 to 1
 */
export async function encodeMastered(
  kept: KeptSound,
  encode: (parts: AsyncIterable<StereoAudio>) => Promise<FullScaleDb>,
  tell: (part: number) => void,
): Promise<void> {
  let ceiling = FIRST_CEILING_DBTP;
  for (let round = 1; round <= MOST_TRIES; round += 1) {
    const peak = await encode(master(kept, await findMastering(kept, ceiling)));
    tell(round / MOST_TRIES);
    if (peak <= MOST_DBTP) return;
    ceiling = FullScaleDb(ceiling - (peak - MOST_DBTP) - 0.2);
  }
}
