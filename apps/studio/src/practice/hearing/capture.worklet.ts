/** The capture thread: what the microphone hears, in short blocks, each with its place on the clock of the sound. */
import { CAPTURE, type CapturedBlock, type CaptureOrder } from './capture-messages.ts';

declare const currentFrame: number;
declare class AudioWorkletProcessor {
  readonly port: MessagePort;
}
declare function registerProcessor(name: string, processor: typeof AudioWorkletProcessor): void;

/** Frames in a block: 256 are about 6 ms. */
const BLOCK = 256;

class Capture extends AudioWorkletProcessor {
  readonly #ports: MessagePort[] = [];
  #block = new Float32Array(BLOCK);
  #filled = 0;
  #start = 0;
  #stopped = false;

  constructor() {
    super();
    this.port.onmessage = ({ data }: MessageEvent<CaptureOrder>) => {
      if (data.kind === 'send to') this.#ports.push(data.port);
      else this.#stopped = true;
    };
  }

  #take(channels: readonly Float32Array[], index: number): void {
    let sum = 0;
    for (const channel of channels) sum += channel[index] as number;
    if (this.#filled === 0) this.#start = currentFrame + index;
    this.#block[this.#filled] = sum / channels.length;
    this.#filled += 1;
    if (this.#filled === BLOCK) this.#send();
  }

  #send(): void {
    const block: CapturedBlock = { frame: this.#start, samples: this.#block };
    for (const port of this.#ports) port.postMessage(block);
    this.#block = new Float32Array(BLOCK);
    this.#filled = 0;
  }

  process([input = []]: readonly (readonly Float32Array[])[]): boolean {
    const length = input[0]?.length ?? 0;
    for (let index = 0; index < length; index += 1) this.#take(input, index);
    return !this.#stopped;
  }
}

registerProcessor(CAPTURE, Capture);
