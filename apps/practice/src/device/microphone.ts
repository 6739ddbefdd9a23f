/**
 * The microphone, as it is: nothing taken away, nothing made louder.
 *
 * Conventions: blocks of mono samples with frames of the audio context.
 * Sources: Media Capture and Streams (constraints, names of errors); Web Audio API.
 */

import { doneToTrack, isTouched, setAudioSession, UNTOUCHED } from '@shedbook/stand';
import captureUrl from './capture.worklet.ts?worker&url';
import { CAPTURE, type CapturedBlock, type CaptureOrder } from './capture-messages.ts';
import { ClockDifference } from './clock-difference.ts';
import { isMicrophoneForbidden } from './microphone-forbidden.ts';

/** Why there is no microphone. */
export type MicrophoneRefusal = 'denied' | 'missing' | 'busy' | 'not here' | 'no consent';

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

async function askForStream(): Promise<MediaStream> {
  // a minor is not recorded before a guardian has consented: the microphone stays closed, also for listening alone
  if (isMicrophoneForbidden()) throw new MicrophoneError('no consent');
  if (!navigator.mediaDevices?.getUserMedia) throw new MicrophoneError('not here');
  setAudioSession('play-and-record');
  try {
    return await navigator.mediaDevices.getUserMedia({ audio: UNTOUCHED });
  } catch (error) {
    setAudioSession('playback');
    throw new MicrophoneError(REFUSALS[(error as DOMException).name] ?? 'busy');
  }
}

/** Where the sound of this page comes out, as far as the browser says. */
async function outputDevice(): Promise<MediaDeviceInfo | null> {
  const devices = (await navigator.mediaDevices?.enumerateDevices?.().catch(() => [])) ?? [];
  return devices.find((device) => device.kind === 'audiooutput') ?? null;
}

/** What a take may suffer from: a device that changes the sound for speech, or sound and microphone on two devices. */
export type MicrophoneCaution = 'changed' | 'two devices';

/**
 * What there is to say of a track. Each device has a clock and a delay of its own.
 * Source: Media Capture and Streams: what belongs to one device has one `groupId`.
 */
function cautionOf(
  track: MediaStreamTrack | undefined,
  output: MediaDeviceInfo | null,
): MicrophoneCaution | null {
  if (!track) return null;
  if (isTouched(doneToTrack(track))) return 'changed';
  const { groupId } = track.getSettings();
  return groupId && output?.groupId && groupId !== output.groupId ? 'two devices' : null;
}

const opened = new WeakMap<AudioContext, Promise<void>>();

function loadCapture(context: AudioContext): Promise<void> {
  const loading = opened.get(context) ?? context.audioWorklet.addModule(captureUrl);
  opened.set(context, loading);
  return loading;
}

/** Lets a stream go: the device's light goes out. */
function release(stream: MediaStream): void {
  setAudioSession('playback');
  for (const track of stream.getTracks()) track.stop();
}

/** Some browsers take a stream only at its own rate: then it has a context of its own beside the one that plays. */
async function sourceOf(stream: MediaStream, playing: AudioContext): Promise<MediaStreamAudioSourceNode> {
  try {
    return new MediaStreamAudioSourceNode(playing, { mediaStream: stream });
  } catch {
    const own = new AudioContext({ latencyHint: 'interactive' });
    await own.resume();
    return new MediaStreamAudioSourceNode(own, { mediaStream: stream });
  }
}

/** What plays meanwhile: the context, and where all of it goes through. */
interface Beside {
  readonly playing: AudioContext;
  readonly output: AudioNode;
}

/** An open microphone. */
export class Microphone {
  readonly #stream: MediaStream;
  readonly #node: AudioWorkletNode;
  readonly #clocks: ClockDifference | null;
  /** Where what the page plays is taken from, where the microphone is in its context. */
  readonly #output: AudioNode | null;
  /** Name of microphone and output together: the latency belongs to both. */
  readonly device: string;
  readonly caution: MicrophoneCaution | null;
  /** Samples a second of the blocks. */
  readonly rateHz: number;

  private constructor(
    stream: MediaStream,
    node: AudioWorkletNode,
    beside: Beside,
    outputDevice: MediaDeviceInfo | null,
  ) {
    const { playing, output } = beside;
    this.#stream = stream;
    this.#node = node;
    const [track] = stream.getAudioTracks();
    this.device = `${track?.label ?? ''} > ${outputDevice?.label ?? ''}`;
    this.caution = cautionOf(track, outputDevice);
    this.rateHz = node.context.sampleRate;
    const own = node.context as AudioContext;
    const tell = (seconds: number) =>
      this.#order({ kind: 'clock', frameOffset: Math.round(seconds * this.rateHz) });
    this.#clocks = own === playing ? null : new ClockDifference(playing, own, tell);
    this.#output = own === playing ? output : null;
    this.#output?.connect(node, 0, 1);
  }

  /**
   * Asks for the microphone and opens it.
   * @param playing the context that plays: frames of blocks are on its clock
   * @param output what the page plays goes through here; blocks say what it was, where the microphone is in the same context
   * @throws MicrophoneError when there is none.
   */
  static async open(playing: AudioContext, output: AudioNode): Promise<Microphone> {
    const stream = await askForStream();
    try {
      return await Microphone.#openStream(stream, playing, output);
    } catch {
      release(stream);
      throw new MicrophoneError('not here');
    }
  }

  static async #openStream(
    stream: MediaStream,
    playing: AudioContext,
    output: AudioNode,
  ): Promise<Microphone> {
    const source = await sourceOf(stream, playing);
    const context = source.context as AudioContext;
    await loadCapture(context);
    const numberOfInputs = context === playing ? 2 : 1;
    const node = new AudioWorkletNode(context, CAPTURE, { numberOfInputs, outputChannelCount: [1] });
    source
      .connect(node)
      .connect(new GainNode(context, { gain: 0 }))
      .connect(context.destination);
    const microphone = new Microphone(stream, node, { playing, output }, await outputDevice());
    await microphone.#clocks?.known;
    return microphone;
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
    this.#output?.disconnect(this.#node);
    this.#node.disconnect();
    release(this.#stream);
    if (!this.#clocks) return;
    this.#clocks.stop();
    void (this.#node.context as AudioContext).close();
  }
}
