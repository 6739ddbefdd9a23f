/** The code to scan on a printed sheet: where its practice page lies. */
import type { Lesson } from '@shedbook/core';
import { renderSVG } from 'uqr';

/** Modules of empty border that a scanner needs. Source: ISO/IEC 18004, quiet zone. */
const QUIET_ZONE = 4;

/** The option of a sheet that prints the lesson's address as a code; nothing where it has none. */
export function codeOption({ practicePage }: Pick<Lesson, 'practicePage'>): { readonly codeSvg?: string } {
  if (practicePage === null) return {};
  return { codeSvg: renderSVG(practicePage, { ecc: 'M', border: QUIET_ZONE }) };
}
