/** The foot switches of the lesson room: whether they can be heard, what they mean, and learning a new one. */
import { type MidiPort, NoMidiError, type OpenMidi } from './midi-port.ts';
import {
  createPedalReader,
  learnSign,
  meaningOf,
  type PedalAction,
  type PedalSign,
  type PedalSigns,
} from './pedal.ts';

/** How far hearing is. */
export type PedalStatus = 'off' | 'asking' | 'on' | 'missing' | 'refused';

/** What can be seen of the switches. */
export interface PedalState {
  readonly status: PedalStatus;
  /** Names of what is plugged in. */
  readonly devices: readonly string[];
  /** What the next press will mean, while one is being learned. */
  readonly learning: PedalAction | null;
  readonly signs: PedalSigns;
}

/** Where signs are kept from one visit to the next. */
export interface PedalMemory {
  readonly read: () => PedalSigns;
  readonly write: (signs: PedalSigns) => void;
}

/** The switches. */
export class PedalBoard {
  readonly #open: OpenMidi;
  readonly #memory: PedalMemory;
  readonly #listeners = new Set<() => void>();
  readonly #read = createPedalReader();
  #stops: readonly (() => void)[] = [];
  /** Goes up when the room is left: what was asked for before is not heard any more. */
  #visit = 0;
  #state: PedalState;
  /** Is told of every press that means something. */
  onAction: (action: PedalAction) => void = () => undefined;

  constructor(open: OpenMidi, memory: PedalMemory) {
    this.#open = open;
    this.#memory = memory;
    this.#state = { status: 'off', devices: [], learning: null, signs: memory.read() };
  }

  readonly state = (): PedalState => this.#state;

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  /** Asks for MIDI; nothing happens when it has been given already. */
  async connect(): Promise<void> {
    if (this.#state.status === 'on' || this.#state.status === 'asking') return;
    this.#show({ status: 'asking' });
    const visit = this.#visit;
    try {
      const port = await this.#open();
      if (visit === this.#visit) this.#hear(port);
    } catch (reason) {
      if (visit !== this.#visit) return;
      this.#show({ status: reason instanceof NoMidiError ? 'missing' : 'refused' });
    }
  }

  /** Takes the next press for an action; null stops waiting. */
  learn(action: PedalAction | null): void {
    this.#show({ learning: action });
  }

  /** Forgets which switch means an action. */
  forget(action: PedalAction): void {
    const { [action]: _, ...signs } = this.#state.signs;
    this.#keep(signs);
  }

  /** Hears nothing more. */
  close(): void {
    for (const stop of this.#stops) stop();
    this.#stops = [];
    this.#visit += 1;
    this.#show({ status: 'off', devices: [], learning: null });
  }

  #hear(port: MidiPort): void {
    const look = () => this.#show({ status: 'on', devices: port.names() });
    this.#stops = [
      port.listen((message) => {
        const sign = this.#read(message);
        if (sign) this.#press(sign);
      }),
      port.onChange(look),
    ];
    look();
  }

  #press(sign: PedalSign): void {
    const { learning, signs } = this.#state;
    if (learning) {
      this.#show({ learning: null });
      this.#keep(learnSign(signs, learning, sign));
      return;
    }
    const action = meaningOf(signs, sign);
    if (action) this.onAction(action);
  }

  #keep(signs: PedalSigns): void {
    this.#memory.write(signs);
    this.#show({ signs });
  }

  #show(change: Partial<PedalState>): void {
    this.#state = { ...this.#state, ...change };
    for (const listener of this.#listeners) listener();
  }
}
