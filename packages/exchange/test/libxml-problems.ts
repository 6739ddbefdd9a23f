/** Faults that libxml2 finds, as problems of a person's file. */
import type { InputProblem } from '@shedbook/core';
import type { XmlLibError } from 'libxml2-wasm';
import type { XmlFact } from '../src/xml/xml-fact.ts';

/** Every fault of an error, at its line and column. */
export function libxmlProblems(
  error: XmlLibError,
  file: string,
  { code, expected }: Pick<InputProblem<XmlFact>, 'code' | 'expected'>,
): readonly InputProblem<XmlFact>[] {
  return error.details.map(({ line, col, message }) => ({
    code,
    severity: 'error',
    file,
    line: Math.max(1, line),
    column: Math.max(1, col),
    path: '',
    found: { fact: 'xml-parser', message: message.trim() },
    expected,
    repair: null,
  }));
}
