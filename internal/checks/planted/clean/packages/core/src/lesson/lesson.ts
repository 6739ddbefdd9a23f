import { parse } from 'yaml';
import type { Fraction } from '../rhythm/fraction.ts';

/** The title of a lesson, and the length that every lesson has. */
export function readTitle(text: string): [string, Fraction | null] {
  const process = parse(text);
  return [process.document, null];
}
