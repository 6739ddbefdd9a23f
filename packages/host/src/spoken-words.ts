/** The words of a spoken count, for recordings and films. */
import { join } from 'node:path';
import type { Hertz } from '@shedbook/core';
import type { SpokenLanguage, SpokenWords } from '@shedbook/sound';
import { decodeSound } from './decode/decode-sound.ts';
import { SPOKEN_DIR } from './house.ts';

const FILES: Readonly<Record<SpokenLanguage, string>> = { en: 'english.flac', de: 'german.flac' };

/** The words of a language at a rate. */
export async function loadSpokenWords(language: SpokenLanguage, sampleRateHz: Hertz): Promise<SpokenWords> {
  const { spokenAt } = await import('@shedbook/sound');
  const { blocks } = await decodeSound(join(SPOKEN_DIR, FILES[language]));
  const parts: Float32Array[] = [];
  for await (const block of blocks) parts.push(block);
  return spokenAt(language, parts, sampleRateHz);
}
