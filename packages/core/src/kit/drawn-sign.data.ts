/** What every small drawn sign has: apart from the signs themselves, since whoever shows one need not load all. */

/** A sign. */
export interface HowSign {
  /** What is stroked, as an SVG path. */
  readonly lines: string;
  /** What is filled, as an SVG path. */
  readonly filled: string;
}

/** Width of the lines, in the units of the box. */
export const HOW_SIGN_STROKE = 1.1;
