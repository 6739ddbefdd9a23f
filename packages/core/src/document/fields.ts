/** Fields of documents as people write them: kinds of values with what is expected of each, as facts. */
import * as z from 'zod/mini';
import { expecting } from '../lesson/expecting.ts';
import type { FieldFact, RangeFact } from '../lesson/lesson-fact.ts';

/**
 * UTF-16 code units of a line, a text, an address and a pattern at most. An address is printed as a code that a phone
 * reads off paper: 300 characters are 77 modules a side at level M (ISO/IEC 18004, version 15), 0.4 mm each in 32 mm.
 */
export const LONGEST = { line: 200, text: 10_000, address: 300, pattern: 10_000 } as const;

/** Items of a lesson, of a vocabulary or a book, and of anything smaller at most. */
export const MOST = { exercises: 1000, cells: 500, few: 100 } as const;

/** Facts that are fully told by their name. */
export type Named = FieldFact['fact'];

type RangeName = RangeFact['fact'];

/** What is expected of a field, told by its name alone. */
export function named(fact: Named): string {
  return expecting({ fact });
}

function atMost(most: number): string {
  return expecting({ fact: 'characters-up-to', most });
}

/** A text of so many characters at most, white space round it taken off. */
export function text(expected: Named, most: number = LONGEST.line) {
  const error = named(expected);
  return z
    .string({ error })
    .check(z.trim(), z.minLength(1, { error }), z.maxLength(most, { error: atMost(most) }));
}

/** A list of so many items at most. */
export function list<S extends z.ZodMiniType>(item: S, expected: Named, most: number) {
  const error = expecting({ fact: 'items-up-to', most });
  return z.array(item, { error: named(expected) }).check(z.maxLength(most, { error }));
}

/** A whole number between two bounds. */
export function whole(least: number, most: number, what: RangeName) {
  const error = expecting({ fact: what, least, most });
  return z.int({ error }).check(z.minimum(least, { error }), z.maximum(most, { error }));
}

/** A number between two bounds. */
export function decimal(least: number, most: number, what: RangeName) {
  const error = expecting({ fact: what, least, most });
  return z.number({ error }).check(z.minimum(least, { error }), z.maximum(most, { error }));
}

/** One of some words. */
export function oneOf<const T extends readonly [string, ...string[]]>(values: T) {
  return z.enum(values, { error: expecting({ fact: 'one-of', words: values }) });
}

/** An address on the web that a browser can open. */
export function webAddress() {
  const error = named('a-web-address');
  return z.string({ error }).check(
    z.trim(),
    z.maxLength(LONGEST.address, { error: atMost(LONGEST.address) }),
    z.refine((address) => /^https?:\/\/[^\s/]+\S*$/.test(address), { error }),
  );
}

/** True or false. */
export function yesNo() {
  return z.boolean({ error: named('true-or-false') });
}

/** What is expected where a map of known keys should be; unknown keys are told one by one. */
export function map(what: Named) {
  return (issue: { readonly code?: string }) =>
    issue.code === 'unrecognized_keys' ? undefined : named(what);
}
