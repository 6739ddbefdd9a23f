/** The kit that recordings are played on: built in, or a SoundFont 2 file. */
import type { Hertz } from '@shedbook/core';
import type { Kit } from '@shedbook/sound';
import { type CliWords, say } from '@shedbook/words';
import { InputError } from './input-error.ts';
import { readOutside } from './outside/read-outside.ts';

/** Built-in kits by rate, kept: making one takes seconds of the processor. */
const kits = new Map<Hertz, Kit>();

async function builtInKit(sampleRateHz: Hertz): Promise<Kit> {
  const { createKit } = await import('@shedbook/sound');
  const kit = kits.get(sampleRateHz) ?? createKit({ sampleRateHz });
  kits.set(sampleRateHz, kit);
  return kit;
}

const aSoundFont = ({ soundFont }: CliWords['expected']) => soundFont;

/**
 * Loads a kit; the built-in one where no file is named.
 * @param signal aborted when nobody waits any more
 * @throws InputError when the file cannot be read or is no SoundFont with drums.
 */
export async function loadKit(path: string | null, sampleRateHz: Hertz, signal?: AbortSignal): Promise<Kit> {
  if (path === null) return builtInKit(sampleRateHz);
  const called = `--kit: ${path}`;
  const file = { path, called, expected: aSoundFont, ...(signal && { signal }) };
  const found = await readOutside('soundFont', file, { sampleRateHz });
  if ('fault' in found) {
    const { fault } = found;
    throw new InputError(({ words, language }) => words.noKit({ file: path, why: say(fault, language) }));
  }
  const { soundFontKit } = await import('@shedbook/sound');
  return soundFontKit(found.sounds, { sampleRateHz });
}
