/**
 * Outlines: SVG path data as absolute moves, lines and cubic curves.
 *
 * Source: SVG 1.1, 8.3, Path data. Quadratic curves are raised to cubic ones (exact); elliptical arcs follow
 * the endpoint-to-centre conversion of SVG 1.1, appendix F.6.5, in pieces of at most a quarter turn.
 */

import { arcToCurves } from './arc.ts';
import { type AffineMap, type Box, mapPoint } from './geometry.ts';

/** One step; numbers are absolute coordinates. */
export type Step =
  | readonly ['M', number, number]
  | readonly ['L', number, number]
  | readonly ['C', number, number, number, number, number, number]
  | readonly ['Z'];

/** A path of absolute steps. */
export interface Outline {
  readonly steps: readonly Step[];
}

const ARGUMENTS: Readonly<Record<string, number>> = {
  M: 2,
  L: 2,
  H: 1,
  V: 1,
  C: 6,
  S: 4,
  Q: 4,
  T: 2,
  A: 7,
  Z: 0,
};

interface Pen {
  steps: Step[];
  x: number;
  y: number;
  startX: number;
  startY: number;
  /** Last control point, for smooth curves. */
  controlX: number;
  controlY: number;
  last: string;
}

function curve(pen: Pen, c: readonly number[]): void {
  const [x1, y1, x2, y2, x, y] = c as [number, number, number, number, number, number];
  pen.steps.push(['C', x1, y1, x2, y2, x, y]);
  [pen.controlX, pen.controlY, pen.x, pen.y] = [x2, y2, x, y];
}

function quadratic(pen: Pen, qx: number, qy: number, x: number, y: number): void {
  const third = (from: number, control: number) => from + (2 / 3) * (control - from);
  curve(pen, [third(pen.x, qx), third(pen.y, qy), third(x, qx), third(y, qy), x, y]);
  [pen.controlX, pen.controlY] = [qx, qy];
}

function moveTo(pen: Pen, x: number, y: number): void {
  pen.steps.push(['M', x, y]);
  [pen.x, pen.y, pen.startX, pen.startY] = [x, y, x, y];
}

function lineTo(pen: Pen, x: number, y: number): void {
  pen.steps.push(['L', x, y]);
  [pen.x, pen.y] = [x, y];
}

function close(pen: Pen): void {
  pen.steps.push(['Z']);
  [pen.x, pen.y] = [pen.startX, pen.startY];
}

function reflected(pen: Pen, after: string): readonly [number, number] {
  return after.includes(pen.last) ? [2 * pen.x - pen.controlX, 2 * pen.y - pen.controlY] : [pen.x, pen.y];
}

/** Draws one command with absolute arguments. */
function draw(pen: Pen, command: string, n: readonly number[]): void {
  const [a, b, c, d, e, f, g] = n as [number, number, number, number, number, number, number];
  if (command === 'M') moveTo(pen, a, b);
  else if (command === 'L') lineTo(pen, a, b);
  else if (command === 'H') lineTo(pen, a, pen.y);
  else if (command === 'V') lineTo(pen, pen.x, a);
  else if (command === 'C') curve(pen, n);
  else if (command === 'S') curve(pen, [...reflected(pen, 'CS'), ...n]);
  else if (command === 'Q') quadratic(pen, a, b, c, d);
  else if (command === 'T') quadratic(pen, ...reflected(pen, 'QT'), a, b);
  else if (command === 'A')
    for (const piece of arcToCurves(pen.x, pen.y, a, b, c, d !== 0, e !== 0, f, g)) curve(pen, piece);
  else close(pen);
}

function toAbsolute(pen: Pen, command: string, n: readonly number[]): readonly number[] {
  if (command === 'h') return [(n[0] as number) + pen.x];
  if (command === 'v') return [(n[0] as number) + pen.y];
  if (command === 'a') return [...n.slice(0, 5), (n[5] as number) + pen.x, (n[6] as number) + pen.y];
  return n.map((value, index) => value + (index % 2 === 0 ? pen.x : pen.y));
}

/**
 * Reads path data.
 * @throws RangeError when a command lacks numbers or there is something that is no path data.
 */
