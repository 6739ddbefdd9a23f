/**
 * What the schema expects, as facts. Zod's messages are texts, so a fact of the schema travels in one as JSON; what
 * Zod says of itself is turned into facts by the code of its issue.
 */
import type * as z from 'zod/mini';
import type { ExpectedFact } from './lesson-fact.ts';

type Issue = z.core.$ZodIssue;

/** The message of a schema that expects something. */
export function expecting(fact: ExpectedFact): string {
  return JSON.stringify(fact);
}

function written(message: string): ExpectedFact | null {
  return message.startsWith('{') ? (JSON.parse(message) as ExpectedFact) : null;
}

const OF_TYPE: Readonly<Record<string, ExpectedFact>> = {
  boolean: { fact: 'true-or-false' },
  number: { fact: 'a-number' },
  int: { fact: 'a-whole-number' },
  string: { fact: 'a-text' },
  array: { fact: 'list' },
  object: { fact: 'map' },
  record: { fact: 'map' },
};

function ofIssue(issue: Issue): ExpectedFact {
  const other: ExpectedFact = { fact: 'another-value' };
  if (issue.code === 'invalid_type') return OF_TYPE[issue.expected] ?? other;
  if (issue.code === 'invalid_value') return { fact: 'one-of', words: issue.values.map(String) };
  if (issue.code === 'too_small') {
    return { fact: issue.inclusive === false ? 'more-than' : 'at-least', bound: Number(issue.minimum) };
  }
  if (issue.code === 'too_big') {
    return { fact: issue.inclusive === false ? 'less-than' : 'at-most', bound: Number(issue.maximum) };
  }
  const [inside] = issue.code === 'invalid_key' ? issue.issues : [];
  return inside ? expectedBy(inside) : other;
}

/** What was expected where the schema has an issue. */
export function expectedBy(issue: Issue): ExpectedFact {
  return written(issue.message) ?? ofIssue(issue);
}
