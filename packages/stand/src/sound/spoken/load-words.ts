/** The words of a count for what is made beside the page, where a browser decodes nothing. */
import { SPOKEN_RATE_HZ } from '@shedbook/sound';
import type { LanguageTag } from '@shedbook/words';
import { fetchSpoken } from './recordings.ts';

/** The words of a language as samples, at the rate at which they were recorded. */
export async function loadSpoken(language: LanguageTag): Promise<Float32Array> {
  const context = new OfflineAudioContext(1, 1, SPOKEN_RATE_HZ);
  return (await context.decodeAudioData(await fetchSpoken(language))).getChannelData(0);
}
