/** The kit that recordings are played on: built in, or a SoundFont 2 file. */
import { readFile } from 'node:fs/promises';
import type { Kit } from '@shedbook/sound';
import { InputError, reasonOf } from './input-error.ts';

/**
 * Loads a kit; the built-in one where no file is named.
 * @throws InputError when the file cannot be read or is no SoundFont with drums.
 */
export async function loadKit(path: string | null, sampleRateHz: number): Promise<Kit> {
  const { createKit, loadSoundFontKit } = await import('@shedbook/sound');
  if (path === null) return createKit({ sampleRateHz });
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
    if (!(error instanceof RangeError)) throw error;
    const why = error.message.replace('At kit: ', '');
    throw new InputError(({ words }) => words.noKit({ file: path, why }));
  }
}
