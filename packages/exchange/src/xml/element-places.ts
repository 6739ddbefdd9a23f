/**
 * Line and column of every element of a well-formed XML text, in document order: the parser knows lines only.
 *
 * Conventions: lines and columns count from 1; a column counts UTF-16 code units. A line ends with LF, CR LF or CR,
 * as in XML 1.0, section 2.11.
 * Source: XML 1.0, fifth edition: what is skipped are comments, CDATA sections, processing instructions and the
 * document type with its internal subset.
 */

/** A place in a text. */
export interface TextPlace {
  readonly line: number;
  readonly column: number;
}

const DOCUMENT_TYPE = /<!DOCTYPE(?:[^[\]<>"']|"[^"]*"|'[^']*'|\[(?:[^\]"']|"[^"]*"|'[^']*')*\])*>/;
const MARKUP = new RegExp(
  `<!--[\\s\\S]*?-->|<!\\[CDATA\\[[\\s\\S]*?\\]\\]>|<\\?[\\s\\S]*?\\?>|${DOCUMENT_TYPE.source}|<([^\\s/>!?]+)(?:[^<>"']|"[^"]*"|'[^']*')*>`,
  'g',
);

function lineStarts(text: string): readonly number[] {
  return [0, ...[...text.matchAll(/\r\n|\r|\n/g)].map((match) => match.index + match[0].length)];
}

/** The places of all start tags in order. */
export function elementPlaces(text: string): readonly TextPlace[] {
  const starts = lineStarts(text);
  let line = 0;
  const places: TextPlace[] = [];
  for (const match of text.matchAll(MARKUP)) {
    if (match[1] === undefined) continue;
    while ((starts[line + 1] ?? Number.POSITIVE_INFINITY) <= match.index) line += 1;
    places.push({ line: line + 1, column: match.index - (starts[line] as number) + 1 });
  }
  return places;
}
