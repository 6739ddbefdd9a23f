/** A likely repair as a sentence: a question stands for itself, anything else is a perhaps. */

import { capital } from '../message/capital.ts';
import type { DeskWords } from '../screens/desk.ts';

/** The sentence. @example hintWords({ hint: () => '' }, 'did you mean "tempo"?') // 'Did you mean "tempo"?' */
export function hintWords(words: Pick<DeskWords['page'], 'hint'>, hint: string): string {
  return hint.endsWith('?') ? capital(hint) : words.hint({ hint });
}
