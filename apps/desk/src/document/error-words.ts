/** Words for what went wrong between the desk and its server. */

import { type DeskCatalogue, type DeskWords, loadFileFacts, type Sayable, say } from '@shedbook/words';
import { RefusedError, UnreachableError } from './client.ts';

/** A sentence for an error. */
export function wordsFor(error: unknown, words: DeskWords): string {
  if (error instanceof UnreachableError) return words.refusals.unreachable;
  if (error instanceof RefusedError) return words.refusals[error.code];
  return words.refusals.internal;
}

/** A sentence for an error; why a file of another program could not be read is said too. */
export async function explain(error: unknown, { tag, words }: DeskCatalogue): Promise<string> {
  const refused = error instanceof RefusedError ? error.refusal : null;
  if (refused?.code !== 'unreadable-file') return wordsFor(error, words);
  const language = await loadFileFacts(tag).catch(() => null);
  if (!language) return wordsFor(error, words);
  return words.refusals.unreadable({ why: say<Sayable>(refused.values.why as unknown as Sayable, language) });
}
