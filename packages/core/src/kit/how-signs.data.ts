/**
 * A small drawn sign for each word of how a limb plays. They are ours: the trade has none.
 *
 * Conventions: SVG paths in a box 16 wide and 10 high, y downwards; `lines` are stroked 1.1 wide with round ends,
 * `filled` is filled, both in the colour of the ink. A pedal is a slanted line with the foot on it; a stick comes from
 * the upper right; the filled dot is where it strikes.
 */
import type { HowSign } from './drawn-sign.data.ts';
import type { HowWord } from './how.data.ts';

/** Width and height of the box that every sign is drawn in, in its own units. */
export const HOW_SIGN_BOX = { width: 16, height: 10 } as const;

/** A filled disc as a path. */
function dot(x: number, y: number, radius: number): string {
  return `M${x - radius} ${y}a${radius} ${radius} 0 1 0 ${2 * radius} 0a${radius} ${radius} 0 1 0 ${-2 * radius} 0z`;
}

const PEDAL = 'M1 8.6L15 8.6';
const HEAD = 'M1 5a7 3.2 0 1 0 14 0a7 3.2 0 1 0 -14 0z';
const CYMBAL = 'M0.8 8C4 6.9 5.2 6.7 6.1 5.9C6.6 4.3 9.4 4.3 9.9 5.9C10.8 6.7 12 6.9 15.2 8';
const FLOOR = 'M1 8.6L15 8.6';

/** The signs. */
export const HOW_SIGNS: Readonly<Record<HowWord, HowSign>> = {
  'heel down': { lines: PEDAL, filled: 'M2 7.4L2 2L5 2L5.6 4.3L12.8 5.6C14.4 6 14.4 7.4 13.2 7.4z' },
  'heel up': { lines: PEDAL, filled: 'M1.4 2.2L4.4 0.4L6.4 2.2L12 5.4C14.6 5.8 14.8 7.4 13.4 7.4L10.4 7.4z' },
  tip: { lines: 'M1 8.6L9 8.6M6.4 6L14.6 0.8', filled: dot(4.8, 6.6, 1.5) },
  shoulder: { lines: 'M6 8.6L15 8.6M2.6 3.2L14.8 7.2', filled: `${dot(1.8, 2.9, 1.1)}${dot(9.6, 6.8, 1.5)}` },
  centre: { lines: HEAD, filled: dot(8, 5, 1.4) },
  edge: { lines: HEAD, filled: dot(12.9, 5, 1.4) },
  bow: { lines: CYMBAL, filled: dot(12.6, 4.6, 1.4) },
  bell: { lines: CYMBAL, filled: dot(8, 2.4, 1.4) },
  'low stroke': { lines: `${FLOOR}M3.4 6.2L15 5`, filled: dot(2.4, 6.3, 1.2) },
  'half stroke': { lines: `${FLOOR}M3.6 3.6L15 5.8`, filled: dot(2.6, 3.4, 1.2) },
  'full stroke': { lines: `${FLOOR}M5.4 1.8L14.6 6.4`, filled: dot(4.4, 1.3, 1.2) },
};
