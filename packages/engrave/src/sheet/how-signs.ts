/** How limbs play, as it is printed: small signs and the words beside them. */
import {
  HOW_SIGN_BOX,
  HOW_SIGN_STROKE,
  HOW_SIGNS,
  type How,
  type HowByVoice,
  type HowWord,
  howEntries,
  howWords,
  isHowWord,
  type Voice,
} from '@shedbook/core';
import type { Drawing } from '../svg/drawing.ts';
import { readSvg } from '../svg/read-svg.ts';
import { ASCENT, DESCENT, type Fonts } from '../text/fonts.ts';
import type { SheetContext } from './context.ts';
import { allMoved, type Block, type Item, type PictureItem } from './item.ts';
import { setColumn, style } from './setting.ts';
import type { SheetWords } from './sheet-words.ts';

const { width, height } = HOW_SIGN_BOX;

/** Height of a sign beside text, in millimetres. */
export const SIGN_MM = 3.4;
const SIGN_WIDTH_MM = (SIGN_MM * width) / height;
const SIGN_GAP_MM = 1.4;
/** Size of words for how a limb plays, in millimetres. */
export const HOW_MM = 3.7;

function drawingOf(word: HowWord): Drawing {
  const { lines, filled } = HOW_SIGNS[word];
  return readSvg(
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}">` +
      `<path d="${lines}" fill="none" stroke="currentColor" stroke-width="${HOW_SIGN_STROKE}"/>` +
      `<path d="${filled}"/></svg>`,
  );
}

/** The sign of a word with its upper left corner at (x, y), in millimetres. */
export function howSign(word: HowWord, x: number, y: number): PictureItem {
  return { kind: 'picture', x, y, width: SIGN_WIDTH_MM, height: SIGN_MM, drawing: drawingOf(word) };
}

/** The signs of some words side by side; those that have one. */
export function howSigns(how: How): Block {
  const words = howWords(how);
  const items = words.map((word, index) => howSign(word, index * (SIGN_WIDTH_MM + SIGN_GAP_MM), 0));
  const widthMm = words.length === 0 ? 0 : words.length * (SIGN_WIDTH_MM + SIGN_GAP_MM) - SIGN_GAP_MM;
  return { widthMm, heightMm: words.length === 0 ? 0 : SIGN_MM, items };
}

/** The words in the reader's language; a teacher's own as they are. */
export function howText(how: How, words: SheetWords): string {
  return how.map((word) => (isHowWord(word) ? words.how[word] : word)).join(', ');
}

/** What an exercise says of how its voices are played: each in a line, named where it is not the only one played. */
function howLines(own: HowByVoice, plays: readonly Voice[], words: SheetWords) {
  const said = howEntries(own);
  return said.map(([voice, how]) => {
    const isAlone = said.length === 1 && plays.length === 1 && plays[0] === voice;
    const text = howText(how, words);
    return { how, text: isAlone ? text : words.partPlayed({ part: words.voices[voice], how: text }) };
  });
}

/** The same read out, with a space before it; nothing where nothing is said. */
export function describeHow(own: HowByVoice | undefined, plays: readonly Voice[], words: SheetWords): string {
  return howLines(own ?? {}, plays, words)
    .map(({ text }) => ` ${text.charAt(0).toUpperCase()}${text.slice(1)}.`)
    .join('');
}

/** Signs and words of an exercise under each other, in a column as wide as given. */
export function howColumn(
  { fonts, words }: SheetContext,
  own: HowByVoice | undefined,
  plays: readonly Voice[],
  widthMm: number,
): Block {
  const items: Item[] = [];
  let y = 0;
  for (const { how, text } of howLines(own ?? {}, plays, words)) {
    const signs = howSigns(how);
    const left = signs.widthMm === 0 ? 0 : signs.widthMm + SIGN_GAP_MM;
    const column = setColumn(fonts, text, style('italic', HOW_MM), Math.max(20, widthMm - left), {
      maxLines: 3,
    });
    const middle = ((ASCENT + DESCENT) * HOW_MM - SIGN_MM) / 2;
    items.push(...allMoved(signs.items, 0, y + middle), ...allMoved(column.items, left, y));
    y += Math.max(column.heightMm, signs.heightMm);
  }
  return { widthMm, heightMm: y, items };
}

/** A voice with how it is played, as one line: signs, then words; in a column where it is wider than given. */
function howEntry(fonts: Fonts, how: How, text: string, widthMm: number): Block {
  const signs = howSigns(how);
  const left = signs.widthMm === 0 ? 0 : signs.widthMm + SIGN_GAP_MM;
  const own = Math.min(fonts.widthMm(text, 'italic', HOW_MM) + 0.1, widthMm - left);
  const column = setColumn(fonts, text, style('italic', HOW_MM), own, { maxLines: 2 });
  const middle = ((ASCENT + DESCENT) * HOW_MM - SIGN_MM) / 2;
  return {
    widthMm: left + own,
    heightMm: Math.max(column.heightMm, signs.heightMm),
    items: [...allMoved(signs.items, 0, middle), ...allMoved(column.items, left, 0)],
  };
}

/** Between voices in a row, in millimetres. */
const VOICE_GAP_MM = 6;

/** Signs and words of several voices, as many beside each other as there is room for. */
export function howRows(
  { fonts, words }: { readonly fonts: Fonts; readonly words: SheetWords },
  said: readonly (readonly [Voice, How])[],
  widthMm: number,
): Block {
  const items: Item[] = [];
  let [x, y, rowMm] = [0, 0, 0];
  for (const [voice, how] of said) {
    const text = words.partPlayed({ part: words.voices[voice], how: howText(how, words) });
    const entry = howEntry(fonts, how, text, widthMm);
    if (x > 0 && x + entry.widthMm > widthMm) [x, y, rowMm] = [0, y + rowMm, 0];
    items.push(...allMoved(entry.items, x, y));
    x += entry.widthMm + VOICE_GAP_MM;
    rowMm = Math.max(rowMm, entry.heightMm);
  }
  return { widthMm, heightMm: y + rowMm, items };
}
