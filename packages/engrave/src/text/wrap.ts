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

/**
 * How many of some parts fit, from the one at `from` on, at least one. It doubles before it halves, so that a word
 * however long is never measured much beyond what fits.
 */
export function countThatFit<Part>(
  parts: readonly Part[],
  from: number,
  fits: (parts: readonly Part[]) => boolean,
): number {
  const left = parts.length - from;
  const fitting = (count: number) => fits(parts.slice(from, from + count));
  let [low, high] = [1, 2];
  while (high < left && fitting(high)) [low, high] = [high, 2 * high];
  high = Math.min(high, left);
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (fitting(middle)) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Parts in stretches that fit, each of one part at least. */
export function inStretches<Part>(
  parts: readonly Part[],
  fits: (parts: readonly Part[]) => boolean,
): readonly (readonly Part[])[] {
  const stretches: (readonly Part[])[] = [];
  for (let from = 0; from < parts.length; ) {
    const count = countThatFit(parts, from, fits);
    stretches.push(parts.slice(from, from + count));
    from += count;
  }
  return stretches;
}

function wrapParagraph(text: string, fits: (text: string) => boolean): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).filter(Boolean)) {
    if (line !== '' && fits(`${line} ${word}`)) {
      line = `${line} ${word}`;
      continue;
    }
    if (line !== '') lines.push(line);
    const pieces = inStretches(graphemes(word), (parts) => fits(parts.join('')));
    lines.push(...pieces.slice(0, -1).map((parts) => parts.join('')));
    line = pieces.at(-1)?.join('') ?? '';
  }
  if (line !== '') lines.push(line);
  return lines;
}

/** The start of a text that fits with an ellipsis after it. */
function ellipsize(text: string, fits: (text: string) => boolean): string {
  const parts = graphemes(text);
  const count = countThatFit(parts, 0, (start) => fits(`${start.join('')}…`));
  return `${parts.slice(0, count).join('').trimEnd()}…`;
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
