/**
 * The ear of the practice room: a microphone or a kit, and the worker that listens.
 *
 * Conventions: seconds of the audio context that plays; a latency is how much later a stroke on the beat is taken
 * than its model was played, in milliseconds.
 */
import type { Voice } from '@shedbook/core';
import type { Asked, KnownKit } from '@shedbook/listen';
import { outputLatencyOf } from '@shedbook/stand';
import { findPorts, Kit, KitError, type KitRefusal } from '../device/kit.ts';
import {
  Microphone,
  type MicrophoneCaution,
  MicrophoneError,
  type MicrophoneRefusal,
} from '../device/microphone.ts';
import type { EarAsked, EarOrder, EarReport, EarRole, LoopTime } from './ear-messages.ts';
import { startEarThread } from './ear-thread.ts';

/** What is listened with. */
export type Input = 'microphone' | 'kit';

/** Why there is nothing to listen with. */
type Lost = MicrophoneRefusal | KitRefusal | 'broken';

/** How the ear is. */
export interface EarState {
  readonly input: Input | null;
  readonly phase: 'off' | 'opening' | 'on';
  readonly refusal: Lost | null;
  /** Name of the devices, for their latency. */
  readonly device: string | null;
  readonly latencyMs: number;
  /** Whether the latency was measured or set, not guessed. */
  readonly isMeasured: boolean;
  /** Whether it was found from the playing itself, for want of a measurement. */
  readonly isFromPlaying: boolean;
  /** Peak of the microphone in dB re full scale, or null. */
  readonly levelDb: number | null;
  /** What takes with this microphone may suffer from, or null. */
  readonly caution: MicrophoneCaution | null;
  /** The line check that is chosen and was made with other weights, by its name, or null. */
  readonly oldLineCheck: string | null;
}

const OFF: EarState = {
  input: null,
  phase: 'off',
  refusal: null,
  device: null,
  latencyMs: 0,
  isMeasured: false,
  isFromPlaying: false,
  levelDb: null,
  caution: null,
  oldLineCheck: null,
};

/** Sound cards take about this long on their own way in, in ms: a guess until it is measured. */
const GUESSED_INPUT_MS = 15;

/** Milliseconds between looks at the clock where no blocks come. */
const TICK_MS = 50;

/** So long after a moment every round that ended before it can be reported on, in seconds. */
const SURELY_OVER_SECONDS = 10;

/** Steps in which the level is shown, in dB. */
const LEVEL_STEP_DB = 3;

/** A latency is asked for by the name of the devices; null where it was never measured. */
export type LatencyBook = (device: string) => Promise<number | null>;

/** Asks for what the chosen line check told of the kit; null where none is chosen. */
export type KitBook = () => Promise<KnownKit | null>;

/** The ear. */
export class Ear {
  readonly #listeners = new Set<() => void>();
  readonly #reports = new Set<(report: EarReport) => void>();
  readonly #book: LatencyBook;
  readonly #kits: KitBook;
  #known: KnownKit | null = null;
  #state = OFF;
  #context: AudioContext | null = null;
  #microphone: Microphone | null = null;
  #kit: Kit | null = null;
  #workers: readonly Worker[] = [];
  #tick: ReturnType<typeof setInterval> | null = null;
  /** Counts what was opened and closed: who opens asks whether it is still wanted. */
  #turn = 0;
  /** The name of what was asked last, until its take has come. */
  #asking: string | null = null;
  /** Whether the device is gone, and only what it heard is waited for. */
  #isGone = false;

  constructor(book: LatencyBook, kits: KitBook = async () => null) {
    this.#book = book;
    this.#kits = kits;
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  readonly state = (): EarState => this.#state;

  /** The open microphone or kit, for the latency check. */
  get microphone(): Microphone | null {
    return this.#microphone;
  }

  get kit(): Kit | null {
    return this.#kit;
  }

  /** Hands everything that the ear says to a listener. @returns how to stop. */
  onReport(listener: (report: EarReport) => void): () => void {
    this.#reports.add(listener);
    return () => this.#reports.delete(listener);
  }

  /**
   * Opens a microphone or a kit; asks for permission. What stands in the way is said in the state.
   * @param output what the page plays goes through here, on its way to the loudspeaker
   */
  async open(input: Input, context: AudioContext, output: AudioNode): Promise<void> {
    this.close();
    this.#show({ ...OFF, input, phase: 'opening' });
    this.#context = context;
    const turn = this.#turn;
    try {
      const device = await (input === 'microphone'
        ? this.#openMicrophone(context, output)
        : this.#openKit(context));
      const [known, kit] = await Promise.all([
        this.#book(device).catch(() => null),
        this.#kits().catch(() => null),
      ]);
      if (turn !== this.#turn) return;
      const guess = input === 'kit' ? 0 : outputLatencyOf(context) * 1000 + GUESSED_INPUT_MS;
      const latencyMs = known ?? guess;
      this.#known = kit;
      const caution = this.#microphone?.caution ?? null;
      this.#show({ ...OFF, input, phase: 'on', device, latencyMs, isMeasured: known !== null, caution });
    } catch (error) {
      if (turn !== this.#turn) return;
      const refusal =
        error instanceof MicrophoneError || error instanceof KitError ? error.refusal : 'not here';
      this.close();
      this.#show({ ...OFF, input, refusal });
    }
  }

  async #openMicrophone(context: AudioContext, output: AudioNode): Promise<string> {
    const turn = this.#turn;
    const microphone = await Microphone.open(context, output);
    if (turn !== this.#turn) {
      microphone.close();
      return microphone.device;
    }
    this.#microphone = microphone;
    this.#microphone.onGone(() => this.#unplugged(context, 'missing'));
    for (const worker of this.#startWorkers()) {
      const { port1, port2 } = new MessageChannel();
      worker.postMessage({ kind: 'blocks', port: port1 } satisfies EarOrder, [port1]);
      this.#microphone.sendTo(port2);
    }
    return this.#microphone.device;
  }

  async #openKit(context: AudioContext): Promise<string> {
    const turn = this.#turn;
    const ports = await findPorts();
    if (turn !== this.#turn) return '';
    this.#kit = new Kit(ports, context);
    this.#startWorkers();
    this.#kit.onGone(() => this.#unplugged(context, 'none'));
    this.#kit.listen((note) => this.#order({ kind: 'note', note }));
    this.#tellTime(context);
    return this.#kit.device;
  }

  /**
   * Says where the clock stands, one look late: strokes that waited while the page was busy come before the moment
   * that they belong to, and no loop is judged without them.
   */
  #tellTime(context: AudioContext): void {
    let looked = context.currentTime;
    this.#tick = setInterval(() => {
      this.#order({ kind: 'time', seconds: looked });
      looked = context.currentTime;
    }, TICK_MS);
  }

