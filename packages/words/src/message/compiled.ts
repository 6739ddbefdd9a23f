/** One message made ready to be filled in. */
import type { Fact } from '@shedbook/core';
import { MessageFormat } from 'messageformat';
import type { Tongue } from '../language/tongue.ts';
import { kindsOf, type Say } from './kinds.ts';

/** Fills in a message. */
export type Fill = (values: Readonly<Record<string, unknown>>) => string;

function refuse(error: unknown): never {
  throw new RangeError(`Internal error: ${error instanceof Error ? error.message : String(error)}`);
}

/**
 * A message of a language, parsed once; one without places is the text that it is. Texts of people are taken over as they are, without isolating characters,
 * since every language here runs from left to right.
 * @throws RangeError when the message is not MessageFormat 2, or, on filling it in, when a value is missing
 */
export function compile(message: string, tongue: Tongue, say: Say<Fact>): Fill {
  if (!message.includes('{')) return () => message;
  const functions = kindsOf(tongue, say);
  const format = new MessageFormat(tongue.locale, message, { functions, bidiIsolation: 'none' });
  return (values) => format.format(values, refuse);
}
