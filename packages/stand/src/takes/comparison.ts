/**
 * A take beside its model: both run, in step, and one or the other is heard.
 *
 * Conventions: seconds from the first sample of the model; the take is moved forward by its latency.
 */
import { soundOf } from '@shedbook/sound';
import { keptSounds } from '../sound/kit-makers.ts';
import { KIT_RATE_HZ } from '../sound/messages.ts';
import { matchingGain } from './model.ts';
import type { Rendered, RenderRequest } from './model.worker.ts';

/** What is to be rendered, on the kit that the player plays on. */
type StrokesToRender = Omit<RenderRequest, 'sampleRateHz' | 'sounds'>;

/** What can be heard. */
export const SIDES = ['take', 'model', 'both'] as const;

/** What is heard. */
export type Side = (typeof SIDES)[number];

/** Gains of the two for each choice. */
const GAINS: Readonly<Record<Side, { readonly take: number; readonly model: number }>> = {
  take: { take: 1, model: 0 },
  model: { take: 0, model: 1 },
  both: { take: 0.7, model: 0.7 },
};

/** Going from one to the other, in seconds: short enough for a beat, long enough not to click. */
const FADE_SECONDS = 0.02;

/** From the order to play to the first sound. */
const START_SECONDS = 0.05;

/** Renders strokes in a worker. */
export async function renderStrokes(strokes: StrokesToRender): Promise<AudioBuffer> {
  const sounds = await keptSounds([...new Set(strokes.strokes.map(soundOf))]);
  const request: RenderRequest = { ...strokes, sampleRateHz: KIT_RATE_HZ, sounds };
  const worker = new Worker(new URL('./model.worker.ts', import.meta.url), { type: 'module' });
  return new Promise((resolve, reject) => {
    worker.onerror = () => reject(new Error('Internal error: the model could not be rendered'));
    worker.onmessage = ({ data: { left, right } }: MessageEvent<Rendered>) => {
      const length = Math.max(1, left.length);
      const buffer = new AudioBuffer({ length, numberOfChannels: 2, sampleRate: KIT_RATE_HZ });
      buffer.copyToChannel(left, 0);
      buffer.copyToChannel(right, 1);
      resolve(buffer);
    };
    worker.postMessage(request);
  });
}

interface Track {
  readonly buffer: AudioBuffer;
  readonly gain: GainNode;
  /** Where in the buffer the common start lies, in seconds. */
  readonly offset: number;
}

/** Plays both sides. */
export class Comparison {
  readonly #context: AudioContext;
  readonly #take: Track;
  readonly #model: Track;
  readonly #takeGain: number;
  #sources: readonly AudioBufferSourceNode[] = [];
  #startedAt = 0;
  #side: Side = 'take';

  constructor(context: AudioContext, take: AudioBuffer, model: AudioBuffer, latencySeconds: number) {
    this.#context = context;
    const track = (buffer: AudioBuffer, offset: number): Track => {
      const gain = new GainNode(context, { gain: 0 });
      gain.connect(context.destination);
      return { buffer, gain, offset };
    };
    this.#take = track(take, latencySeconds);
    this.#model = track(model, 0);
    this.#takeGain = matchingGain(take.getChannelData(0), model.getChannelData(0));
  }

  get isPlaying(): boolean {
    return this.#sources.length > 0;
  }

  /** Seconds that are common to both. */
  get durationSeconds(): number {
    return Math.min(this.#take.buffer.duration - this.#take.offset, this.#model.buffer.duration);
  }

  /** Where it is, in seconds. */
  get positionSeconds(): number {
    if (!this.isPlaying) return 0;
    return Math.min(this.durationSeconds, Math.max(0, this.#context.currentTime - this.#startedAt));
  }

  /** Plays from the start. @param onEnd called when it has come to its end by itself */
  play(onEnd: () => void): void {
    this.stop();
    this.#startedAt = this.#context.currentTime + START_SECONDS;
    this.#sources = [this.#take, this.#model].map(({ buffer, gain, offset }) => {
      const source = new AudioBufferSourceNode(this.#context, { buffer });
      source.connect(gain);
      source.start(this.#startedAt, Math.max(0, offset), this.durationSeconds);
      return source;
    });
    const [first] = this.#sources;
    if (first) {
      first.onended = () => {
        if (this.#sources[0] !== first) return;
        this.#sources = [];
        onEnd();
      };
    }
    this.hear(this.#side);
  }

  /** Chooses what is heard, also while it plays. */
  hear(side: Side): void {
    this.#side = side;
    const now = this.#context.currentTime;
    for (const which of ['take', 'model'] as const) {
      const { gain } = which === 'take' ? this.#take : this.#model;
      const full = which === 'take' ? this.#takeGain : 1;
      gain.gain.setTargetAtTime(full * GAINS[side][which], now, FADE_SECONDS / 3);
    }
  }

  stop(): void {
    const sources = this.#sources;
    this.#sources = [];
    for (const source of sources) source.stop();
  }
}
