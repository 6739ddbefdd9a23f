/**
 * The sound of a film through the browser's own encoder, as it will be decoded: where it lies and how high its peaks are.
 *
 * Conventions: stereo; samples of the film's sound from its beginning; a delay above 0 means that it comes late.
 */
import { FullScaleDb } from '@shedbook/core';
import { encodeMastered, type KeptSound } from '@shedbook/film';
import { gainToDb } from '@shedbook/signal';
import { type StereoAudio, truePeakOf } from '@shedbook/sound';
import {
  ALL_FORMATS,
  AudioSample,
  AudioSampleSink,
  AudioSampleSource,
  BufferSource,
  BufferTarget,
  Input,
  Output,
} from 'mediabunny';
import { delayOf } from './delay.ts';
import { containerOf, type FilmKind } from './film-kind.ts';

/** Peaks between two stretches that are measured one by one are seen in both of them, in samples. */
const OVERLAP = 64;
const STRETCH_SECONDS = 5;

function sampleOf({ left, right, sampleRateHz }: StereoAudio, at: number): AudioSample {
  const data = new Float32Array(2 * left.length);
  data.set(left);
  data.set(right, left.length);
  return new AudioSample({
    ...{ data, format: 'f32-planar', numberOfChannels: 2 },
    ...{ sampleRate: sampleRateHz, timestamp: at / sampleRateHz },
  });
}

/** Sound begun so many samples later, which in a film are silent. */
async function* from(parts: AsyncIterable<StereoAudio>, first: number): AsyncGenerator<StereoAudio> {
  let left = first;
  for await (const part of parts) {
    const cut = Math.min(left, part.left.length);
    left -= cut;
    if (cut === 0) yield part;
    else if (cut < part.left.length)
      yield { ...part, left: part.left.subarray(cut), right: part.right.subarray(cut) };
  }
}

/** Encodes sound into a file of its own. */
async function encoded(parts: AsyncIterable<StereoAudio>, kind: FilmKind): Promise<ArrayBuffer> {
  const target = new BufferTarget();
  const output = new Output({ format: containerOf(kind), target });
  const source = new AudioSampleSource(kind.sound);
  output.addAudioTrack(source);
  await output.start();
  let at = 0;
  for await (const part of parts) {
    const sample = sampleOf(part, at);
    at += part.left.length;
    await source.add(sample);
    sample.close();
  }
  await output.finalize();
  return target.buffer as ArrayBuffer;
}

function channelsOf(sample: AudioSample): readonly [Float32Array, Float32Array] {
  const read = (planeIndex: number) => {
    const samples = new Float32Array(sample.numberOfFrames);
    sample.copyTo(samples, { planeIndex, format: 'f32-planar' });
    return samples;
  };
  return [read(0), read(1)];
}

/** What a player will hear of a file, bit by bit; each bit with its first sample. */
async function* decoded(file: ArrayBuffer) {
  const input = new Input({ formats: ALL_FORMATS, source: new BufferSource(file) });
  const track = await input.getPrimaryAudioTrack();
  if (!track) throw new Error('Internal error: sound was encoded into nothing');
  for await (const sample of new AudioSampleSink(track).samples()) {
    const [left, right] = channelsOf(sample);
    yield { at: Math.round(sample.timestamp * sample.sampleRate), left, right, rate: sample.sampleRate };
    sample.close();
  }
}

/** Measures what comes in bits, in stretches that reach over their seams. */
class PeakMeter {
  readonly #rate: number;
  readonly #kept: Float32Array;
  #length = 0;
  peak = 0;

  constructor(rate: number) {
    this.#rate = rate;
    this.#kept = new Float32Array(STRETCH_SECONDS * rate);
  }

  push(samples: Float32Array): void {
    for (const sample of samples) {
      this.#kept[this.#length] = sample;
      this.#length += 1;
      if (this.#length < this.#kept.length) continue;
      this.#measure();
      this.#kept.copyWithin(0, this.#length - OVERLAP);
      this.#length = OVERLAP;
    }
  }

  #measure(): void {
    this.peak = Math.max(this.peak, truePeakOf(this.#kept.subarray(0, this.#length), this.#rate));
  }

  end(): number {
    this.#measure();
    return this.peak;
  }
}

/** The true peak of what a player will decode of a file. */
async function peakOf(file: ArrayBuffer): Promise<FullScaleDb> {
  let meters: readonly [PeakMeter, PeakMeter] | null = null;
  for await (const { left, right, rate } of decoded(file)) {
    meters ??= [new PeakMeter(rate), new PeakMeter(rate)];
    meters[0].push(left);
    meters[1].push(right);
  }
  return FullScaleDb(gainToDb(Math.max(...(meters ?? []).map((meter) => meter.end()))));
}

/** The seconds of a film by which its encoder's delay is found: title card, lead and the first strokes. */
const LISTENED_SECONDS = 12;

/** By how many samples an encoder and its decoder delay what they are given. */
async function encoderDelay(kept: KeptSound, kind: FilmKind): Promise<number> {
  const length = Math.min(kept.samples, LISTENED_SECONDS * kept.sampleRateHz);
  const asked = await kept.read(0, length);
  const only = (async function* () {
    yield asked;
  })();
  const came = new Float32Array(length);
  for await (const { at, left } of decoded(await encoded(only, kind)))
    left.forEach((sample, index) => {
      if (at + index >= 0 && at + index < length) came[at + index] = sample;
    });
  return Math.max(0, delayOf(asked.left, came));
}

/**
 * Encodes kept sound at its loudness; no peak is too high when a player has decoded it, and it lies where it belongs.
 * @param tell told the part that is done, 0 to 1
 * @returns a file of the kind's container
 */
export async function encodeFilmSound(
  kept: KeptSound,
  kind: FilmKind,
  tell: (part: number) => void,
): Promise<ArrayBuffer> {
  const delay = await encoderDelay(kept, kind);
  let file = new ArrayBuffer(0);
  const encode = async (parts: AsyncIterable<StereoAudio>) => {
    file = await encoded(from(parts, delay), kind);
    return peakOf(file);
  };
  await encodeMastered(kept, encode, tell);
  return file;
}
