/**
 * JSON with places: every value knows where it stands in the text, so that a problem can be pointed at.
 *
 * Conventions: offsets in UTF-16 code units from 0. Numbers and strings are read by the language's own JSON.parse.
 * Source: RFC 8259. Differs from the source: a key that stands twice in one object is refused.
 */

import type { LogFact } from './log-fact.ts';

/** A value and where it stands: the index of its first character. */
export type JsonNode = { /** Index of its first character. */ readonly offset: number } & (
  | { readonly kind: 'object'; readonly entries: ReadonlyMap<string, JsonNode> }
  | { readonly kind: 'array'; readonly items: readonly JsonNode[] }
  | { readonly kind: 'plain'; readonly value: string | number | boolean | null }
);

/** What is wrong with a text that is not JSON. */
export interface JsonFault {
  /** Index of the character that it is about. */
  readonly offset: number;
  readonly found: LogFact;
  readonly expected: LogFact;
}

/** Deeper nesting than any log has; deeper texts are refused. */
const DEEPEST = 64;

const SPACE = /[ \t\n\r]*/y;
const STRING = /"(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"/y;
const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const WORD = /true|false|null/y;

/** Thrown inside the reader only. */
class JsonSyntaxError extends Error {
  readonly fault: JsonFault;
  constructor(fault: JsonFault) {
    super(`Internal error: ${fault.expected.fact} at character ${fault.offset}`);
    this.fault = fault;
  }
}

class Reader {
  private at = 0;
  private readonly text: string;

  constructor(text: string) {
    this.text = text;
  }

  private fail(expected: LogFact): never {
    const next = this.text.charAt(this.at);
    const found: LogFact =
      next === '' ? { fact: 'file-end' } : { fact: 'literal', text: JSON.stringify(next) };
    throw new JsonSyntaxError({ offset: this.at, found, expected });
  }

  /** Takes what matches here, or null. */
  private take(pattern: RegExp): string | null {
    pattern.lastIndex = this.at;
    const found = pattern.exec(this.text)?.[0] ?? null;
    this.at += found?.length ?? 0;
    return found;
  }

  private skip(character: string): boolean {
    this.take(SPACE);
    if (this.text.charAt(this.at) !== character) return false;
    this.at += 1;
    return true;
  }

  /** Items up to `close`, separated by commas. */
  private list(close: string, item: () => void): void {
    if (this.skip(close)) return;
    do item();
    while (this.skip(','));
    if (!this.skip(close)) this.fail({ fact: 'characters', characters: [`","`, `"${close}"`] });
  }

  private member(entries: Map<string, JsonNode>, depth: number): void {
    this.take(SPACE);
    const offset = this.at;
    const key = this.take(STRING);
    if (key === null) this.fail({ fact: 'key-in-quotes' });
    const name = JSON.parse(key) as string;
    if (entries.has(name)) {
      throw new JsonSyntaxError({
        offset,
        found: { fact: 'key-twice', key },
        expected: { fact: 'each-key-once' },
      });
    }
    if (!this.skip(':')) this.fail({ fact: 'characters', characters: ['":"'] });
    entries.set(name, this.value(depth + 1));
  }

  value(depth: number): JsonNode {
    this.take(SPACE);
    const offset = this.at;
    if (depth > DEEPEST) this.fail({ fact: 'levels-at-most', levels: DEEPEST });
    if (this.skip('{')) {
      const entries = new Map<string, JsonNode>();
      this.list('}', () => this.member(entries, depth));
      return { kind: 'object', offset, entries };
    }
    if (this.skip('[')) {
      const items: JsonNode[] = [];
      this.list(']', () => items.push(this.value(depth + 1)));
      return { kind: 'array', offset, items };
    }
    const plain = this.take(STRING) ?? this.take(NUMBER) ?? this.take(WORD);
    if (plain === null) this.fail({ fact: 'a-value' });
    return { kind: 'plain', offset, value: JSON.parse(plain) as string | number | boolean | null };
  }

  end(): void {
    this.take(SPACE);
    if (this.at < this.text.length) this.fail({ fact: 'file-end' });
  }
}

/** The value that a JSON text holds, or its first fault. */
export function readJson(text: string): { readonly node: JsonNode } | { readonly fault: JsonFault } {
  const reader = new Reader(text);
  try {
    const node = reader.value(0);
    reader.end();
    return { node };
  } catch (error) {
    if (error instanceof JsonSyntaxError) return { fault: error.fault };
    throw error;
  }
}

/** A value as people would name it: by its kind, or as it is written, shortened to 40 characters. */
export function nodeFact(node: JsonNode): LogFact {
  if (node.kind === 'object') return { fact: 'an-object' };
  if (node.kind === 'array') return { fact: 'list' };
  const text = JSON.stringify(node.value);
  return { fact: 'literal', text: text.length > 40 ? `${text.slice(0, 39)}…` : text };
}
