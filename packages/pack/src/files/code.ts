/** Codes to scan: where the practice page of a printed sheet lies, and private links. */
import type { Lesson } from '@shedbook/core';
import { renderSVG } from 'uqr';

/** Modules of empty border that a scanner needs. Source: ISO/IEC 18004, quiet zone. */
const QUIET_ZONE = 4;

/** An address as a code to scan, an SVG document. */
export function drawCode(address: string): string {
  return renderSVG(address, { ecc: 'M', border: QUIET_ZONE });
}

/** The option of a sheet that prints the lesson's address as a code; nothing where it has none. */
export function codeOption({ practicePage }: Pick<Lesson, 'practicePage'>): { readonly codeSvg?: string } {
  return practicePage === null ? {} : { codeSvg: drawCode(practicePage) };
}
