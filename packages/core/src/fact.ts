/**
 * Facts: what a room has to say, as a code and values. Sentences are made of them in the words room, one catalogue
 * a language, so that no room under it speaks a language of its own.
 *
 * Conventions: every kind of fact is an interface that narrows `fact` to its code; a room exports the union of its
 * own kinds. Values are texts, numbers with their unit in the name, names of voices, limbs and cells, facts within
 * the fact, or lists of these.
 */
export interface Fact {
  /** Stable name of the kind of fact, e.g. `unknown-key`. */
  readonly fact: string;
}
