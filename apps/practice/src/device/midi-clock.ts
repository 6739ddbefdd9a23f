/**
 * A MIDI kit's notes on the clock of the sound.
 *
 * Conventions: `timeStamp` in milliseconds of the page's clock (`performance.now()`); seconds of the audio
 * context, 0 at its start; levels in dB relative to a plain stroke of the lead voice.
 * Source: Web MIDI API, `MIDIMessageEvent`.
 */
import type { Voice } from '@shedbook/core';
import { type SentStroke, strokeSent } from '@shedbook/exchange';
import type { ClockPair } from '@shedbook/stand';

/** The moment of the page's clock in seconds of the context, as they leave the loudspeaker. */
export function contextSecondsAt(pageMs: number, pair: ClockPair): number {
  return pair.contextSeconds + (pageMs - pair.pageMs) / 1000;
}

/** A stroke that a kit sent. */
export interface KitNote extends SentStroke {
  /** In seconds of the audio context, as heard with what leaves the loudspeaker then. */
  readonly seconds: number;
}

/**
 * The stroke of a message, or null where it is none or of no voice of the drum set.
 * @param anyVoice what every key is, where one plays on one surface
 */
export function readKitNote(
  message: { readonly data: Uint8Array | readonly number[] | null; readonly timeStamp: number },
  pair: ClockPair,
  anyVoice: Voice | null = null,
): KitNote | null {
  const sent = strokeSent(message.data, anyVoice);
  return sent && { ...sent, seconds: contextSecondsAt(message.timeStamp, pair) };
}
