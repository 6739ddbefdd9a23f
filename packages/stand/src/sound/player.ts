/// <reference types="vite/client" />
/**
 * Playing: the page's side of the sound thread.
 *
 * Conventions: a heard moment is what leaves the loudspeaker now, output latency included.
 */
import { type Bpm, Seconds } from '@shedbook/core';
import type { Program } from '@shedbook/playing';
import { setAudioSession } from '../device/audio-session.ts';
import { inTime } from '../device/in-time.ts';
import { KIT_RATE_HZ, makeKit } from './kit-makers.ts';
import { soundsOf } from './kit-sounds.ts';
import { type Order, PLAYER, type Report } from './messages.ts';
import { OutputClock } from './output-clock.ts';
import workletUrl from './player.worklet.ts?worker&url';
import type { Anchor, GoOnAt, LiveSettings, TakeOver, TimedStroke } from './sequencer.ts';

/** How far playing is; `held` where the device took the sound away, as a call does. */
export type PlayerStatus = 'silent' | 'loading' | 'playing' | 'held' | 'failed';

/** What is heard at a moment. */
export interface Heard {
  readonly program: Program;
  /** Place in the form in whole notes; below 0 in the count-in. */
  readonly place: number;
  /** How many times the form was gone through before. */
  readonly pass: number;
  readonly bpm: Bpm;
  /** When a place of this pass leaves the sound thread, in seconds of the audio context. */
  readonly secondsOf: (place: number) => number;
  /** Where this pass was gone on with, in whole notes; what lies before it is its count-in, or was not heard. */
  readonly fromPlace: number;
}

/** Strokes that were given to the sound thread, for whoever follows along: samples of the audio context. */
export interface StrokesEvent {
  readonly strokes: readonly TimedStroke[];
  /** Samples a second, Hz. */
  readonly sampleRate: number;
  /** The sample that leaves the loudspeaker at this moment. */
  readonly heardSample: () => number;
}

/** Name of the event on `window` that carries a {@link StrokesEvent}. */
export const STROKES_EVENT = 'shedbook:strokes';

interface Told {
  readonly anchor: Anchor;
  readonly program: Program;
}

/** Loudness of the whole: a plain stroke of the kit lies well under full scale. */
const OUTPUT_GAIN = 1.8;

/** Anchors that are remembered: what is heard lies a little behind what is being sequenced. */
const REMEMBERED = 8;

/** After this long without an output or a sound thread, playing says that no sound came, in milliseconds. */
const START_MS = 4000;

/** A player; it makes its sound thread when it is first asked to play. */
export class Player {
  readonly #listeners = new Set<() => void>();
  #status: PlayerStatus = 'silent';
  #context: AudioContext | null = null;
  #output: GainNode | null = null;
  #clock: OutputClock | null = null;
  #node: Promise<AudioWorkletNode> | null = null;
  #kit: readonly MessagePort[] | null = null;
  #told: readonly Told[] = [];
  #held: GoOnAt | null = null;

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  readonly status = (): PlayerStatus => this.#status;

  /** The audio context, made where there is none yet; call it from a press of a key or a finger. */
  context(): AudioContext {
    if (!this.#context) {
      setAudioSession('playback');
      const context = new AudioContext({ latencyHint: 'interactive', sampleRate: KIT_RATE_HZ });
      context.addEventListener('statechange', () => {
        if (context.state !== 'running') this.#hold();
      });
      this.#context = context;
    }
    this.#clock ??= new OutputClock(this.#context);
    return this.#context;
  }

