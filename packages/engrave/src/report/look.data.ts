/** Ink on paper and one accent: the colours and measures of the picture, in its own units (pixels at full size). */

/** Colours. */
export const COLOURS = {
  paper: '#fdfdfb',
  ink: '#1b2330',
  soft: '#4d5866',
  faint: '#b4bfbc',
  accent: '#0a6652',
} as const;

/** The page. */
export const PAGE = { width: 840, margin: 44 } as const;

/** Staff lines are this far apart. */
export const STAFF_SPACE = 9;

/** How far to the right a stroke is drawn for each ms that it is late. */
export const PIXELS_PER_MS = 0.42;

/** A stroke is drawn no further from its place than this many ms. */
export const FARTHEST_MS = 90;

/** Families that are likely to be there. */
export const FONT = "'Fira Sans', 'Segoe UI', 'DejaVu Sans', sans-serif";
