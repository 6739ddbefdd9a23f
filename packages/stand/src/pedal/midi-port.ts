/** MIDI as the browser gives it. Source: W3C Web MIDI API. */

import { inTime } from '../device/in-time.ts';

/** Everything that is plugged in, heard as one. */
export interface MidiPort {
  /** Names of what is plugged in now. */
  readonly names: () => readonly string[];
  /** Hears every message. @returns a way to stop */
  readonly listen: (listener: (message: Uint8Array) => void) => () => void;
  /** Hears when something is plugged in or out. @returns a way to stop */
  readonly onChange: (listener: () => void) => () => void;
}

/** Opens MIDI. */
export type OpenMidi = () => Promise<MidiPort>;

/** This browser, or this page, has no MIDI. */
export class NoMidiError extends Error {
  override readonly name = 'NoMidiError';
}

function portOf(access: MIDIAccess): MidiPort {
  const inputs = () => [...access.inputs.values()].filter((input) => input.state === 'connected');
  return {
    names: () => inputs().map((input) => input.name ?? 'MIDI'),
    listen: (listener) => {
      const hear = (event: MIDIMessageEvent) => event.data && listener(event.data);
      const hearAll = () => {
        for (const input of access.inputs.values()) {
          input.removeEventListener('midimessage', hear);
          input.addEventListener('midimessage', hear);
        }
      };
      hearAll();
      access.addEventListener('statechange', hearAll);
      return () => {
        access.removeEventListener('statechange', hearAll);
        for (const input of access.inputs.values()) input.removeEventListener('midimessage', hear);
      };
    },
    onChange: (listener) => {
      access.addEventListener('statechange', listener);
      return () => access.removeEventListener('statechange', listener);
    },
  };
}

/** After this long without an answer a question for MIDI is taken for refused, in milliseconds: it can be asked again. */
const ANSWER_MS = 20_000;

/**
 * Asks the browser for MIDI.
 * @throws NoMidiError where there is none; an Error where the reader says no, or nobody answers in time, as a browser
 * may leave the question open for ever
 */
export async function askForMidi(): Promise<MIDIAccess> {
  if (!navigator.requestMIDIAccess) throw new NoMidiError();
  return inTime(navigator.requestMIDIAccess(), ANSWER_MS);
}

/** Opens MIDI for pedals. @throws what {@link askForMidi} throws */
export async function openWebMidi(): Promise<MidiPort> {
  return portOf(await askForMidi());
}
