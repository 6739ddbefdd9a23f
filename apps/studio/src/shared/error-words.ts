/** Words for what went wrong between the studio and its server. */
import { RefusedError, UnreachableError } from '../document/api.ts';
import type { Words } from '../words/english.ts';

/** A sentence for an error. */
export function wordsFor(error: unknown, words: Words): string {
  if (error instanceof UnreachableError) return words.refusals.unreachable;
  if (error instanceof RefusedError) return words.refusals[error.code];
  return words.refusals.internal;
}
