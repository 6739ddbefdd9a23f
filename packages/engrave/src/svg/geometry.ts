/**
 * Boxes and affine maps of the plane.
 *
 * Conventions: y grows downwards, as in SVG. A map `[a, b, c, d, e, f]` takes (x, y) to
 * (a·x + c·y + e, b·x + d·y + f).
 * Source: SVG 1.1, 7.4, Coordinate system transformations.
 */
/** An upright rectangle by its upper left corner, in user units of the drawing. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** An affine map of the plane, as in SVG's `matrix(a b c d e f)`. */
export type AffineMap = readonly [number, number, number, number, number, number];

/** How far along its tangent the handle of a Bézier curve lies that draws a quarter of a circle of radius 1. */
export const QUARTER_HANDLE = (4 / 3) * (Math.SQRT2 - 1);

/** The map that leaves everything where it is. */
export const IDENTITY: AffineMap = [1, 0, 0, 1, 0, 0];

/** The map that does `inner` first and then `outer`. */
export function compose(outer: AffineMap, inner: AffineMap): AffineMap {
  const [a, b, c, d, e, f] = outer;
  const [p, q, r, s, t, u] = inner;
  return [a * p + c * q, b * p + d * q, a * r + c * s, b * r + d * s, a * t + c * u + e, b * t + d * u + f];
}

/** A shift by (x, y). */
export function shift(x: number, y: number): AffineMap {
  return [1, 0, 0, 1, x, y];
}

/** A scaling about the origin. */
export function scale(x: number, y = x): AffineMap {
  return [x, 0, 0, y, 0, 0];
}

/** Where a map takes a point. */
export function mapPoint(map: AffineMap, x: number, y: number): readonly [number, number] {
  return [map[0] * x + map[2] * y + map[4], map[1] * x + map[3] * y + map[5]];
}

/** The smallest upright box round where a map takes a box. */
export function mapBox(map: AffineMap, box: Box): Box {
  const corners = [
    mapPoint(map, box.x, box.y),
    mapPoint(map, box.x + box.width, box.y),
    mapPoint(map, box.x, box.y + box.height),
    mapPoint(map, box.x + box.width, box.y + box.height),
  ];
  return boxOfPoints(corners) as Box;
}

/** How much a map lengthens a line: exact where it scales alike in both directions. */
export function mapLength(map: AffineMap, length: number): number {
  return length * Math.sqrt(Math.abs(map[0] * map[3] - map[1] * map[2]));
}

/** The smallest box round points, or null when there are none. */
export function boxOfPoints(points: readonly (readonly [number, number])[]): Box | null {
  if (points.length === 0) return null;
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  }
  return { x: left, y: top, width: right - left, height: bottom - top };
}

/** The smallest box round boxes, or null when there are none. */
export function unite(boxes: readonly Box[]): Box | null {
  if (boxes.length === 0) return null;
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  // No lists of points, since every group of a drawing asks for this.
  for (const { x, y, width, height } of boxes) {
    left = Math.min(left, x, x + width);
    right = Math.max(right, x, x + width);
    top = Math.min(top, y, y + height);
    bottom = Math.max(bottom, y, y + height);
  }
  return { x: left, y: top, width: right - left, height: bottom - top };
}

/** A box with a border of `by` on every side. */
export function grow(box: Box, by: number): Box {
  return { x: box.x - by, y: box.y - by, width: box.width + 2 * by, height: box.height + 2 * by };
}

/** Whether `inner` lies in `outer`, give or take `slack`. */
export function contains(outer: Box, inner: Box, slack: number): boolean {
  return (
    inner.x >= outer.x - slack &&
    inner.y >= outer.y - slack &&
    inner.x + inner.width <= outer.x + outer.width + slack &&
    inner.y + inner.height <= outer.y + outer.height + slack
  );
}
