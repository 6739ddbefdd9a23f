/** Faults that libxml2 finds, as problems of a person's file. */
import type { InputProblem } from '@shedbook/core';
import type { XmlLibError } from 'libxml2-wasm';

/** Every fault of an error, at its line and column. */
export function libxmlProblems(
  error: XmlLibError,
  file: string,
  { code, expected }: Pick<InputProblem, 'code' | 'expected'>,
): readonly InputProblem[] {
  return error.details.map(({ line, col, message }) => ({
    code,
    severity: 'error',
    file,
    line: Math.max(1, line),
    column: Math.max(1, col),
    path: '',
    found: message.trim(),
    expected,
    repair: null,
  }));
}
