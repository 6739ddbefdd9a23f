/**
 * Breaking text into lines that fit.
 *
 * Conventions: lines break at white space and written line breaks; a word wider than the line breaks between
 * graphemes. What does not fit in the lines allowed ends in an ellipsis.
 */
import { type Fonts, graphemes, type Weight } from './fonts.ts';

/** How a text is set. */
export interface TextStyle {
  readonly weight: Weight;
  readonly sizeMm: number;
}

/** Control characters and line separators have no place in a line of print. */
function clean(text: string): string {
  return text.replaceAll(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u2028\u2029\ufeff]/g, ' ');
}

/** The longest start of a word that fits, at least one grapheme. */
function splitWord(word: string, fits: (text: string) => boolean): readonly [string, string] {
  const parts = graphemes(word);
  let [low, high] = [1, parts.length];
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (fits(parts.slice(0, middle).join(''))) low = middle;
    else high = middle - 1;
  }
  return [parts.slice(0, low).join(''), parts.slice(low).join('')];
}

function wrapParagraph(text: string, fits: (text: string) => boolean): string[] {
  const lines: string[] = [];
  let line = '';
  for (let word of text.split(/\s+/).filter(Boolean)) {
    if (line !== '' && fits(`${line} ${word}`)) {
      line = `${line} ${word}`;
      continue;
    }
    if (line !== '') lines.push(line);
    while (word !== '' && !fits(word)) {
      const [head, rest] = splitWord(word, fits);
      if (rest === '') break;
      lines.push(head);
      word = rest;
    }
    line = word;
  }
  if (line !== '') lines.push(line);
  return lines;
}

/** The start of a text that fits with an ellipsis after it. */
function ellipsize(text: string, fits: (text: string) => boolean): string {
  const [head] = splitWord(text, (part) => fits(`${part}…`));
  return `${head.trimEnd()}…`;
}

/** The lines of a text in a width, at most `maxLines`. */
export function wrapText(
  fonts: Fonts,
  text: string,
  style: TextStyle,
  widthMm: number,
  maxLines = Infinity,
): readonly string[] {
  const fits = (part: string) => fonts.widthMm(part, style.weight, style.sizeMm) <= widthMm;
  const lines = clean(text)
    .split('\n')
    .flatMap((paragraph) => wrapParagraph(paragraph, fits));
  if (lines.length <= maxLines) return lines;
  const kept = lines.slice(0, maxLines);
  const last = kept.pop() as string;
  return [...kept, fits(`${last}…`) ? `${last}…` : ellipsize(last, fits)];
}
