/**
 * Sound without a thread: the page reads the program out itself, a little ahead, and hands every stroke to the browser
 * as a buffer with a moment. Strokes sound alone: no room, and nothing rings into anything else.
 *
 * Conventions: samples from the start of the audio context, at the rate of the kit.
 * Source: Web Audio API, `AudioBufferSourceNode.start(when)`.
 */
import { Hertz, LeadDb, Seconds, type SetUp } from '@shedbook/core';
import { type Kit, render, type SoundName, soundOf } from '@shedbook/sound';
import { ALL_SOUNDS, KIT_RATE_HZ, KIT_SEED, type KitMessage, type KitSound, type Order } from './messages.ts';
import { type Anchor, Sequencer, type TimedStroke } from './sequencer.ts';
import type { MakerOptions, SoundMaker } from './sound-maker.ts';
import { standIns } from './stand-ins.ts';

/** Strokes are handed over so far ahead of their time, in seconds: a page may be held up for as long. */
const AHEAD_SECONDS = 0.4;
/** Milliseconds from one look to the next. */
const LOOK_MS = 60;
/** From the order to play to the first stroke, in seconds. */
const START_SECONDS = 0.1;

/** Strokes with graces of their own are told apart from plain ones, levels by whole decibels, and what is held by its length. */
function keyOf({ stroke }: TimedStroke): string {
  return `${soundOf(stroke)} ${stroke.mark} ${Math.round(stroke.levelDb)} ${stroke.heldSeconds ?? ''}`;
}

/** A kit of the small sounds. */
function smallKit(sounds: readonly KitSound[]): Kit {
  const byName = new Map(sounds.map((each) => [each.name, each.sound]));
  const sound = (name: SoundName) => {
    const found = byName.get(name);
    if (!found) throw new RangeError(`Internal error: the small kit has no ${name}`);
    return found;
  };
  return { sampleRateHz: Hertz(KIT_RATE_HZ), seed: KIT_SEED, sound, prepare: () => undefined };
}

/** Graces lie before their stroke: a stroke is rendered so far from the start of its buffer, in seconds. */
const GRACE_SECONDS = 0.1;

/** Makes a buffer of each stroke, once for those that are alike. */
function createPress(context: AudioContext, setUp: SetUp) {
  const kit = smallKit(standIns());
  const made = new Map<string, AudioBuffer>();
  return (timed: TimedStroke): AudioBuffer => {
    const known = made.get(keyOf(timed));
    if (known) return known;
    const levelDb = LeadDb(Math.round(timed.stroke.levelDb));
    const stroke = { ...timed.stroke, levelDb, timeSeconds: Seconds(GRACE_SECONDS) };
    const performance = { strokes: [stroke], durationSeconds: Seconds(GRACE_SECONDS) };
    const { left, right } = render(performance, { kit, setUp, room: false });
    const buffer = new AudioBuffer({
      numberOfChannels: 2,
      length: left.length,
      sampleRate: context.sampleRate,
    });
    buffer.copyToChannel(new Float32Array(left), 0);
    buffer.copyToChannel(new Float32Array(right), 1);
    made.set(keyOf(timed), buffer);
    return buffer;
  };
}

/** Sounds a program on the page. */
class Buffers implements SoundMaker {
  readonly #options: MakerOptions;
  readonly #sounding = new Set<AudioBufferSourceNode>();
  #press: ((timed: TimedStroke) => AudioBuffer) | null = null;
  #sequencer: Sequencer | null = null;
  #told: Anchor | null = null;
  #looks: ReturnType<typeof setInterval> | undefined;

  constructor(options: MakerOptions) {
    this.#options = options;
  }

  /** Lets whoever makes the kit end: it is not played here. */
  readonly takeKit = (port: MessagePort): void => {
    port.onmessage = ({ data }: MessageEvent<KitMessage>) => {
      if (data !== ALL_SOUNDS) return;
      port.postMessage(ALL_SOUNDS);
      port.close();
    };
  };

  readonly order = (order: Order): void => {
    if (order.kind === 'start') this.#start(order);
    else if (order.kind === 'settings') this.#sequencer?.change(order.settings, order.when);
    else if (order.kind === 'program') this.#sequencer?.replace(order.program, order.when);
    else if (order.kind === 'stop') this.#stop();
  };

  #start({ program, settings, setUp, from }: Extract<Order, { kind: 'start' }>): void {
    this.#stop();
    const { context } = this.#options;
    this.#press = createPress(context, setUp);
    const first = Math.round((context.currentTime + START_SECONDS) * KIT_RATE_HZ);
    this.#sequencer = new Sequencer(program, settings, KIT_RATE_HZ, first, from);
    this.#told = null;
    this.#look();
    this.#looks = setInterval(() => this.#look(), LOOK_MS);
  }

  #stop(): void {
    clearInterval(this.#looks);
    this.#sequencer = null;
    for (const node of this.#sounding) node.stop();
    this.#sounding.clear();
  }

  #look(): void {
    const sequencer = this.#sequencer;
    if (!sequencer) return;
    const { context, onReport } = this.#options;
    const strokes = sequencer.until(Math.round((context.currentTime + AHEAD_SECONDS) * KIT_RATE_HZ));
    for (const each of strokes) this.#sound(each);
    if (strokes.length > 0) onReport({ kind: 'strokes', strokes });
    if (this.#told === sequencer.anchor) return;
    this.#told = sequencer.anchor;
    onReport({ kind: 'anchor', anchor: sequencer.anchor, program: sequencer.program });
  }

  #sound(timed: TimedStroke): void {
    if (!this.#press) return;
    const { context, output } = this.#options;
    const node = new AudioBufferSourceNode(context, { buffer: this.#press(timed) });
    const when = timed.sample / KIT_RATE_HZ - GRACE_SECONDS;
    const late = Math.max(0, context.currentTime - when);
    node.connect(output);
    node.onended = () => this.#sounding.delete(node);
    // What should have begun already is gone into at its place.
    node.start(Math.max(when, context.currentTime), Math.min(late, GRACE_SECONDS));
    this.#sounding.add(node);
  }
}

/** @returns the page as a sound maker */
export function createBuffers(options: MakerOptions): SoundMaker {
  return new Buffers(options);
}
