/// <reference types="vite/client" />
/**
 * Playing: the page's side of the sound thread.
 *
 * Conventions: a heard moment is what leaves the loudspeaker now, output latency included.
 */
import { type Bpm, Seconds } from '@shedbook/core';
import type { Program } from '@shedbook/playing';
import { hasAudioSession, setAudioSession } from '../device/audio-session.ts';
import { inTime } from '../device/in-time.ts';
import { makeKit } from './kit-makers.ts';
import { soundsOf } from './kit-sounds.ts';
import { KIT_RATE_HZ, type Order, type Report } from './messages.ts';
import { makeStandIns, openBuffers, openThread } from './open-maker.ts';
import { OutputClock } from './output-clock.ts';
import type { Anchor, GoOnAt, LiveSettings, TakeOver, TimedStroke } from './sequencer.ts';
import type { SoundMaker } from './sound-maker.ts';
import { AGAIN_MS, type Lack, nextWay, START_MS, type Way } from './start-ways.ts';

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

/** Milliseconds after which what was opened ahead rests again, where nobody played. */
const REST_MS = 120_000;

/** Anchors that are remembered: what is heard lies a little behind what is being sequenced. */
const REMEMBERED = 8;

type StartOrder = Extract<Order, { kind: 'start' }>;

/** Thrown where something did not come in time. */
class LackError extends Error {
  readonly lack: Lack;
  constructor(lack: Lack) {
    super(lack);
    this.lack = lack;
  }
}

/** What a promise gives until a moment. @throws LackError that names what did not come */
function until<T>(promise: Promise<T>, atMs: number, lack: Lack): Promise<T> {
  return inTime(promise, Math.max(0, atMs - Date.now())).catch(() => {
    throw new LackError(lack);
  });
}

/** A player; it makes its sound thread when it is first asked to play. */
export class Player {
  readonly #listeners = new Set<() => void>();
  #status: PlayerStatus = 'silent';
  #context: AudioContext | null = null;
  #output: GainNode | null = null;
  #clock: OutputClock | null = null;
  #maker: Promise<SoundMaker> | null = null;
  #kit: readonly MessagePort[] | null = null;
  #told: readonly Told[] = [];
  #held: GoOnAt | null = null;
  #way: Way = 'whole';
  #lack: Lack | null = null;
  /** Goes up with every start and stop: what was begun before is nobody's any more. */
  #turn = 0;
  /** Whether the order to play waits for sounds of the kit. */
  #isWaiting = false;
  #onFirst: () => void = () => undefined;
  /** What the kit was begun for. */
  #prepared: Program | null = null;
  /** Whether anything was played or heard: what was only opened ahead rests again. */
  #isUsed = false;
  #rest: ReturnType<typeof setTimeout> | undefined;

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  readonly status = (): PlayerStatus => this.#status;

  /** How it sounds, or tries to. */
  readonly way = (): Way => this.#way;

  /** What was lacking where it failed, or had to go on by a lesser way; null where nothing was. */
  readonly lack = (): Lack | null => this.#lack;

  /** The audio context, made where there is none yet; call it from a press of a key or a finger. */
  context(): AudioContext {
    this.#isUsed = true;
    clearTimeout(this.#rest);
    return this.#ownContext();
  }

  #ownContext(): AudioContext {
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
    this.context();
    return this.#ownOutput();
  }

  #ownOutput(): AudioNode {
    if (this.#output) return this.#output;
    const context = this.#ownContext();
    this.#output = new GainNode(context, { gain: OUTPUT_GAIN });
    this.#output.connect(context.destination);
    return this.#output;
  }

