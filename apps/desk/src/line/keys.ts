/** What keys mean while a slot has the focus. */
import { isStruck, type Letter, type Mark, type Subdivision } from '@shedbook/core';
import {
  divideBeat,
  held,
  type Line,
  markAt,
  type SlotPlace,
  setHand,
  setMark,
  toggleAccent,
} from '../edit/strokes.ts';

/** Keys that write each mark. R and L write hands, so the rim shot has another key. */
const KEYS_OF: Readonly<Record<Letter | '.' | '~', readonly string[]>> = {
  x: ['x'],
  g: ['g'],
  f: ['f'],
  d: ['d'],
  b: ['b'],
  w: ['w'],
  o: ['o'],
  s: ['s'],
  r: ['i'],
  '.': ['.', 'Backspace', 'Delete'],
  '~': ['~', 'h'],
};

const MARK_KEYS: ReadonlyMap<string, Letter | '.' | '~'> = new Map(
  (Object.keys(KEYS_OF) as readonly (Letter | '.' | '~')[]).flatMap((mark) =>
    KEYS_OF[mark].map((key) => [key, mark] as const),
  ),
);

/** What a key does to a line at a slot, or null when it means nothing here or the voice cannot be played so. */
export function lineAfterKey(
  key: string,
  line: Line,
  place: SlotPlace,
  playable: (mark: Mark) => boolean,
): Line | null {
  const name = key.length === 1 ? key.toLowerCase() : key;
  const mark = name === 'a' ? toggleAccent(markAt(line.pattern, place)) : MARK_KEYS.get(name);
  if (mark === '~') return held(line, place);
  if (mark !== undefined) return !isStruck(mark) || playable(mark) ? setMark(line, place, mark) : null;
  if (name === 'r' || name === 'l') return setHand(line, place, name === 'r' ? 'R' : 'L');
  if (/^[1-8]$/.test(name)) return divideBeat(line, place, Number(name) as Subdivision);
  return null;
}
