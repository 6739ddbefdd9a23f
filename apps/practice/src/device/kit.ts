/** An electronic kit through Web MIDI: every input, heard on the clock of the sound. */
import type { Voice } from '@shedbook/core';
import { askForMidi, clocksOf, NoMidiError } from '@shedbook/stand';
import { type KitNote, readKitNote } from './midi-clock.ts';

/** Why there is no kit. */
export type KitRefusal = 'not here' | 'denied' | 'none';

/** Thrown when no kit could be opened. */
export class KitError extends Error {
  readonly refusal: KitRefusal;
  constructor(refusal: KitRefusal) {
    super(refusal);
    this.refusal = refusal;
  }
}

/** What a message is read from: a part of a MIDI input, so that tests can send notes. */
export interface KitPort {
  readonly name: string | null;
  /** Gets each message; `timeStamp` is in milliseconds since the page was opened. */
  onmidimessage: ((event: { readonly data: Uint8Array | null; readonly timeStamp: number }) => void) | null;
  /** `disconnected` where its cable is pulled. */
  readonly state?: 'connected' | 'disconnected';
  /** Called when that changes. */
  onstatechange?: (() => void) | null;
}

/** The ports that there are. @throws KitError when the browser has no MIDI, may not use it or sees no input. */
export async function findPorts(): Promise<readonly KitPort[]> {
  const access = await askForMidi().catch((reason) => {
    throw new KitError(reason instanceof NoMidiError ? 'not here' : 'denied');
  });
  const ports = [...access.inputs.values()] as unknown as readonly KitPort[];
  if (ports.length === 0) throw new KitError('none');
  return ports;
}

/** An open kit. */
export class Kit {
  readonly #ports: readonly KitPort[];
  readonly #listeners = new Set<(note: KitNote) => void>();
  /** Name of the first input; the latency is kept under it. */
  readonly device: string;
  /** What every key is, where one plays on one surface; null: what its number says. */
  anyVoice: Voice | null = null;

  constructor(ports: readonly KitPort[], context: AudioContext) {
    this.#ports = ports;
    this.device = `midi ${ports[0]?.name ?? ''}`;
    for (const port of ports) {
      port.onmidimessage = (event) => {
        // The clocks are compared for every note: a sound thread that could not keep up has fallen behind.
        const note = readKitNote(event, clocksOf(context, performance.now()), this.anyVoice);
        if (note) for (const listener of this.#listeners) listener(note);
      };
    }
  }

  /** Hands every stroke to a listener until it is told to stop. @returns how to stop. */
  listen(listener: (note: KitNote) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Says when the last input goes away. */
  onGone(listener: () => void): void {
    const look = () => {
      if (this.#ports.every(({ state }) => state === 'disconnected')) listener();
    };
    for (const port of this.#ports) port.onstatechange = look;
  }

  /** Lets the kit go. */
  close(): void {
    for (const port of this.#ports) {
      port.onmidimessage = null;
      port.onstatechange = null;
    }
    this.#listeners.clear();
  }
}