  /** Begins to make the kit, what a program needs first. Nothing is heard yet. */
  prepare(program: Program): void {
    if (this.#kit) return;
    this.#prepared = program;
    this.#kit = makeKit(soundsOf(program)).map(({ sounds }) => sounds);
    void this.#maker?.then((maker) => this.#handOver(maker));
  }

  /**
   * Opens what sounds, so that a press of Play finds it there. Call it once the page rests, and from every press of a key
   * or a finger, before which many browsers let nothing run.
   */
  warm(): void {
    if (this.#isUsed) return;
    const isNew = this.#context === null;
    const context = this.#ownContext();
    // Whatever is wrong is said when somebody wants to hear something.
    if (isNew) this.#open().catch(() => undefined);
    if (!hasAudioSession()) this.#runAhead(context);
    // Where the page's sound takes the place of the device's own, that goes on until somebody plays.
    else if (isNew) void context.suspend();
  }

  /** Lets the loudspeaker run, which takes long to begin, and rest again where nobody uses it. */
  #runAhead(context: AudioContext): void {
    if (context.state !== 'running') context.resume().catch(() => undefined);
    clearTimeout(this.#rest);
    this.#rest = setTimeout(() => void context.suspend(), REST_MS);
  }

  /** The device took the sound away: where it was is kept, so that it can go on from that bar. */
  #hold(): void {
    const heard = this.heard();
    if (this.#status !== 'playing') return;
    const bar = heard?.program.bars.findLast((each) => each.place <= heard.place + 1e-9);
    this.#held = { place: bar?.place ?? 0, pass: heard?.pass ?? 0 };
    this.#order({ kind: 'stop' });
    this.#show('held');
  }

  /** Where playing was when the device took the sound away, or null. */
  held(): GoOnAt | null {
    return this.#status === 'held' ? this.#held : null;
  }

  /**
   * Plays a program from its count-in on. Where no sound comes in time it goes on by a lesser way, until one sounds or
   * none is left; see {@link nextWay}.
   * @param from where it goes on; the first bar where left out
   */
  async play(
    program: Program,
    settings: LiveSettings,
    setUp: 'right-handed' | 'left-handed',
    from: GoOnAt = { place: 0, pass: 0 },
  ): Promise<void> {
    this.#turn += 1;
    const turn = this.#turn;
    // What a kit that came late was left for is there by now.
    if (this.#way === 'small kit' && this.#lack === 'kit') this.#way = 'whole';
    this.#lack = null;
    this.#show('loading');
    const order = { kind: 'start', program, settings, setUp, from } as const;
    for (let ms = START_MS; ; ms = AGAIN_MS) {
      const lack = await this.#begin(order, Date.now() + ms, turn);
      if (lack === null || turn !== this.#turn) return;
      this.#lack = lack;
      const next = nextWay(this.#way, lack);
      if (next === null) return this.#fail(lack);
      if (next === 'no thread') this.#giveUp();
      this.#way = next;
      this.#tell();
    }
  }

  /** Begins by the way that it is on. @returns what was lacking; null where it sounds, or is wanted no more */
  async #begin(order: StartOrder, atMs: number, turn: number): Promise<Lack | null> {
    this.prepare(order.program);
    const output = this.#wake(atMs);
    output.catch(() => undefined);
    try {
      const maker = await until(this.#open(), atMs, 'thread');
      // The page itself tells of strokes whether anybody hears them or not; a thread goes with the output.
      if (this.#way === 'no thread') await output;
      if (turn !== this.#turn) return null;
      this.#told = [];
      this.#isWaiting = false;
      const first = new Promise<void>((resolve) => {
        this.#onFirst = resolve;
      });
      maker.order({ ...order, room: this.#way === 'whole' });
      if (this.#way === 'small kit') maker.order({ kind: 'stand-ins', sounds: await makeStandIns() });
      await Promise.all([output, inTime(first, Math.max(0, atMs - Date.now()))]);
      return null;
    } catch (reason) {
      const isDumb = await output.then(
        () => false,
        () => true,
      );
      if (isDumb) return 'output';
      if (reason instanceof LackError) return reason.lack;
      return this.#isWaiting ? 'kit' : 'stroke';
    }
  }

  /** Lets the output run, which a device without one leaves open for ever. */
  async #wake(atMs: number): Promise<void> {
    await until(this.context().resume(), atMs, 'output');
  }

  /** Leaves what does not sound, so that another takes its place; it falls silent where it comes after all. */
  #giveUp(): void {
    this.#order({ kind: 'stop' });
    this.#maker = null;
  }

  /** Says that no sound came. What never began is made anew the next time. */
  #fail(lack: Lack): void {
    this.#giveUp();
    this.#kit = null;
    if (lack === 'output') this.#forgetContext();
    this.#way = 'whole';
    this.#show('failed');
  }

  #forgetContext(): void {
    void this.#context?.close().catch(() => undefined);
    this.#context = null;
    this.#output = null;
    this.#clock = null;
  }

  stop(): void {
    this.#turn += 1;
    this.#order({ kind: 'stop' });
    this.#show('silent');
  }

  change(settings: LiveSettings, when: 'now' | 'next time' = 'now'): void {
    if (this.#status === 'playing') this.#order({ kind: 'settings', settings, when });
  }

  replace(program: Program, when: TakeOver): void {
    if (this.#status === 'playing') this.#order({ kind: 'program', program, when });
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

  #order(order: Order): void {
    void this.#maker?.then(
      (maker) => maker.order(order),
      () => undefined,
    );
  }

  /** What sounds, by the way that it is on. */
  #open(): Promise<SoundMaker> {
    if (this.#maker) return this.#maker;
    // What was given up may still come: it is not listened to.
    const onReport = (report: Report) => {
      if (this.#maker === opening) this.#hear(report);
    };
    const options = { context: this.#ownContext(), output: this.#ownOutput(), onReport };
    const opening = this.#way === 'no thread' ? openBuffers(options) : openThread(options);
    this.#maker = opening;
    opening.then(
      (maker) => this.#handOver(maker),
      () => {
        if (this.#maker === opening) this.#maker = null;
      },
    );
    return opening;
  }

  /** Gives the kit to what sounds, once. */
  #handOver(maker: SoundMaker): void {
    for (const port of this.#kit ?? []) maker.takeKit(port);
    if (this.#kit) this.#kit = [];
    if (!this.#prepared || this.#status !== 'silent') return;
    maker.order({
      kind: 'rehearse',
      program: this.#prepared,
      atOnce: this.#context?.state !== 'running',
    });
  }

  #hear(report: Report): void {
    if (report.kind === 'waiting') {
      this.#isWaiting = true;
      return;
    }
    if (report.kind === 'anchor') {
      this.#told = [...this.#told, report].slice(-REMEMBERED);
      this.#onFirst();
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
    this.#tell();
  }

  #tell(): void {
    for (const listener of this.#listeners) listener();
  }
}
