/**
 * Where everything stands on a page of a film: alone, or beside, under or round the picture of whoever plays.
 *
 * Conventions: millimetres of the page from its upper left corner.
 */
import type { Box } from '@shedbook/engrave';
import { SHAPES, type ShapeName } from './look.data.ts';

/** Where the picture of whoever plays stands: notation beside it, under it, or all round it. */
export const PICTURE_PLACES = ['beside', 'above', 'corner'] as const;

/** A place of the picture. */
export type PicturePlace = (typeof PICTURE_PLACES)[number];

/** Where everything stands, in millimetres. */
export interface Layout {
  /** The whole page. */
  readonly widthMm: number;
  readonly heightMm: number;
  /** Edges of what is written and drawn. */
  readonly left: number;
  readonly right: number;
  /** Where the heading and what stands over it must end. */
  readonly headRight: number;
  readonly columns: number;
  /** Whether the tempo stands in the line of the heading, or in its own under it. */
  readonly tempoBeside: boolean;
  readonly titleY: number;
  readonly headingY: number;
  /** Where what is said of how the limbs play begins; the bars begin under it. */
  readonly howTop: number;
  readonly barsTop: number;
  readonly barsBottom: number;
  readonly stripTop: number;
  readonly stripHeight: number;
  readonly small: number;
  readonly heading: number;
  /** The picture, or null. */
  readonly picture: Box | null;
}

/** Largest part of the page's longer side that a picture beside or above takes, and of a corner. */
const MOST = { beside: 0.44, above: 0.42, cornerWidth: 0.3 } as const;
/** Its height, and its distance from the upper edge, in millimetres. */
const CORNER_MM = { height: { landscape: 26, portrait: 36 }, top: 4 } as const;

/** A page before room is made for how the limbs play. */
type Bare = Omit<Layout, 'howTop'>;

/** The page of a shape without a picture. */
function plain(name: ShapeName): Bare {
  const { widthMm, sideMm, ...rest } = SHAPES[name];
  const right = widthMm - sideMm;
  const tempoBeside = name === 'landscape';
  return { ...rest, widthMm, left: sideMm, right, headRight: right, tempoBeside, picture: null };
}

/** A size with a ratio of width to height that fits into another. */
function fitted(ratio: number, widthMm: number, heightMm: number) {
  const width = Math.min(widthMm, heightMm * ratio);
  return { width, height: width / ratio };
}

function besidePicture(page: Bare, ratio: number): Bare {
  const { width, height } = fitted(ratio, MOST.beside * page.widthMm, page.heightMm);
  const left = width + page.left;
  return {
    ...{ ...page, left, columns: 1, tempoBeside: false },
    ...{ small: 4.4, heading: 7, titleY: 11, headingY: 20, barsTop: 30 },
    picture: { x: 0, y: (page.heightMm - height) / 2, width, height },
  };
}

function underPicture(page: Bare, ratio: number): Bare {
  const { width, height } = fitted(ratio, page.widthMm, MOST.above * page.heightMm);
  const isTall = page.heightMm > page.widthMm;
  const heading = isTall ? 7 : 5.6;
  const headingY = height + heading + 3;
  return {
    ...{ ...page, heading, headingY, titleY: -page.heightMm, tempoBeside: true },
    ...{ small: isTall ? 4.4 : 4, barsTop: headingY + 1 },
    picture: { x: (page.widthMm - width) / 2, y: 0, width, height },
  };
}

function roundPicture(page: Bare, ratio: number, name: ShapeName): Bare {
  const { height: most, top } = CORNER_MM;
  const { width, height } = fitted(ratio, MOST.cornerWidth * page.widthMm, most[name]);
  const x = page.right - width;
  return {
    ...{ ...page, headRight: x - 4, tempoBeside: false },
    barsTop: Math.max(page.barsTop, top + height + 1),
    picture: { x, y: top, width, height },
  };
}

function withPicture(
  name: ShapeName,
  picture: { readonly place: PicturePlace; readonly ratio: number },
): Bare {
  const page = plain(name);
  if (picture.place === 'beside') return besidePicture(page, picture.ratio);
  return picture.place === 'above'
    ? underPicture(page, picture.ratio)
    : roundPicture(page, picture.ratio, name);
}

/** Between what is said of how the limbs play and what stands over it, in millimetres. */
const HOW_GAP_MM = 1;

/**
 * The layout of a page.
 * @param picture where it stands and its width over its height; null without one
 * @param howHeight how high what is said of how the limbs play is, by the page
 */
export function layOutPage(
  name: ShapeName,
  picture: { readonly place: PicturePlace; readonly ratio: number } | null,
  howHeight: (page: Bare) => number = () => 0,
): Layout {
  const page = picture ? withPicture(name, picture) : plain(name);
  const heightMm = howHeight(page);
  const howTop = page.barsTop + (heightMm > 0 ? HOW_GAP_MM : 0);
  return { ...page, howTop, barsTop: howTop + heightMm };
}
