/** Lines and columns of a text. */

/** Offset of a line and column, both from 1. */
export function offsetOf(text: string, line: number, column: number): number {
  const before = text.split('\n').slice(0, line - 1);
  return before.reduce((sum, each) => sum + each.length + 1, 0) + column - 1;
}