  #lost(refusal: Lost): void {
    const { input } = this.#state;
    this.close();
    this.#show({ ...OFF, input, refusal });
  }

  /**
   * The microphone or the kit went away by itself. Nothing more will come, so the ear is told that the time has passed: the rounds
   * that were played to their end are reported on, and the take is handed over, before everything is let go, however
   * far behind a slow device is.
   */
  #unplugged(context: AudioContext, refusal: Lost): void {
    if (this.#asking === null) {
      this.#lost(refusal);
      return;
    }
    this.#isGone = true;
    const turn = this.#turn;
    const forget = this.onReport(() => {
      if (this.#asking !== null) return;
      forget();
      if (turn === this.#turn) this.#lost(refusal);
    });
    this.breakOff(context.currentTime);
    this.finish();
    this.#order({ kind: 'time', seconds: context.currentTime + SURELY_OVER_SECONDS });
  }

  /** Lets everything go. */
  close(): void {
    this.#turn += 1;
    this.#microphone?.close();
    this.#kit?.close();
    for (const worker of this.#workers) worker.terminate();
    if (this.#tick !== null) clearInterval(this.#tick);
    this.#microphone = null;
    this.#kit = null;
    this.#workers = [];
    this.#tick = null;
    this.#asking = null;
    this.#isGone = false;
    this.#show(OFF);
  }

  /** Hears with a line check, or without one, from the next exercise that is asked for. */
  hearWith(kit: KnownKit | null): void {
    this.#known = kit;
    this.#show({ ...this.#state, oldLineCheck: null });
  }

  /**
   * Begins to listen for an exercise; what comes of it carries the name `id`.
   * @param onPad what every stroke is, where one plays on one surface
   * @returns what the ear was told, or null where it is off or its device is gone
   */
  ask(id: string, asked: Asked, onPad: Voice | null): EarAsked | null {
    const context = this.#context;
    if (!context || this.#state.phase !== 'on' || this.#isGone) return null;
    if (this.#kit) this.#kit.anyVoice = onPad;
    const order: EarAsked = {
      kind: 'ask',
      id,
      asked,
      onPad,
      sampleRateHz: this.#microphone?.rateHz ?? null,
      originSeconds: context.currentTime,
      latencySeconds: this.#state.latencyMs / 1000,
      ...(this.#known && this.#microphone && onPad === null ? { kit: this.#known } : {}),
    };
    this.#asking = id;
    this.#order(order);
    return order;
  }

  /** One time through the form begins. */
  loop(loop: LoopTime): void {
    this.#order({ kind: 'loop', loop });
  }

  /** What plays was broken off: loops that are not over then are not reported on. */
  breakOff(atSeconds: number): void {
    this.#order({ kind: 'break off', atSeconds });
  }

  /** Asks for the take; it comes as a report. */
  finish(): void {
    this.#order({ kind: 'finish' });
  }

  /** Takes a latency that was measured or set by hand. */
  setLatency(latencyMs: number): void {
    this.#show({ ...this.#state, latencyMs, isMeasured: true, isFromPlaying: false });
    this.#order({ kind: 'latency', seconds: latencyMs / 1000 });
  }

  /** Takes a latency that was found from the playing; one that was measured stays. */
  guessLatency(latencyMs: number): void {
    if (this.#state.isMeasured) return;
    this.#show({ ...this.#state, latencyMs, isFromPlaying: true });
    this.#order({ kind: 'latency', seconds: latencyMs / 1000 });
  }

  #order(order: EarOrder): void {
    for (const worker of this.#workers) worker.postMessage(order);
  }

  #startWorkers(): readonly Worker[] {
    const roles: readonly EarRole[] = ['strokes', 'reports'];
    this.#workers = roles.map((role) =>
      startEarThread(
        role,
        (report) => this.#hear(report),
        () => this.#lost('broken'),
      ),
    );
    return this.#workers;
  }

  #hear(report: EarReport): void {
    if (report.kind === 'level') this.#showLevel(report.peakDb);
    if (report.kind === 'old line check') this.#show({ ...this.#state, oldLineCheck: report.name });
    if (report.kind === 'take' && report.id === this.#asking) this.#asking = null;
    for (const listener of this.#reports) listener(report);
  }

  /** The page is drawn anew only where the level is another to the eye. */
  #showLevel(peakDb: number): void {
    const levelDb = Math.round(peakDb / LEVEL_STEP_DB) * LEVEL_STEP_DB;
    if (levelDb !== this.#state.levelDb) this.#show({ ...this.#state, levelDb });
  }

  #show(state: EarState): void {
    this.#state = state;
    for (const listener of this.#listeners) listener();
  }
}
