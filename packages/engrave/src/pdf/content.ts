/**
 * Drawings as PDF content: paths written as operators, each outline once.
 *
 * Conventions: the page's current unit is a millimetre and y grows downwards (the writer sets both up).
 * Source: ISO 32000-1, 8.4.4 (graphics state operators), 8.5 (path construction and painting).
 */
import type { Shape } from '../svg/drawing.ts';
import { type AffineMap, compose } from '../svg/geometry.ts';
import type { Outline } from '../svg/outline.ts';

function n(value: number): string {
  const rounded = Math.round(value * 10000) / 10000;
  return Object.is(rounded, -0) ? '0' : String(rounded);
}

const paths = new WeakMap<Outline, string>();

/** Path construction operators of an outline in its own units. */
export function outlineOperators(outline: Outline): string {
  const known = paths.get(outline);
  if (known !== undefined) return known;
  const operators = outline.steps
    .map((step) => {
      if (step[0] === 'Z') return 'h';
      const numbers = step.slice(1).map((value) => n(value as number));
      return `${numbers.join(' ')} ${step[0] === 'M' ? 'm' : step[0] === 'L' ? 'l' : 'c'}`;
    })
    .join(' ');
  paths.set(outline, operators);
  return operators;
}

/** Red, green and blue, 0 to 1, of `#rgb`, `#rrggbb`, black or white. @returns null for any other colour. */
export function readColour(colour: string): readonly [number, number, number] | null {
  if (colour === 'black') return [0, 0, 0];
  if (colour === 'white') return [1, 1, 1];
  const short = /^#([0-9a-f])([0-9a-f])([0-9a-f])$/i
    .exec(colour)
    ?.slice(1)
    .map((digit) => digit + digit);
  const long = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(colour)?.slice(1);
  const parts = (short ?? long)?.map((part) => Number.parseInt(part, 16) / 255);
  return parts ? (parts as unknown as readonly [number, number, number]) : null;
}

const colours = new Map<string, string>();

/** Operators that set the fill (`rg`) or stroke (`RG`) colour. A grey is set as such, so black prints with black ink. */
export function colourOperators(colour: string, operator: 'rg' | 'RG'): string {
  const key = operator + colour;
  const known = colours.get(key);
  if (known !== undefined) return known;
  const written = writeColour(colour, operator);
  colours.set(key, written);
  return written;
}

function writeColour(colour: string, operator: 'rg' | 'RG'): string {
  const [red, green, blue] = readColour(colour) ?? [0, 0, 0];
  if (red === green && green === blue) return `${n(red)} ${operator === 'rg' ? 'g' : 'G'}`;
  return `${n(red)} ${n(green)} ${n(blue)} ${operator}`;
}

/** A map as the operator that applies it. */
export function mapOperator(map: AffineMap): string {
  return `${map.map(n).join(' ')} cm`;
}

function inked(colour: string, ink: string): string {
  return colour === 'ink' ? ink : colour;
}

/** Operators of one shape under a map from its drawing to the page. */
export function shapeOperators(shape: Shape, map: AffineMap, ink: string): string {
  const whole = compose(map, shape.map);
  const own = Math.sqrt(Math.abs(shape.map[0] * shape.map[3] - shape.map[1] * shape.map[2]));
  const paint = shape.fill !== null && shape.stroke !== null ? 'B' : shape.stroke !== null ? 'S' : 'f';
  const state = [
    shape.fill === null ? '' : colourOperators(inked(shape.fill, ink), 'rg'),
    shape.stroke === null
      ? ''
      : `${colourOperators(inked(shape.stroke, ink), 'RG')} ${n(shape.strokeWidth / own)} w`,
  ];
  return `q ${mapOperator(whole)} ${state.filter(Boolean).join(' ')} ${outlineOperators(shape.outline)} ${paint} Q`;
}
