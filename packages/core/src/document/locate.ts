/**
 * Where a field of a YAML document stands in its text.
 *
 * Conventions: lines and columns from 1; a path lists keys and indices from the root.
 */
import {
  type Document,
  isMap,
  isScalar,
  isSeq,
  type LineCounter,
  type Node,
  type Pair,
  type Scalar,
  type YAMLMap,
} from 'yaml';
import type { FieldPath } from './field-path.ts';

/** A place in a text, from 1. */
export interface Place {
  readonly line: number;
  readonly column: number;
}

interface Found {
  readonly node: Node;
  /** The pair whose value `node` is, where it is one. */
  readonly pair: Pair<Node, Node | null> | null;
}

function keyText(pair: Pair): string {
  return isScalar(pair.key) ? String(pair.key.value) : '';
}

/** The pairs of the maps that were looked into, by key: a map with thousands of faults is looked through once. */
type Known = WeakMap<Node, ReadonlyMap<string, Pair<Node, Node | null>>>;

function pairsOf(map: YAMLMap, known: Known): ReadonlyMap<string, Pair<Node, Node | null>> {
  const before = known.get(map);
  if (before) return before;
  const pairs = new Map((map.items as Pair<Node, Node | null>[]).map((pair) => [keyText(pair), pair]));
  known.set(map, pairs);
  return pairs;
}

function step(from: Node, key: string | number, known: Known): Found | null {
  if (isMap(from)) {
    const pair = pairsOf(from, known).get(String(key));
    return pair ? { node: pair.value ?? pair.key, pair } : null;
  }
  if (isSeq(from) && typeof key === 'number') {
    const item = from.items[key] as Node | undefined;
    return item ? { node: item, pair: null } : null;
  }
  return null;
}

/** The deepest node of a path that exists. */
function deepest(document: Document, path: FieldPath, known: Known): Found | null {
  let found: Found | null = document.contents ? { node: document.contents as Node, pair: null } : null;
  for (const key of path) {
    const next: Found | null = found ? step(found.node, key, known) : null;
    if (!next) return found;
    found = next;
  }
  return found;
}

/**
 * Offset in the text of character `offset` of a literal block: its lines begin under its head, each set in as far as
 * the first one. Source: YAML 1.2.2, 8.1.1 and 8.1.2.
 */
function literalOffset(text: string, { range, value }: Scalar<string>, offset: number): number {
  const before = value.slice(0, offset).split('\n');
  const lines = text.slice(range?.[0] ?? 0).split('\n');
  const indent = /^ */.exec(lines.slice(1).find((line) => line.trim() !== '') ?? '')?.[0].length ?? 0;
  const skipped = lines.slice(0, before.length).reduce((sum, line) => sum + line.length + 1, 0);
  return (range?.[0] ?? 0) + skipped + indent + (before.at(-1)?.length ?? 0);
}

/** Offset in the text of character `offset` of a scalar: exact where the text holds it letter by letter. */
function scalarOffset(text: string, node: Node, offset: number): number {
  const start = node.range?.[0] ?? 0;
  if (!isScalar(node) || typeof node.value !== 'string') return start;
  if (node.type === 'BLOCK_LITERAL') return literalOffset(text, node as Scalar<string>, offset);
  const quoted = text[start] === '"' || text[start] === "'" ? 1 : 0;
  return text.startsWith(node.value, start + quoted) ? start + quoted + offset : start;
}

/** Finds places in one document. */
export interface Locator {
  /** Place of a field's value (or of the deepest part of the path that exists), `offset` characters in. */
  value(path: FieldPath, offset?: number): Place;
  /** Place of a field's key. */
  key(path: FieldPath): Place;
}

/** A locator for a parsed document and the text and line counter that it was parsed with. */
export function createLocator(document: Document, text: string, lines: LineCounter): Locator {
  const place = (offset: number): Place => {
    const { line, col } = lines.linePos(offset);
    return { line: Math.max(1, line), column: Math.max(1, col) };
  };
  const known: Known = new WeakMap();
  return {
    value: (path, offset = 0) => {
      const found = deepest(document, path, known);
      return found ? place(scalarOffset(text, found.node, offset)) : { line: 1, column: 1 };
    },
    key: (path) => {
      const found = deepest(document, path, known);
      return found ? place((found.pair?.key ?? found.node).range?.[0] ?? 0) : { line: 1, column: 1 };
    },
  };
}
