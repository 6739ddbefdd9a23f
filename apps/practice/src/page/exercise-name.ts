/** What an exercise is called. */
import type { HearingWords } from '@shedbook/words';

/** An exercise as it was written; null for the groove alone. */
interface Named {
  readonly number: number | null;
  readonly name: string | null;
}

/** Its number, and its name where it has one. */
export function exerciseName({ number, name }: Named, words: HearingWords['plan']): string {
  if (number === null) return words.groove;
  return name === null ? words.exercise({ n: number }) : words.named({ n: number, name });
}
