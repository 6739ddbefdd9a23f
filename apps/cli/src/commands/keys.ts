/** `shedbook keys`: learns which keys an electronic kit sends, from a take in which each pad is struck in turn. */
import type { Voice } from '@shedbook/core';
import { type KitKeys, keysStruck, printKitKeys } from '@shedbook/exchange';
import { InputError } from '@shedbook/host';
import { readMidiTake } from '../listen/midi-take.ts';
import { readVoices } from '../options.ts';
import type { Speaker } from '../terminal.ts';
import { replaceTextFile } from '../text-file.ts';

/** What the command line asks for. */
export interface KeysRequest {
  readonly take: string;
  /** Voices in the order in which they were struck, joined by commas; a voice with two zones stands twice. */
  readonly pads: string;
  readonly out?: string;
  readonly json?: boolean;
}

function keysFor(path: string, struck: readonly number[], pads: readonly Voice[]): KitKeys {
  if (struck.length !== pads.length)
    throw new InputError(({ words }) =>
      words.keys.otherCount({ file: path, keys: struck.length, list: struck.join(', '), pads: pads.length }),
    );
  return Object.fromEntries(struck.map((key, i) => [key, pads[i]!]));
}

/**
 * Learns the keys of a kit and prints or writes them. @returns the exit status.
 * @throws InputError when the take has not as many keys as there are pads.
 */
export async function keysCommand(request: KeysRequest, terminal: Speaker): Promise<number> {
  const pads = readVoices('pads', request.pads);
  // Keys without a meaning are what is learnt here: nothing is said of them.
  const take = await readMidiTake(request.take, {}, { ...terminal, warn: () => {} });
  const keys = keysFor(request.take, keysStruck(take), pads);
  const { out } = request;
  const text = printKitKeys(keys);
  if (out !== undefined) await replaceTextFile(out, text, terminal);
  const { words } = terminal.catalogue;
  if (request.json) terminal.say(JSON.stringify({ keys }, null, 2));
  else if (out === undefined) terminal.say(text.trimEnd());
  else terminal.say(words.keys.written({ keys: pads.length, file: out }));
  return 0;
}
