/**
 * What an electronic kit sends while it is played.
 *
 * Source: MIDI 1.0, channel voice messages: a note-on with velocity 0 is a note-off.
 */
import { isVoice, TakeDb, type Voice, velocityToLevelDb } from '@shedbook/core';
import { keyToVoice } from './key-map.ts';

const NOTE_ON = 0x90;
const NOTE_ON_MASK = 0xf0;

/** A voice that was struck. */
export interface SentStroke {
  readonly voice: Voice;
  readonly levelDb: TakeDb;
}

/**
 * The stroke of a message, or null where it is none or of no voice of the drum set.
 * @param anyVoice what every key is, where one plays on one surface
 * @example strokeSent([0x99, 38, 90])?.voice // 'snare'
 */
export function strokeSent(
  data: Uint8Array | readonly number[] | null,
  anyVoice: Voice | null = null,
): SentStroke | null {
  const [status = 0, key = 0, velocity = 0] = data ?? [];
  if ((status & NOTE_ON_MASK) !== NOTE_ON || velocity === 0) return null;
  const voice = anyVoice ?? keyToVoice(key)?.voice;
  if (!voice || !isVoice(voice)) return null;
  return { voice, levelDb: TakeDb(velocityToLevelDb(velocity)) };
}
