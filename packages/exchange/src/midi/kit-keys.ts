/**
 * The keys of one electronic kit: what a person teaches where the usual layouts do not fit.
 *
 * Conventions: a text of lines `KEY: VOICE`, keys 0 to 127; what follows a `#` is a remark. Keys that are not named keep
 * the meaning that `key-map` gives them.
 */
import { isVoice, nearest, VOICES, type Voice } from '@shedbook/core';
import type { MidiOtherNote, MidiTake } from './read.ts';

/** Voices by MIDI key number, 0 to 127. */
export type KitKeys = Readonly<Record<number, Voice>>;

/** A line that names no key and voice. */
export interface KitKeysProblem {
  /** From 1. */
  readonly line: number;
  readonly found: string;
  /** What is wrong with it. */
  readonly fault: 'line' | 'key' | 'voice';
  /** The voice that was probably meant, or null. */
  readonly near: Voice | null;
}

/** Keys of a text, and every line that is none. */
export interface KitKeysReading {
  readonly keys: KitKeys;
  readonly problems: readonly KitKeysProblem[];
}

const MOST_KEY = 127;

function readLine(
  text: string,
): { readonly key: number; readonly voice: Voice } | Omit<KitKeysProblem, 'line'> {
  const match = /^(\S+)\s*:\s*(\S+)$/.exec(text);
  if (!match) return { fault: 'line', found: text, near: null };
  const [, number = '', voice = ''] = match;
  const key = Number(number);
  if (!/^\d+$/.test(number) || key > MOST_KEY) return { fault: 'key', found: number, near: null };
  if (!isVoice(voice)) {
    const near = nearest(voice, VOICES);
    return { fault: 'voice', found: voice, near: near !== null && isVoice(near) ? near : null };
  }
  return { key, voice };
}

/** The keys that a text names. */
export function readKitKeys(text: string): KitKeysReading {
  const keys: Record<number, Voice> = {};
  const problems: KitKeysProblem[] = [];
  text.split(/\r?\n/).forEach((each, index) => {
    const line = each.replace(/#.*/, '').trim();
    if (line === '') return;
    const read = readLine(line);
    if ('fault' in read) problems.push({ line: index + 1, ...read });
    else keys[read.key] = read.voice;
  });
  return { keys, problems };
}

/** The text of some keys, in order of the keys. */
export function printKitKeys(keys: KitKeys): string {
  return Object.entries(keys)
    .map(([key, voice]) => `${key}: ${voice}\n`)
    .join('');
}

/** The MIDI keys of a take in the order in which each was first struck. */
export function keysStruck({ notes, others }: Pick<MidiTake, 'notes' | 'others'>): readonly number[] {
  const all: readonly MidiOtherNote[] = [...notes, ...others];
  return [...new Set(all.toSorted((a, b) => a.ticks - b.ticks).map(({ key }) => key))];
}
