/** The sound thread: a sequencer reads strokes out, a renderer sounds them, block by block. */
import { goesOn, Hertz, Samples, samplesToSeconds, VOICE_FACTS, VOICES } from '@shedbook/core';
import { createRenderer, type Kit, type Renderer, type SoundName, soundsOfStroke } from '@shedbook/sound';
import { soundsOf } from './kit-sounds.ts';
import {
  ALL_SOUNDS,
  KIT_SEED,
  type KitMessage,
  type KitSound,
  type Order,
  PLAYER,
  type Report,
} from './messages.ts';
import { rehearsalOf } from './rehearsal.ts';
import { type Anchor, Sequencer } from './sequencer.ts';

declare const currentFrame: number;
declare const sampleRate: number;
declare class AudioWorkletProcessor {
  readonly port: MessagePort;
}
declare function registerProcessor(name: string, processor: typeof AudioWorkletProcessor): void;

/** Strokes are given to the renderer so far ahead of their time: the graces of a drag lie before its stroke. */
const AHEAD_SECONDS = 0.1;

/** From the order to play to the first stroke. */
const START_SECONDS = 0.15;

/** Samples of a block, where none is asked for. */
const BLOCK = 128;

type StartOrder = Extract<Order, { kind: 'start' }>;
type RehearseOrder = Extract<Order, { kind: 'rehearse' }>;

class Player extends AudioWorkletProcessor {
  readonly #sounds = new Map<SoundName, KitSound['sound']>();
  #renderer: Renderer | null = null;
  /** Frame of the context at which the renderer's sample 0 lies. */
  #origin = 0;
  #sequencer: Sequencer | null = null;
  #told: Anchor | null = null;
  /** An order to play that waits for its sounds. */
  #waiting: StartOrder | null = null;
  /** What is to be rehearsed once its sounds are there. */
  #toRehearse: RehearseOrder | null = null;
  #rehearsal: ReturnType<typeof rehearsalOf> | null = null;

  constructor() {
    super();
    this.port.onmessage = ({ data }: MessageEvent<Order>) => this.#obey(data);
  }

  #report(report: Report): void {
    this.port.postMessage(report);
  }

  #obey(order: Order): void {
    if (order.kind === 'kit port')
      order.port.onmessage = ({ data }: MessageEvent<KitMessage>) => {
        if (data === ALL_SOUNDS) order.port.postMessage(ALL_SOUNDS);
        else this.#receive(data);
      };
    else if (order.kind === 'start') this.#startWhenReady(order);
    else if (order.kind === 'stand-ins') this.#standIn(order.sounds);
    else if (order.kind === 'rehearse') this.#rehearseWhenReady(order);
    else if (order.kind === 'settings') this.#sequencer?.change(order.settings, order.when);
    else if (order.kind === 'program') this.#sequencer?.replace(order.program, order.when);
    else this.#stop();
  }

  #receive({ name, sound }: KitSound): void {
    this.#sounds.set(name, sound);
    if (this.#waiting) this.#startWhenReady(this.#waiting);
    else if (this.#toRehearse) this.#rehearseWhenReady(this.#toRehearse);
  }

  #rehearseWhenReady(order: RehearseOrder): void {
    this.#toRehearse = this.#isReadyFor(order) ? null : order;
    if (this.#toRehearse || this.#renderer) return;
    const rehearsal = rehearsalOf(order.program, this.#kit());
    if (!order.atOnce) this.#rehearsal = rehearsal;
    else while (!rehearsal(BLOCK));
  }

  #isReadyFor({ program }: StartOrder | RehearseOrder): boolean {
    return soundsOf(program).every((name) => this.#sounds.has(name));
  }

  #standIn(sounds: readonly KitSound[]): void {
    for (const { name, sound } of sounds) if (!this.#sounds.has(name)) this.#sounds.set(name, sound);
    if (this.#waiting) this.#startWhenReady(this.#waiting);
  }

  #kit(): Kit {
    const sound = (name: SoundName) => {
      const found = this.#sounds.get(name);
      if (!found) throw new RangeError(`Internal error: the kit has no ${name} yet`);
      return found;
    };
    return { sampleRateHz: Hertz(sampleRate), seed: KIT_SEED, sound, prepare: () => undefined };
  }

  #startWhenReady(order: StartOrder): void {
    const ready = this.#isReadyFor(order);
    this.#waiting = ready ? null : order;
    if (ready) this.#start(order);
    else this.#report({ kind: 'waiting' });
  }

  #start({ program, settings, setUp, from, room = true }: StartOrder): void {
    this.#toRehearse = null;
    this.#rehearsal = null;
    this.#renderer = createRenderer({ kit: this.#kit(), setUp, room });
    this.#origin = currentFrame;
    const start = currentFrame + Math.round(START_SECONDS * sampleRate);
    this.#sequencer = new Sequencer(program, settings, sampleRate, start, from);
    this.#told = null;
  }

  #stop(): void {
    this.#sequencer = null;
    this.#waiting = null;
    const now = samplesToSeconds(this.#renderer?.position() ?? Samples(0), Hertz(sampleRate));
    // What is held was given out to its end.
    const ringing = VOICES.filter((voice) => VOICE_FACTS[voice].rings || goesOn(voice, 'b'));
    for (const voice of ringing) this.#renderer?.choke(voice, now);
  }

  #sequence(sequencer: Sequencer, renderer: Renderer, frames: number): void {
    const ahead = Math.round(AHEAD_SECONDS * sampleRate);
    const strokes = sequencer.until(currentFrame + frames + ahead);
    if (strokes.length > 0) {
      const ready = strokes.filter(({ stroke }) =>
        soundsOfStroke(stroke).every((name) => this.#sounds.has(name)),
      );
      renderer.schedule(
        ready.map(({ sample, stroke }) => ({
          ...stroke,
          timeSeconds: samplesToSeconds(Samples(sample - this.#origin), Hertz(sampleRate)),
        })),
      );
      this.#report({ kind: 'strokes', strokes });
    }
    if (this.#told !== sequencer.anchor) {
      this.#told = sequencer.anchor;
      this.#report({ kind: 'anchor', anchor: sequencer.anchor, program: sequencer.program });
    }
  }

  /** Blocks that the browser leaves out, as it may while it sets up, sound for nobody: what follows is in time. */
  #catchUp(renderer: Renderer, left: Float32Array, right: Float32Array): void {
    while (this.#origin + renderer.position() < currentFrame) renderer.render(left, right, left.length);
  }

  process(_inputs: unknown, [output]: readonly (readonly Float32Array[])[]): boolean {
    const [left, right] = output ?? [];
    const renderer = this.#renderer;
    if (left && this.#rehearsal?.(left.length)) this.#rehearsal = null;
    if (!left || !right || !renderer) return true;
    if (this.#sequencer) this.#sequence(this.#sequencer, renderer, left.length);
    this.#catchUp(renderer, left, right);
    renderer.render(left, right, left.length);
    return true;
  }
}

registerProcessor(PLAYER, Player);
