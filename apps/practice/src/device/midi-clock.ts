/**
 * A MIDI kit's notes on the clock of the sound.
 *
 * Conventions: `timeStamp` in milliseconds of the page's clock (`performance.now()`); seconds of the audio
 * context, 0 at its start; levels in dB relative to a plain stroke of the lead voice.
 * Sources: Web MIDI API, `MIDIMessageEvent`; MIDI 1.0, note-on with velocity 0 is a note-off.
 */
import { isVoice, TakeDb, type Voice, velocityToLevelDb } from '@shedbook/core';
import { keyToVoice } from '@shedbook/exchange';
import type { ClockPair } from '@shedbook/stand';

/** The moment of the page's clock in seconds of the context, as they leave the loudspeaker. */
export function contextSecondsAt(pageMs: number, pair: ClockPair): number {
  return pair.contextSeconds + (pageMs - pair.pageMs) / 1000;
}

/** A stroke that a kit sent. */
export interface KitNote {
  readonly voice: Voice;
  /** In seconds of the audio context, as heard with what leaves the loudspeaker then. */
  readonly seconds: number;
  readonly levelDb: TakeDb;
}

const NOTE_ON = 0x90;
const NOTE_ON_MASK = 0xf0;

/**
 * The stroke of a message, or null where it is none or of no voice of the drum set.
 * @param anyVoice what every key is, where one plays on one surface
 */
export function readKitNote(
  message: { readonly data: Uint8Array | readonly number[] | null; readonly timeStamp: number },
  pair: ClockPair,
  anyVoice: Voice | null = null,
): KitNote | null {
  const [status = 0, key = 0, velocity = 0] = message.data ?? [];
  if ((status & NOTE_ON_MASK) !== NOTE_ON || velocity === 0) return null;
  const voice = anyVoice ?? keyToVoice(key)?.voice;
  if (!voice || !isVoice(voice)) return null;
  return {
    voice,
    seconds: contextSecondsAt(message.timeStamp, pair),
    levelDb: TakeDb(velocityToLevelDb(velocity)),
  };
}
