/**
 * A small language for what JSON data must look like, in which every problem is found and has its place.
 *
 * Conventions: a shape reads a node and gives its value, or reports and gives undefined.
 */
import { nearest } from '@shedbook/core';
import { describeNode, type JsonNode } from './json.ts';

/** What is wrong at a place of the text. */
export interface ShapeFault {
  /** Index of the character that it is about. */
  readonly offset: number;
  readonly path: string;
  readonly code: 'missing' | 'unknown-key' | 'wrong-value';
  readonly found: string;
  readonly expected: string;
  readonly repair: string | null;
}

/** Reads a node. */
export type Shape<T> = (node: JsonNode, path: string, report: (fault: ShapeFault) => void) => T | undefined;

/** A plain value that passes a test. */
export function plain<T>(expected: string, read: (value: unknown) => T | undefined): Shape<T> {
  return (node, path, report) => {
    const value = node.kind === 'plain' ? read(node.value) : undefined;
    if (value === undefined) {
      const found = describeNode(node);
      report({ offset: node.offset, path, code: 'wrong-value', found, expected, repair: null });
    }
    return value;
  };
}

/** A text that is not empty. */
export const text = plain('a text', (value) =>
  typeof value === 'string' && value !== '' ? value : undefined,
);

/** A number from `least` to `most`. */
export function number(least: number, most: number, what: string): Shape<number> {
  return quantity(least, most, what, (value) => value);
}

/** A number of a unit from `least` to `most`. */
export function quantity<T extends number>(
  least: number,
  most: number,
  what: string,
  unit: (value: number) => T,
): Shape<T> {
  return plain(`${what} from ${least} to ${most}`, (value) =>
    typeof value === 'number' && value >= least && value <= most ? unit(value) : undefined,
  );
}

/** A whole number from 1. */
export const count = plain('a whole number from 1', (value) =>
  typeof value === 'number' && Number.isSafeInteger(value) && value >= 1 ? value : undefined,
);

/** One of some words. */
export function word<const W extends string>(words: readonly W[]): Shape<W> {
  return (node, path, report) => {
    const value = node.kind === 'plain' ? node.value : undefined;
    const known = words.find((each) => each === value);
    if (known !== undefined) return known;
    const near = typeof value === 'string' ? nearest(value, words) : null;
    report({
      offset: node.offset,
      path,
      code: 'wrong-value',
      found: describeNode(node),
      expected: `one of ${words.join(', ')}`,
      repair: near ? `did you mean "${near}"?` : null,
    });
    return undefined;
  };
}

/** What a shape reads, or null. */
export function orNull<T>(shape: Shape<T>): Shape<T | null> {
  return (node, path, report) =>
    node.kind === 'plain' && node.value === null ? null : shape(node, path, report);
}

/** A list; items with problems are left out. */
export function list<T>(shape: Shape<T>): Shape<readonly T[]> {
  return (node, path, report) => {
    if (node.kind !== 'array') {
      const found = describeNode(node);
      report({ offset: node.offset, path, code: 'wrong-value', found, expected: 'a list', repair: null });
      return undefined;
    }
    return node.items.flatMap((item, index) => {
      const value = shape(item, `${path}[${index}]`, report);
      return value === undefined ? [] : [value];
    });
  };
}

type Fields<T> = { readonly [K in keyof T]-?: Shape<T[K]> };

/** An object with exactly these keys; others are reported and left out. */
export function object<T extends object>(fields: Fields<T>): Shape<T> {
  const known = Object.keys(fields) as (keyof T & string)[];
  return (node, path, report) => {
    const fault = (
      offset: number,
      code: ShapeFault['code'],
      found: string,
      expected: string,
      key: string,
    ) => {
      const near = code === 'unknown-key' ? nearest(key, known) : null;
      const at = path === '' ? key : key === '' ? path : `${path}.${key}`;
      report({ offset, path: at, code, found, expected, repair: near ? `did you mean "${near}"?` : null });
    };
    if (node.kind !== 'object') {
      fault(node.offset, 'wrong-value', describeNode(node), `an object with ${known.join(', ')}`, '');
      return undefined;
    }
    let isWhole = true;
    for (const [key, value] of node.entries) {
      if (key in fields) continue;
      fault(value.offset, 'unknown-key', `unknown key "${key}"`, `one of ${known.join(', ')}`, key);
    }
    const read = known.map((key) => {
      const value = node.entries.get(key);
      if (!value) fault(node.offset, 'missing', 'nothing', 'a value', key);
      const result = value && fields[key](value, path === '' ? key : `${path}.${key}`, report);
      if (result === undefined) isWhole = false;
      return [key, result] as const;
    });
    return isWhole ? (Object.fromEntries(read) as unknown as T) : undefined;
  };
}
