/** The kit that recordings are played on: built in, or a SoundFont 2 file. */
import { readFile } from 'node:fs/promises';
import type { Hertz } from '@shedbook/core';
import type { Kit } from '@shedbook/sound';
import { say } from '@shedbook/words';
import { InputError, reasonOf } from './input-error.ts';

/** Built-in kits by rate, kept: making one takes seconds of the processor. */
const kits = new Map<Hertz, Kit>();

async function builtInKit(sampleRateHz: Hertz): Promise<Kit> {
  const { createKit } = await import('@shedbook/sound');
  const kit = kits.get(sampleRateHz) ?? createKit({ sampleRateHz });
  kits.set(sampleRateHz, kit);
  return kit;
}

/**
 * Loads a kit; the built-in one where no file is named.
 * @throws InputError when the file cannot be read or is no SoundFont with drums.
 */
export async function loadKit(path: string | null, sampleRateHz: Hertz): Promise<Kit> {
  if (path === null) return builtInKit(sampleRateHz);
  const { loadSoundFontKit, SoundFontError } = await import('@shedbook/sound');
  const bytes = await readFile(path).catch((error: unknown) => {
    throw new InputError((to) => {
      const { unreadable, expected } = to.words;
      const why = reasonOf(error, to);
      return unreadable({ file: `--kit: ${path}`, why, expected: expected.soundFont });
    });
  });
  try {
    return loadSoundFontKit(bytes, { sampleRateHz });
  } catch (error) {
    if (!(error instanceof SoundFontError)) throw error;
    const { fact } = error;
    throw new InputError(({ words, language }) => words.noKit({ file: path, why: say(fact, language) }));
  }
}
