/** What the schema of a practice log refuses, as facts with places. */
import { didYouMean, type FieldPath, nearest } from '@shedbook/core';
import type { core } from 'zod/mini';
import type { LogFact } from './log-fact.ts';
import { expectedBy } from './schema.ts';

/** What is wrong at a place of the text. */
export interface LogFault {
  /** Of the value that it is about. */
  readonly path: FieldPath;
  readonly code: 'missing' | 'unknown-key' | 'wrong-value';
  readonly found: LogFact;
  readonly expected: LogFact;
  readonly repair: LogFact | null;
}

function valueAt(root: unknown, path: FieldPath): unknown {
  return path.reduce<unknown>((value, key) => (value as Record<string | number, unknown>)[key], root);
}

/** A value as people would name it: by its kind, or as it is written, shortened to 40 characters. */
function foundFact(value: unknown): LogFact {
  if (value === undefined) return { fact: 'nothing' };
  if (Array.isArray(value)) return { fact: 'list' };
  if (typeof value === 'object' && value !== null) return { fact: 'an-object' };
  const text = typeof value === 'string' ? JSON.stringify(value) : String(value);
  return { fact: 'literal', text: text.length > 40 ? `${text.slice(0, 39)}…` : text };
}

function nearestOf(word: unknown, expected: LogFact): LogFact | null {
  if (typeof word !== 'string' || expected.fact !== 'one-of') return null;
  return didYouMean(nearest(word, expected.words));
}

/** The faults of one issue that the schema has with a value; every key that is unknown is one. */
export function faultsOf(root: unknown, issue: core.$ZodIssue): readonly LogFault[] {
  const path = issue.path as FieldPath;
  const expected = expectedBy(issue);
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) => {
      const repair = nearestOf(key, expected);
      return {
        path: [...path, key],
        code: 'unknown-key',
        found: { fact: 'unknown-key', key },
        expected,
        repair,
      };
    });
  }
  const value = valueAt(root, path);
  const found = foundFact(value);
  if (value === undefined) {
    return [{ path, code: 'missing', found, expected: { fact: 'a-value' }, repair: null }];
  }
  return [{ path, code: 'wrong-value', found, expected, repair: nearestOf(value, expected) }];
}
