/**
 * Elliptical arcs as cubic curves.
 * Source: SVG 1.1, appendix F.6.5 (endpoint to centre) and F.6.6 (radii that are too small). The cubic for a turn
 * of θ has control points at 4/3·tan(θ/4) of the radius.
 */

type Curve = readonly [number, number, number, number, number, number];

interface Ellipse {
  readonly rx: number;
  readonly ry: number;
  readonly cos: number;
  readonly sin: number;
  readonly cx: number;
  readonly cy: number;
}

function piece(of: Ellipse, from: number, turn: number): Curve {
  const k = (4 / 3) * Math.tan(turn / 4);
  const place = (x: number, y: number): readonly [number, number] => [
    of.cx + of.cos * of.rx * x - of.sin * of.ry * y,
    of.cy + of.sin * of.rx * x + of.cos * of.ry * y,
  ];
  const [c0, s0, c1, s1] = [Math.cos(from), Math.sin(from), Math.cos(from + turn), Math.sin(from + turn)];
  return [...place(c0 - k * s0, s0 + k * c0), ...place(c1 + k * s1, s1 - k * c1), ...place(c1, s1)];
}

/** The arc from (x0, y0) to (x, y) of path data's `A` command, in pieces of at most a quarter turn. */
export function arcToCurves(
  x0: number,
  y0: number,
  radiusX: number,
  radiusY: number,
  rotationDegrees: number,
  large: boolean,
  sweep: boolean,
  x: number,
  y: number,
): readonly Curve[] {
  if (x === x0 && y === y0) return [];
  let [rx, ry] = [Math.abs(radiusX), Math.abs(radiusY)];
  if (rx === 0 || ry === 0) return [[x0, y0, x, y, x, y]];
  const phi = (rotationDegrees * Math.PI) / 180;
  const [cos, sin] = [Math.cos(phi), Math.sin(phi)];
  const [dx, dy] = [(x0 - x) / 2, (y0 - y) / 2];
  const [px, py] = [cos * dx + sin * dy, -sin * dx + cos * dy];
  const excess = (px / rx) ** 2 + (py / ry) ** 2;
  if (excess > 1) [rx, ry] = [rx * Math.sqrt(excess), ry * Math.sqrt(excess)];
  const over = (rx * ry) ** 2 - (rx * py) ** 2 - (ry * px) ** 2;
  const factor =
    (large === sweep ? -1 : 1) * Math.sqrt(Math.max(0, over / ((rx * py) ** 2 + (ry * px) ** 2)));
  const [qx, qy] = [(factor * rx * py) / ry, (-factor * ry * px) / rx];
  const ellipse = {
    rx,
    ry,
    cos,
    sin,
    cx: cos * qx - sin * qy + (x0 + x) / 2,
    cy: sin * qx + cos * qy + (y0 + y) / 2,
  };
  const from = Math.atan2((py - qy) / ry, (px - qx) / rx);
  let turn = Math.atan2((-py - qy) / ry, (-px - qx) / rx) - from;
  if (sweep && turn < 0) turn += 2 * Math.PI;
  if (!sweep && turn > 0) turn -= 2 * Math.PI;
  const count = Math.max(1, Math.ceil(Math.abs(turn) / (Math.PI / 2) - 1e-9));
  return Array.from({ length: count }, (_, i) => piece(ellipse, from + (turn * i) / count, turn / count));
}