  /** Everything that is played goes through here, on its way to the loudspeaker. */
  output(): AudioNode {
    if (this.#output) return this.#output;
    const context = this.context();
    this.#output = new GainNode(context, { gain: OUTPUT_GAIN });
    this.#output.connect(context.destination);
    return this.#output;
  }

  /** Begins to make the kit, what a program needs first. Nothing is heard yet. */
  prepare(program: Program): void {
    this.#kit ??= makeKit(soundsOf(program)).map(({ sounds }) => sounds);
  }

  /** The device took the sound away: where it was is kept, so that it can go on from that bar. */
  #hold(): void {
    const heard = this.heard();
    if (this.#status !== 'playing') return;
    const bar = heard?.program.bars.findLast((each) => each.place <= heard.place + 1e-9);
    this.#held = { place: bar?.place ?? 0, pass: heard?.pass ?? 0 };
    void this.#node?.then((node) => this.#order(node, { kind: 'stop' }));
    this.#show('held');
  }

  /** Where playing was when the device took the sound away, or null. */
  held(): GoOnAt | null {
    return this.#status === 'held' ? this.#held : null;
  }

  /** Plays a program from its count-in on. @param from where it goes on; the first bar where left out */
  async play(
    program: Program,
    settings: LiveSettings,
    setUp: 'right-handed' | 'left-handed',
    from: GoOnAt = { place: 0, pass: 0 },
  ): Promise<void> {
    this.#show('loading');
    this.prepare(program);
    try {
      const context = this.context();
      // A device without an output leaves this open for ever.
      await inTime(context.resume(), START_MS);
      this.#node ??= this.#open(context);
      const node = await inTime(this.#node, START_MS);
      this.#told = [];
      if (this.#status === 'loading') this.#order(node, { kind: 'start', program, settings, setUp, from });
    } catch {
      this.#node = null;
      this.#show('failed');
    }
  }

  stop(): void {
    void this.#node?.then((node) => this.#order(node, { kind: 'stop' }));
    this.#show('silent');
  }

  change(settings: LiveSettings, when: 'now' | 'next time' = 'now'): void {
    this.#whilePlaying({ kind: 'settings', settings, when });
  }

  replace(program: Program, when: TakeOver): void {
    this.#whilePlaying({ kind: 'program', program, when });
  }

  /** The moment that is heard now, in seconds of the audio context; it never goes back. */
  heardSeconds(): Seconds {
    return Seconds((this.#clock?.sampleAt(performance.now()) ?? 0) / KIT_RATE_HZ);
  }

  /** What is heard now, or null. @param atSeconds a moment not long past, to see what was heard then */
  heard(atSeconds: Seconds = this.heardSeconds()): Heard | null {
    if (this.#status !== 'playing') return null;
    const sample = atSeconds * KIT_RATE_HZ;
    const told = this.#told.findLast((each) => each.anchor.sample <= sample) ?? this.#told[0];
    if (!told) return null;
    const { anchor } = told;
    const place = anchor.place + ((sample - anchor.sample) / KIT_RATE_HZ) * (anchor.bpm / 240);
    const secondsOf = (at: number) => anchor.sample / KIT_RATE_HZ + (at - anchor.place) * (240 / anchor.bpm);
    return {
      program: told.program,
      place,
      pass: anchor.pass,
      bpm: anchor.bpm,
      secondsOf,
      fromPlace: anchor.fromPlace ?? 0,
    };
  }

  #whilePlaying(order: Order): void {
    if (this.#status === 'playing') void this.#node?.then((node) => this.#order(node, order));
  }

  #order(node: AudioWorkletNode, order: Order, transfer: Transferable[] = []): void {
    node.port.postMessage(order, transfer);
  }

  async #open(context: AudioContext): Promise<AudioWorkletNode> {
    await context.audioWorklet.addModule(workletUrl);
    const node = new AudioWorkletNode(context, PLAYER, { numberOfInputs: 0, outputChannelCount: [2] });
    node.connect(this.output());
    node.port.onmessage = ({ data }: MessageEvent<Report>) => this.#hear(data);
    for (const port of this.#kit ?? []) this.#order(node, { kind: 'kit port', port }, [port]);
    return node;
  }

  #hear(report: Report): void {
    if (report.kind === 'anchor') {
      this.#told = [...this.#told, report].slice(-REMEMBERED);
      if (this.#status === 'loading') this.#show('playing');
      return;
    }
    const detail: StrokesEvent = {
      strokes: report.strokes,
      sampleRate: KIT_RATE_HZ,
      heardSample: () => this.heardSeconds() * KIT_RATE_HZ,
    };
    window.dispatchEvent(new CustomEvent(STROKES_EVENT, { detail }));
  }

  #show(status: PlayerStatus): void {
    if (status === this.#status) return;
    this.#status = status;
    for (const listener of this.#listeners) listener();
  }
}
