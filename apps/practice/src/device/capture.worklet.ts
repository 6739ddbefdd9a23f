/** The capture thread: what the microphone hears, in short blocks, each with its place on the clock of the sound. */
import { CAPTURE, type CapturedBlock, type CaptureOrder } from './capture-messages.ts';

declare const currentFrame: number;
declare class AudioWorkletProcessor {
  readonly port: MessagePort;
}
declare function registerProcessor(name: string, processor: typeof AudioWorkletProcessor): void;

/** Frames in a block: 128 are about 3 ms. */
const BLOCK = 128;

/** A clock that lies this far back was read wrongly for long enough to be believed. */
const FAR_FRAMES = 48_000;

class Capture extends AudioWorkletProcessor {
  readonly #ports: MessagePort[] = [];
  #block = new Float32Array(BLOCK);
  #filled = 0;
  /** Frame of the next sample: counted, because a browser now and then says a frame that is a little old. */
  #frame = 0;
  #stopped = false;
  #offset = 0;

  constructor() {
    super();
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

  #take(channels: readonly Float32Array[], index: number): void {
    let sum = 0;
    for (const channel of channels) sum += channel[index] as number;
    this.#block[this.#filled] = sum / channels.length;
    this.#filled += 1;
    this.#frame += 1;
    if (this.#filled === BLOCK) this.#send();
  }

  #send(): void {
    const block: CapturedBlock = { frame: this.#frame - BLOCK + this.#offset, samples: this.#block };
    for (const port of this.#ports) port.postMessage(block);
    this.#block = new Float32Array(BLOCK);
    this.#filled = 0;
  }

  process([input = []]: readonly (readonly Float32Array[])[]): boolean {
    const length = input[0]?.length ?? 0;
    if (length > 0) this.#keepCount();
    for (let index = 0; index < length; index += 1) this.#take(input, index);
    return !this.#stopped;
  }
}

registerProcessor(CAPTURE, Capture);
