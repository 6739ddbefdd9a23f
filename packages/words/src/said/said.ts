/**
 * What the rooms under the desk say about a lesson, in the reader's language. They say it in English; a table
 * has each of their phrases beside its translation, as a gettext catalogue has.
 *
 * Conventions: `{name}` stands for any text, which is taken over, and `{name!}` for one without spaces; `{name~}`
 * for a phrase; `{name*}` for a list joined by commas and "and", each of whose members is a phrase.
 */

/** An English phrase and its translation, with the same places to fill. */
export type Phrase = readonly [english: string, translated: string];

/** Phrases of a language, and the word that joins the last two members of a list. */
export interface SaidTable {
  readonly and: string;
  readonly phrases: readonly Phrase[];
}

interface Matcher {
  readonly pattern: RegExp;
  readonly names: readonly string[];
  readonly translated: string;
}

const PLACE = /\{(\w+[*!~]?)\}/g;

function escaped(text: string): string {
  return text.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&');
}

function matcherOf([english, translated]: Phrase): Matcher {
  const names = [...english.matchAll(PLACE)].map((each) => each[1] as string);
  const parts = english.split(/\{\w+[*!~]?\}/).map(escaped);
  const pattern = parts.reduce((before, part, index) => {
    const place = names[index - 1]?.endsWith('!') ? '(\\S+?)' : '(.+?)';
    return `${before}${place}${part}`;
  });
  return { pattern: new RegExp(`^${pattern}$`, 's'), names, translated };
}

/** A text that says the same in every language: a quotation, a number, a name in the file's own words. */
const UNIVERSAL = /^("[^"]*"|[-+±]?[\d.,:/]+|[a-z-]+)$/;

/** Says phrases in a language. */
export class Translator {
  readonly #and: string;
  readonly #matchers: readonly Matcher[];

  constructor({ and, phrases }: SaidTable) {
    this.#and = and;
    this.#matchers = phrases.map(matcherOf);
  }

  /** The phrase in the language, or null when the table does not have it. */
  find(english: string): string | null {
    for (const { pattern, names, translated } of this.#matchers) {
      const match = pattern.exec(english);
      if (!match) continue;
      const filled = new Map(names.map((name, index) => [name, this.#fill(name, match[index + 1] ?? '')]));
      return translated.replaceAll(PLACE, (_, name: string) => filled.get(name) ?? '');
    }
    return UNIVERSAL.test(english) ? english : null;
  }

  /** The phrase in the language; in English where the table does not have it. */
  say(english: string): string {
    return this.find(english) ?? english;
  }

  #fill(name: string, text: string): string {
    if (name.endsWith('~')) return this.say(text);
    if (!name.endsWith('*')) return text;
    const members = text.split(/, | and /).map((member) => this.say(member));
    if (members.length === 1) return members[0] ?? '';
    const joined = text.includes(' and ') ? this.#and : ', ';
    return `${members.slice(0, -1).join(', ')}${joined}${members.at(-1)}`;
  }
}
