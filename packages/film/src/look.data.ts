/** How films look: ink on paper and one accent, as on the practice page. */

/** The shapes of a picture: how large its page is in millimetres, ten pixels each at full size, and its measures. */
export const SHAPES = {
  landscape: {
    ...{ widthMm: 192, heightMm: 108, sideMm: 9, columns: 2 },
    ...{ titleY: 13, headingY: 23.5, barsTop: 25, barsBottom: 89, stripTop: 90, stripHeight: 12 },
    ...{ small: 5, heading: 9, card: 13 },
  },
  portrait: {
    ...{ widthMm: 108, heightMm: 192, sideMm: 6, columns: 1 },
    ...{ titleY: 16, headingY: 26.5, barsTop: 44, barsBottom: 158, stripTop: 162, stripHeight: 14 },
    ...{ small: 5, heading: 8.4, card: 10.5 },
  },
} as const;

/** The name of a shape. */
export type ShapeName = keyof typeof SHAPES;

/** Pixels of a millimetre at full size: 1920 × 1080. */
export const FULL_SIZE = 10;

/** Colours, as on the practice page. */
export const SCHEMES = {
  light: { paper: '#fdfdfb', ink: '#1b2330', soft: '#4d5866', rule: '#b4bfbc', accent: '#0a6652' },
  dark: { paper: '#1b2125', ink: '#eceee9', soft: '#b0bab9', rule: '#4a555b', accent: '#7ad3b8' },
} as const;

/** The name of a scheme of colours. */
export type SchemeName = keyof typeof SCHEMES;

/** The colours of a scheme. */
export type Colours = (typeof SCHEMES)[SchemeName];

/** Room over the notes for the ball, and under them for hands and counts, in millimetres of the tile. */
export const ROOM_MM = { above: 10, hands: 4.4, under: 5.5 } as const;

/** The ball's radius, and how far over the highest note it comes down, in millimetres of the tile. */
export const BALL_MM = { radius: 1.5, over: 1.6 } as const;
