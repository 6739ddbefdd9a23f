/**
 * The microphone, as it is: nothing taken away, nothing made louder.
 *
 * Conventions: blocks of mono samples with frames of the audio context.
 * Sources: Media Capture and Streams (constraints, names of errors); Web Audio API.
 */

import captureUrl from './capture.worklet.ts?worker&url';
import { CAPTURE, type CapturedBlock, type CaptureOrder } from './capture-messages.ts';

/** Why there is no microphone. */
export type MicrophoneRefusal = 'denied' | 'missing' | 'busy' | 'not here';

/** Thrown when a microphone could not be opened. */
export class MicrophoneError extends Error {
  readonly refusal: MicrophoneRefusal;
  constructor(refusal: MicrophoneRefusal) {
    super(refusal);
    this.refusal = refusal;
  }
}

const REFUSALS: Readonly<Record<string, MicrophoneRefusal>> = {
  NotAllowedError: 'denied',
  SecurityError: 'denied',
  NotFoundError: 'missing',
  OverconstrainedError: 'missing',
  NotReadableError: 'busy',
  AbortError: 'busy',
};

/** What would be done for speech ruins drums: all of it is turned off. */
const CONSTRAINTS: MediaTrackConstraints = {
  echoCancellation: false,
  noiseSuppression: false,
  autoGainControl: false,
};

async function askForStream(): Promise<MediaStream> {
  if (!navigator.mediaDevices?.getUserMedia) throw new MicrophoneError('not here');
  try {
    return await navigator.mediaDevices.getUserMedia({ audio: CONSTRAINTS });
  } catch (error) {
    throw new MicrophoneError(REFUSALS[(error as DOMException).name] ?? 'busy');
  }
}

/** Where the sound of this page comes out, as far as the browser says. */
async function outputLabel(): Promise<string> {
  const devices = (await navigator.mediaDevices?.enumerateDevices?.().catch(() => [])) ?? [];
  return devices.find((device) => device.kind === 'audiooutput')?.label ?? '';
}

const opened = new WeakMap<AudioContext, Promise<void>>();

/** An open microphone. */
export class Microphone {
  readonly #stream: MediaStream;
  readonly #node: AudioWorkletNode;
  /** Name of microphone and output together: the latency belongs to both. */
  readonly device: string;

  private constructor(stream: MediaStream, node: AudioWorkletNode, device: string) {
    this.#stream = stream;
    this.#node = node;
    this.device = device;
  }

  /** Asks for the microphone and opens it. @throws MicrophoneError when there is none. */
  static async open(context: AudioContext): Promise<Microphone> {
    const stream = await askForStream();
    const loading = opened.get(context) ?? context.audioWorklet.addModule(captureUrl);
    opened.set(context, loading);
    await loading;
    const source = new MediaStreamAudioSourceNode(context, { mediaStream: stream });
    const node = new AudioWorkletNode(context, CAPTURE, { numberOfOutputs: 1, outputChannelCount: [1] });
    source
      .connect(node)
      .connect(new GainNode(context, { gain: 0 }))
      .connect(context.destination);
    const input = stream.getAudioTracks()[0]?.label ?? '';
    return new Microphone(stream, node, `${input} > ${await outputLabel()}`);
  }

  #order(order: CaptureOrder, transfer: Transferable[] = []): void {
    this.#node.port.postMessage(order, transfer);
  }

  /** Sends every block to a port from now on. */
  sendTo(port: MessagePort): void {
    this.#order({ kind: 'send to', port }, [port]);
  }

  /** Hands every block to a listener until it is told to stop. @returns how to stop. */
  listen(listener: (block: CapturedBlock) => void): () => void {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data }: MessageEvent<CapturedBlock>) => listener(data);
    this.sendTo(port2);
    return () => port1.close();
  }

  /** Says when the device goes away by itself. */
  onGone(listener: () => void): void {
    this.#stream.getAudioTracks()[0]?.addEventListener('ended', listener);
  }

  /** Lets the microphone go. */
  close(): void {
    this.#order({ kind: 'stop' });
    this.#node.disconnect();
    for (const track of this.#stream.getTracks()) track.stop();
  }
}
