/**
 * A small language for what JSON data must look like, in which every problem is found and has its place.
 *
 * Conventions: a shape reads a node and gives its value, or reports and gives undefined.
 */
import { didYouMean, nearest } from '@shedbook/core';
import { type JsonNode, nodeFact } from './json.ts';
import type { LogFact, LogRangeFact } from './log-fact.ts';

/** What is wrong at a place of the text. */
export interface ShapeFault {
  /** Index of the character that it is about. */
  readonly offset: number;
  readonly path: string;
  readonly code: 'missing' | 'unknown-key' | 'wrong-value';
  readonly found: LogFact;
  readonly expected: LogFact;
  readonly repair: LogFact | null;
}

/** Reads a node. */
export type Shape<T> = (node: JsonNode, path: string, report: (fault: ShapeFault) => void) => T | undefined;

/** A plain value that passes a test. */
export function plain<T>(expected: LogFact, read: (value: unknown) => T | undefined): Shape<T> {
  return (node, path, report) => {
    const value = node.kind === 'plain' ? read(node.value) : undefined;
    if (value === undefined) {
      const found = nodeFact(node);
      report({ offset: node.offset, path, code: 'wrong-value', found, expected, repair: null });
    }
    return value;
  };
}

/** A text that is not empty. */
export const text = plain({ fact: 'a-text' }, (value) =>
  typeof value === 'string' && value !== '' ? value : undefined,
);

/** A number from `least` to `most`. */
export function number(least: number, most: number, what: LogRangeFact['fact']): Shape<number> {
  return quantity(least, most, what, (value) => value);
}

/** A number of a unit from `least` to `most`. */
export function quantity<T extends number>(
  least: number,
  most: number,
  what: LogRangeFact['fact'],
  unit: (value: number) => T,
): Shape<T> {
  return plain({ fact: what, least, most }, (value) =>
    typeof value === 'number' && value >= least && value <= most ? unit(value) : undefined,
  );
}

/** A whole number from 1. */
export const count = plain({ fact: 'count-from-one' }, (value) =>
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
      found: nodeFact(node),
      expected: { fact: 'one-of', words },
      repair: didYouMean(near),
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
      const found = nodeFact(node);
      const expected = { fact: 'list' } as const;
      report({ offset: node.offset, path, code: 'wrong-value', found, expected, repair: null });
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
      found: LogFact,
      expected: LogFact,
      key: string,
    ) => {
      const near = code === 'unknown-key' ? nearest(key, known) : null;
      const at = path === '' ? key : key === '' ? path : `${path}.${key}`;
      report({ offset, path: at, code, found, expected, repair: didYouMean(near) });
    };
    if (node.kind !== 'object') {
      fault(node.offset, 'wrong-value', nodeFact(node), { fact: 'object-with', keys: known }, '');
      return undefined;
    }
    let isWhole = true;
    for (const [key, value] of node.entries) {
      if (key in fields) continue;
      fault(value.offset, 'unknown-key', { fact: 'unknown-key', key }, { fact: 'one-of', words: known }, key);
    }
    const read = known.map((key) => {
      const value = node.entries.get(key);
      if (!value) fault(node.offset, 'missing', { fact: 'nothing' }, { fact: 'a-value' }, key);
      const result = value && fields[key](value, path === '' ? key : `${path}.${key}`, report);
      if (result === undefined) isWhole = false;
      return [key, result] as const;
    });
    return isWhole ? (Object.fromEntries(read) as unknown as T) : undefined;
  };
}
