/**
 * JSON with places: what a text says, where it breaks, and where each of its values stands.
 *
 * Conventions: offsets in UTF-16 code units from 0; a path lists keys and indices (from 0) from the root.
 * Source: RFC 8259. Differs from the source: a key that stands twice in one object is refused.
 */
import type { FieldPath } from '@shedbook/core';
import { type JSONVisitor, type Node, parseTree, visit } from 'jsonc-parser';
import type { LogFact } from './log-fact.ts';

/** What is wrong with a text that is not JSON. */
export interface JsonFault {
  /** Index of the character that it is about. */
  readonly offset: number;
  readonly found: LogFact;
  readonly expected: LogFact;
}

/** Deeper nesting than any log has; deeper texts are refused. */
const DEEPEST = 64;

/** Thrown inside this file only. */
class JsonSyntaxError extends Error {
  readonly fault: JsonFault;
  constructor(offset: number, found: LogFact, expected: LogFact) {
    super(`Internal error: ${expected.fact} at character ${offset}`);
    this.fault = { offset, found, expected };
  }
}

/** An object or a list that is still open. */
interface Open {
  readonly close: '}' | ']';
  /** The keys of an object so far. */
  readonly keys: Set<string>;
}

/** Throws at the first fault. What is expected there follows from what was read last. */
class Strict implements JSONVisitor {
  private readonly text: string;
  private readonly open: Open[] = [];
  private next: LogFact = { fact: 'a-value' };

  constructor(text: string) {
    this.text = text;
  }

  private fail(offset: number, expected: LogFact): never {
    const character = this.text.charAt(offset);
    const found: LogFact =
      character === '' ? { fact: 'file-end' } : { fact: 'literal', text: JSON.stringify(character) };
    throw new JsonSyntaxError(offset, found, expected);
  }

  private begin(offset: number, close: Open['close'], next: LogFact): void {
    if (this.open.length > DEEPEST) this.fail(offset, { fact: 'levels-at-most', levels: DEEPEST });
    this.open.push({ close, keys: new Set() });
    this.next = next;
  }

  /** After a value. */
  private after(): void {
    const open = this.open.at(-1);
    this.next = open ? { fact: 'characters', characters: ['","', `"${open.close}"`] } : { fact: 'file-end' };
  }

  onObjectBegin = (offset: number) => this.begin(offset, '}', { fact: 'key-in-quotes' });
  onArrayBegin = (offset: number) => this.begin(offset, ']', { fact: 'a-value' });
  onLiteralValue = () => this.after();
  onError = (_: number, offset: number) => this.fail(offset, this.next);

  onObjectProperty = (key: string, offset: number, length: number) => {
    const { keys } = this.open.at(-1) as Open;
    if (keys.has(key)) {
      const found = { fact: 'key-twice', key: this.text.slice(offset, offset + length) } as const;
      throw new JsonSyntaxError(offset, found, { fact: 'each-key-once' });
    }
    keys.add(key);
    this.next = { fact: 'characters', characters: ['":"'] };
  };

  onSeparator = (character: string) => {
    const isKeyNext = character === ',' && this.open.at(-1)?.close === '}';
    this.next = { fact: isKeyNext ? 'key-in-quotes' : 'a-value' };
  };

  private readonly end = () => {
    this.open.pop();
    this.after();
  };
  onObjectEnd = this.end;
  onArrayEnd = this.end;
}

/** The value that a JSON text holds, or its first fault. */
export function readJson(text: string): { readonly value: unknown } | { readonly fault: JsonFault } {
  try {
    visit(text, new Strict(text), { disallowComments: true });
  } catch (error) {
    if (error instanceof JsonSyntaxError) return { fault: error.fault };
    throw error;
  }
  return { value: JSON.parse(text) as unknown };
}

function childrenOf({ type, children = [] }: Node): ReadonlyMap<string | number, Node> {
  if (type === 'array') return new Map(children.entries());
  return new Map(children.map(({ children: [key, value] = [] }) => [key?.value, value as Node]));
}

/** Finds where values of a JSON text begin; of what there is not, the nearest thing around it. */
export function jsonOffsets(text: string): (path: FieldPath) => number {
  const root = parseTree(text) as Node;
  const known = new Map<Node, ReadonlyMap<string | number, Node>>();
  const step = (from: Node, key: string | number) => {
    const children = known.get(from) ?? childrenOf(from);
    known.set(from, children);
    return children.get(key) ?? from;
  };
  return (path) => path.reduce(step, root).offset;
}
