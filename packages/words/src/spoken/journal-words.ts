/** An entry of the journal in words. */
import type { CliWords } from '../screens/cli.ts';

type Entries = CliWords['journal']['entries'];

/** An entry, as far as it is said. */
export interface SaidEntry {
  readonly who: keyof Entries['doers'];
  readonly did: keyof Entries['deeds'];
  /** Id of the student whom it is about, or null. */
  readonly student: string | null;
  /** What they are called; null where they were erased. */
  readonly name: string | null;
  /** What the teacher is called who did it; null where it was none, or one without a name. */
  readonly teacher: string | null;
  /** How many, where several. */
  readonly n: number | null;
}

/** Who did what, and about whom. */
export function journalWords(words: Entries, { who, did, student, name, teacher, n }: SaidEntry): string {
  const what = did === 'takes-aged' ? words.aged({ n: n ?? 1 }) : words.deeds[did];
  const by = teacher ?? words.doers[who];
  if (student === null) return words.entry({ by, what });
  return words.entryOf({ by, what, whom: name ?? words.erasedStudent });
}
