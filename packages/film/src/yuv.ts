/**
 * Pictures as video keeps them: brightness for every pixel, colour for every square of four.
 *
 * Conventions: planar 4:2:0, Y then U then V, 8 bits, limited range (black 16, white 235).
 * Source: ITU-R BT.709-6, items 3.2 to 3.4 (luma and colour difference) and 4.6 (quantisation); colour is sited between
 * the four pixels, as their mean.
 */

/** A picture in the colours of a screen: red, green, blue and opacity of each pixel, row by row. */
export interface Pixels {
  /** In pixels. */
  readonly width: number;
  /** In pixels. */
  readonly height: number;
  readonly rgba: Uint8Array;
}

/** A picture as video keeps it; sides are even. */
export interface Picture {
  /** In pixels. */
  readonly width: number;
  /** In pixels. */
  readonly height: number;
  readonly planes: Uint8Array;
}

/** A colour in limited range. */
export type Yuv = readonly [y: number, u: number, v: number];

const [RED, GREEN, BLUE] = [0.2126, 0.7152, 0.0722];

/** A colour of a screen, 0 to 255 each, not rounded. */
export function toYuv(red: number, green: number, blue: number): Yuv {
  const luma = RED * red + GREEN * green + BLUE * blue;
  return [
    16 + (219 * luma) / 255,
    128 + (224 * (blue - luma)) / (2 * (1 - BLUE)) / 255,
    128 + (224 * (red - luma)) / (2 * (1 - RED)) / 255,
  ];
}

/** Bytes of a picture. */
export function bytesOf(width: number, height: number): number {
  return (width * height * 3) / 2;
}

/** A picture in the colours of a screen, as video keeps it; it covers what is behind it. */
export function toPicture({ width, height, rgba }: Pixels): Picture {
  const planes = new Uint8Array(bytesOf(width, height));
  const half = width / 2;
  const [uAt, vAt] = [width * height, width * height * 1.25];
  for (let y = 0; y < height; y += 2) {
    for (let x = 0; x < width; x += 2) {
      let [red, green, blue] = [0, 0, 0];
      for (let k = 0; k < 4; k += 1) {
        const pixel = (y + (k >> 1)) * width + x + (k & 1);
        const [r, g, b] = [rgba[4 * pixel] ?? 0, rgba[4 * pixel + 1] ?? 0, rgba[4 * pixel + 2] ?? 0];
        planes[pixel] = Math.round(16 + (219 * (RED * r + GREEN * g + BLUE * b)) / 255);
        red += r;
        green += g;
        blue += b;
      }
      const [, u, v] = toYuv(red / 4, green / 4, blue / 4);
      const square = (y / 2) * half + x / 2;
      planes[uAt + square] = Math.round(u);
      planes[vAt + square] = Math.round(v);
    }
  }
  return { width, height, planes };
}

/** A rectangle of pixels; all four numbers are even. */
export interface PixelBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Each plane of a picture: where it begins, and how many times smaller it is. */
const PLANES = [
  { at: 0, by: 1 },
  { at: 1, by: 2 },
  { at: 1.25, by: 2 },
] as const;

/** Copies a box of one picture to a place of another. */
export function paste(from: Picture, box: PixelBox, into: Picture, x: number, y: number): void {
  for (const { at, by } of PLANES) {
    const [fromStart, intoStart] = [at * from.width * from.height, at * into.width * into.height];
    const width = box.width / by;
    for (let row = 0; row < box.height / by; row += 1) {
      const source = fromStart + (box.y / by + row) * (from.width / by) + box.x / by;
      const target = intoStart + (y / by + row) * (into.width / by) + x / by;
      into.planes.set(from.planes.subarray(source, source + width), target);
    }
  }
}

/** A ball in pixels: its middle, from the picture's upper left corner, and its radius. */
export interface Disc {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

/** The even box round a ball, inside a picture. */
export function boxOfDisc({ x, y, radius }: Disc, { width, height }: Picture): PixelBox {
  const even = (value: number, most: number) => Math.min(most, Math.max(0, 2 * Math.floor(value / 2)));
  const [left, top] = [even(x - radius - 1, width), even(y - radius - 1, height)];
  const [right, bottom] = [even(x + radius + 3, width), even(y + radius + 3, height)];
  return { x: left, y: top, width: right - left, height: bottom - top };
}

/** Paints a ball over a picture, its edge a pixel soft. */
export function paintDisc(into: Picture, disc: Disc, [luma, u, v]: Yuv): void {
  const { planes, width, height } = into;
  const box = boxOfDisc(disc, into);
  const cover = (x: number, y: number) =>
    Math.min(1, Math.max(0, disc.radius + 0.5 - Math.hypot(x + 0.5 - disc.x, y + 0.5 - disc.y)));
  const blend = (at: number, value: number, part: number) => {
    const before = planes[at] as number;
    planes[at] = Math.round(before + part * (value - before));
  };
  const [uAt, vAt] = [width * height, width * height * 1.25];
  for (let y = box.y; y < box.y + box.height; y += 2) {
    for (let x = box.x; x < box.x + box.width; x += 2) {
      let sum = 0;
      for (let k = 0; k < 4; k += 1) {
        const [px, py] = [x + (k & 1), y + (k >> 1)];
        const part = cover(px, py);
        if (part > 0) blend(py * width + px, luma, part);
        sum += part;
      }
      if (sum === 0) continue;
      const square = (y / 2) * (width / 2) + x / 2;
      blend(uAt + square, u, sum / 4);
      blend(vAt + square, v, sum / 4);
    }
  }
}
