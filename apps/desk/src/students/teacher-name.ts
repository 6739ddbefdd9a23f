/** What a teacher is called in the head's list. */
import type { SchoolWords } from '@shedbook/words';

/** The name, or that there is none yet. */
export function nameOf({ name }: { readonly name: string }, words: SchoolWords['teachers']): string {
  return name === '' ? words.unnamed : name;
}
