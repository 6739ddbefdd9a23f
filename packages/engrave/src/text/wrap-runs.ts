/**
 * Breaking text of several styles into lines that fit.
 *
 * Conventions: lines break at white space, where no run need end; a word wider than the line breaks between
 * graphemes. Widths in millimetres.
 */
import { type Fonts, graphemes } from './fonts.ts';
import { inStretches, type TextStyle } from './wrap.ts';

/** Words in one style. */
export interface StyledText {
  readonly text: string;
  readonly style: TextStyle;
}

/** Something that has no break in it: pieces of one word. */
type Word = readonly StyledText[];

/** Words with nothing between their pieces, in order. */
function wordsOf(runs: readonly StyledText[]): readonly Word[] {
  const words: StyledText[][] = [];
  let isOpen = false;
  for (const { text, style } of runs) {
    for (const piece of text.split(/(\s+)/).filter((each) => each !== '')) {
      const isSpace = piece.trim() === '';
      if (!isSpace && isOpen) words.at(-1)?.push({ text: piece, style });
      else if (!isSpace) words.push([{ text: piece, style }]);
      isOpen = !isSpace;
    }
  }
  return words;
}

/** A word as words that fit. */
function pieces(word: Word, fits: (line: Word) => boolean): readonly Word[] {
  if (fits(word)) return [word];
  const letters = word.flatMap(({ text, style }) => graphemes(text).map((each) => ({ text: each, style })));
  return inStretches(letters, fits);
}

function isSameStyle(a: TextStyle, b: TextStyle): boolean {
  return a.weight === b.weight && a.sizeMm === b.sizeMm;
}

/** Pieces of one style as one. */
function joined(line: Word): readonly StyledText[] {
  const all: StyledText[] = [];
  for (const piece of line) {
    const last = all.at(-1);
    if (last && isSameStyle(last.style, piece.style)) {
      all[all.length - 1] = { ...last, text: last.text + piece.text };
    } else all.push(piece);
  }
  return all;
}

/** How wide pieces of text are beside each other, in millimetres. */
export function widthOfRuns(fonts: Fonts, line: readonly StyledText[]): number {
  return joined(line).reduce(
    (sum, { text, style }) => sum + fonts.widthMm(text, style.weight, style.sizeMm),
    0,
  );
}

/** The lines of a text in a width, each in pieces of one style; a space belongs to the words before it. */
export function wrapRuns(
  fonts: Fonts,
  runs: readonly StyledText[],
  widthMm: number,
): readonly (readonly StyledText[])[] {
  const fits = (line: Word) => widthOfRuns(fonts, line) <= widthMm;
  const lines: StyledText[][] = [];
  for (const word of wordsOf(runs)) {
    const line = lines.at(-1);
    const space = line && { text: ' ', style: (line.at(-1) as StyledText).style };
    if (line && space && fits([...line, space, ...word])) line.push(space, ...word);
    else lines.push(...pieces(word, fits).map((piece) => [...piece]));
  }
  return lines.map(joined);
}
