/** Words for what went wrong between the desk and its server. */

import type { DeskWords } from '@shedbook/words';
import { RefusedError, UnreachableError } from './client.ts';

/** A sentence for an error. */
export function wordsFor(error: unknown, words: DeskWords): string {
  if (error instanceof UnreachableError) return words.refusals.unreachable;
  if (error instanceof RefusedError) return words.refusals[error.code];
  return words.refusals.internal;
}
