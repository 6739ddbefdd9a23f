/** The sign of an exercise that is shown before it is played. */
import { EXAMPLE_SIGN, EXAMPLE_SIGN_BOX, HOW_SIGN_STROKE } from '@shedbook/core';
import { readSvg } from '../svg/read-svg.ts';
import type { PictureItem } from './item.ts';

const { width, height } = EXAMPLE_SIGN_BOX;

/** Size of the sign, in millimetres. */
export const EXAMPLE_SIGN_MM = { width: (3 * width) / height, height: 3 } as const;

/** The sign with its upper left corner at (x, y), in millimetres. */
export function exampleSign(x: number, y: number): PictureItem {
  const { lines, filled } = EXAMPLE_SIGN;
  const drawing = readSvg(
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}">` +
      `<path d="${lines}" fill="none" stroke="currentColor" stroke-width="${HOW_SIGN_STROKE}"/>` +
      `<path d="${filled}"/></svg>`,
  );
  return { kind: 'picture', x, y, ...EXAMPLE_SIGN_MM, drawing };
}
