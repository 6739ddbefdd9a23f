/**
 * The capture thread: what the microphone hears, in short blocks, each with its place on the clock of the sound and with
 * what the page played meanwhile, where that runs in the same context.
 */
import { CAPTURE, type CapturedBlock, type CaptureOrder } from './capture-messages.ts';

declare const currentFrame: number;
declare class AudioWorkletProcessor {
  readonly port: MessagePort;
}
declare function registerProcessor(
  name: string,
  processor: new (options: AudioWorkletNodeOptions) => AudioWorkletProcessor,
): void;

/** Frames in a block: 128 are about 3 ms. */
const BLOCK = 128;

/** A clock that lies this far back was read wrongly for long enough to be believed. */
const FAR_FRAMES = 48_000;

/** Both channels as one; silence where there is none. */
function middleOf(channels: readonly Float32Array[], index: number): number {
  let sum = 0;
  for (const channel of channels) sum += channel[index] as number;
  return sum / Math.max(1, channels.length);
}

class Capture extends AudioWorkletProcessor {
  readonly #ports: MessagePort[] = [];
  #block = new Float32Array(BLOCK);
  #played = new Float32Array(BLOCK);
  /** Whether what the page plays comes to the second input. */
  readonly #isBeside: boolean;
  #filled = 0;
  /** Frame of the next sample: counted, because a browser now and then says a frame that is a little old. */
  #frame = 0;
  #stopped = false;
  #offset = 0;

  constructor(options: AudioWorkletNodeOptions) {
    super();
    this.#isBeside = options.numberOfInputs === 2;
    this.port.onmessage = ({ data }: MessageEvent<CaptureOrder>) => {
      if (data.kind === 'send to') this.#ports.push(data.port);
      else if (data.kind === 'clock') this.#offset = data.frameOffset;
      else this.#stopped = true;
    };
  }

  /** Counts on; a clock that is ahead means that blocks were lost. */
  #keepCount(): void {
    const behind = currentFrame - this.#frame;
    if (behind <= 0 && behind > -FAR_FRAMES) return;
    this.#frame = currentFrame;
    this.#filled = 0;
  }

  #take(channels: readonly Float32Array[], played: readonly Float32Array[], index: number): void {
    this.#block[this.#filled] = middleOf(channels, index);
    this.#played[this.#filled] = middleOf(played, index);
    this.#filled += 1;
    this.#frame += 1;
    if (this.#filled === BLOCK) this.#send();
  }

  #send(): void {
    const own = { frame: this.#frame - BLOCK + this.#offset, samples: this.#block };
    const block: CapturedBlock = this.#isBeside ? { ...own, played: this.#played } : own;
    for (const port of this.#ports) port.postMessage(block);
    this.#block = new Float32Array(BLOCK);
    this.#played = new Float32Array(BLOCK);
    this.#filled = 0;
  }

  process([input = [], played = []]: readonly (readonly Float32Array[])[]): boolean {
    const length = input[0]?.length ?? 0;
    if (length > 0) this.#keepCount();
    for (let index = 0; index < length; index += 1) this.#take(input, played, index);
    return !this.#stopped;
  }
}

registerProcessor(CAPTURE, Capture);