export function parseOutline(data: string): Outline {
  const pen: Pen = { steps: [], x: 0, y: 0, startX: 0, startY: 0, controlX: 0, controlY: 0, last: '' };
  for (const [, letter = '', rest = ''] of data.matchAll(
    /([MLHVCSQTAZmlhvcsqtaz])([^MLHVCSQTAZmlhvcsqtaz]*)/g,
  )) {
    let command = letter;
    const numbers = numbersOf(rest, letter.toUpperCase() === 'A');
    const size = ARGUMENTS[letter.toUpperCase()] as number;
    if (size === 0 ? numbers.length > 0 : numbers.length === 0 || numbers.length % size !== 0) {
      throw new RangeError(
        `found ${numbers.length} numbers after "${letter}" in path data, expected ${size}`,
      );
    }
    for (let at = 0; at === 0 || at < numbers.length; at += size) {
      const n = numbers.slice(at, at + size);
      const upper = command.toUpperCase();
      draw(pen, upper, command === upper ? n : toAbsolute(pen, command, n));
      pen.last = upper;
      if (command === 'M') command = 'L';
      if (command === 'm') command = 'l';
      if (size === 0) break;
    }
  }
  return { steps: pen.steps };
}

/** Numbers of path data; the two flags of an arc may stand without a space behind them. */
function numbersOf(text: string, arc: boolean): readonly number[] {
  const loose = arc ? text.replaceAll(/((?:[-+\d.eE]+[\s,]+){3})([01])[\s,]*([01])/g, '$1$2 $3 ') : text;
  return (loose.match(/[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?/g) ?? []).map(Number);
}

/** How far a curve reaches one way. Plain numbers and no lists, since a sheet has thousands of curves. */
class Reach {
  least = Infinity;
  most = -Infinity;

  add(value: number): void {
    if (value < this.least) this.least = value;
    if (value > this.most) this.most = value;
  }

  /** Takes in where a cubic from p0 to p3 turns. */
  addTurns(p0: number, p1: number, p2: number, p3: number): void {
    const a = -p0 + 3 * p1 - 3 * p2 + p3;
    const b = 2 * (p0 - 2 * p1 + p2);
    const c = p1 - p0;
    const at = (t: number): void => {
      if (t > 0 && t < 1)
        this.add((1 - t) ** 3 * p0 + 3 * (1 - t) ** 2 * t * p1 + 3 * (1 - t) * t ** 2 * p2 + t ** 3 * p3);
    };
    const root = b * b - 4 * a * c;
    if (Math.abs(a) < 1e-9) at(-c / b);
    else if (root >= 0) {
      at((-b + Math.sqrt(root)) / (2 * a));
      at((-b - Math.sqrt(root)) / (2 * a));
    }
  }
}

function boxOfReach({ least: x, most: right }: Reach, { least: y, most: bottom }: Reach): Box | null {
  return x === Infinity ? null : { x, y, width: right - x, height: bottom - y };
}

/** The exact box of an outline under a map, or null when it has no points. */
export function outlineBox(outline: Outline, map: AffineMap): Box | null {
  const [a, b, c, d, e, f] = map;
  const [across, down] = [new Reach(), new Reach()];
  let x = 0;
  let y = 0;
  for (const step of outline.steps) {
    if (step[0] === 'Z') continue;
    const [toX, toY] = step[0] === 'C' ? [step[5], step[6]] : [step[1], step[2]];
    const endX = a * toX + c * toY + e;
    const endY = b * toX + d * toY + f;
    if (step[0] === 'C') {
      const [, pX, pY, qX, qY] = step;
      across.addTurns(x, a * pX + c * pY + e, a * qX + c * qY + e, endX);
      down.addTurns(y, b * pX + d * pY + f, b * qX + d * qY + f, endY);
    }
    across.add(endX);
    down.add(endY);
    x = endX;
    y = endY;
  }
  return boxOfReach(across, down);
}

/** Path data of an outline under a map, to a thousandth. */
export function outlineToPath(outline: Outline, map: AffineMap): string {
  const place = (x: number, y: number) =>
    mapPoint(map, x, y)
      .map((n) => Math.round(n * 1000) / 1000)
      .join(' ');
  return outline.steps
    .map((step) => {
      if (step[0] === 'Z') return 'Z';
      if (step[0] === 'C')
        return `C${place(step[1], step[2])} ${place(step[3], step[4])} ${place(step[5], step[6])}`;
      return `${step[0]}${place(step[1], step[2])}`;
    })
    .join('');
}
