/**
 * Lines and columns of a text.
 *
 * Conventions: lines and columns count from 1; a column counts UTF-16 code units. A line ends with LF, CR LF or CR
 * (XML 1.0, 2.11).
 */

/** A place in a text. */
export interface TextPlace {
  /** From 1. */
  readonly line: number;
  /** From 1, in UTF-16 code units. */
  readonly column: number;
}

/**
 * Gives the places of offsets (UTF-16 code units from 0), which must ascend from call to call.
 * @example textPlaces('ab\ncd')(4) // { line: 2, column: 2 }
 */
export function textPlaces(text: string): (offset: number) => TextPlace {
  const lineEnd = /\r\n?|\n/g;
  let [line, start] = [1, 0];
  let next = 0;
  const advance = () => {
    start = next;
    next = lineEnd.test(text) ? lineEnd.lastIndex : Number.POSITIVE_INFINITY;
  };
  advance();
  return (offset) => {
    for (; next <= offset; line += 1) advance();
    return { line, column: offset - start + 1 };
  };
}
