/** Values and words as facts: what is found in any file that a person wrote, and which words it may have. */
import type { Fact } from '../fact.ts';

/** A value that is named by its kind. */
interface KindOfValueFact extends Fact {
  readonly fact: 'nothing' | 'empty-text' | 'empty-list' | 'empty-map' | 'list' | 'map';
}

/** A text, quoted; long ones are shortened. */
interface QuotedFact extends Fact {
  readonly fact: 'quoted';
  readonly text: string;
}

/** A number, true or false, as it is written. */
interface LiteralFact extends Fact {
  readonly fact: 'literal';
  readonly text: string;
}

/** A value that was found. */
export type ValueFact = KindOfValueFact | QuotedFact | LiteralFact;

/** A key that there is not. */
interface UnknownKeyFact extends Fact {
  readonly fact: 'unknown-key';
  readonly key: string;
}

/** Words of which one is expected. */
interface OneOfFact extends Fact {
  readonly fact: 'one-of';
  readonly words: readonly string[];
}

/** The word that was probably meant. */
interface DidYouMeanFact extends Fact {
  readonly fact: 'did-you-mean';
  readonly word: string;
}

/** A rule for keys. */
interface KeyRuleFact extends Fact {
  readonly fact: 'each-key-once';
}

/** Version of a document. */
interface VersionFact extends Fact {
  readonly fact: 'version';
  readonly version: number;
}

/** What is said of the words of a document. */
export type WordFact = UnknownKeyFact | KeyRuleFact | OneOfFact | DidYouMeanFact | VersionFact;

const LONGEST = 40;

function shortened(text: string): string {
  const line = text.replaceAll(/\s+/g, ' ');
  return line.length > LONGEST ? `${line.slice(0, LONGEST - 1)}…` : line;
}

/** A text in quotes, short enough for one line of a message. */
export function quoted(text: string): ValueFact {
  return { fact: 'quoted', text: shortened(text) };
}

/** A value as people would name it: by its kind, by itself, or quoted. */
export function valueFact(value: unknown): ValueFact {
  if (value === undefined || value === null) return { fact: 'nothing' };
  if (typeof value === 'string') return value.trim() === '' ? { fact: 'empty-text' } : quoted(value);
  if (Array.isArray(value)) return { fact: value.length === 0 ? 'empty-list' : 'list' };
  if (typeof value === 'object') return { fact: 'map' };
  return { fact: 'literal', text: String(value) };
}

/** Asks whether the nearest of the known words was meant; null where none is near. */
export function didYouMean(word: string | null): WordFact | null {
  return word === null ? null : { fact: 'did-you-mean', word };
}
