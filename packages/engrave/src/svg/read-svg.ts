/**
 * Reads an SVG into a drawing: the shapes that engraving and simple vector images (a QR code) are made of.
 *
 * Conventions: verovio's own style sheet strokes in the current colour whatever has a stroke width, so a shape
 * with a stroke width is stroked and one without is filled only.
 * Source: SVG 1.1, chapters 5 (structure), 7 (coordinates) and 9 (basic shapes).
 * Differs from the source: no style sheets, gradients, clipping, text or opacity.
 */
import { readXml } from '@shedbook/core';
import type { Drawing, NamedGroup, Shape } from './drawing.ts';
import {
  type AffineMap,
  type Box,
  compose,
  grow,
  IDENTITY,
  mapLength,
  QUARTER_HANDLE,
  scale,
  shift,
} from './geometry.ts';
import { type Outline, outlineBox, parseOutline, type Step } from './outline.ts';
import { type PlainElement, readPlainXml } from './plain-xml.ts';

interface Paint {
  readonly fill: string | null;
  readonly stroke: string | null;
  readonly strokeWidth: number | null;
}

interface Reading {
  readonly definitions: ReadonlyMap<string, PlainElement>;
  readonly shapes: Shape[];
  readonly groups: NamedGroup[];
}

interface Context {
  readonly map: AffineMap;
  readonly paint: Paint;
  readonly within: string | null;
  readonly glyph: string | null;
}

const outlines = new Map<string, Outline>();

/** A straight line, as every stem and line of a staff is. */
const STRAIGHT = /^M(-?\d+(?:\.\d+)?) (-?\d+(?:\.\d+)?) L(-?\d+(?:\.\d+)?) (-?\d+(?:\.\d+)?)$/;

function straight(data: string): Outline | null {
  const match = STRAIGHT.exec(data);
  if (!match) return null;
  const [, x, y, toX, toY] = match;
  return {
    steps: [
      ['M', Number(x), Number(y)],
      ['L', Number(toX), Number(toY)],
    ],
  };
}

/** Outlines by their path data: glyphs come back in every tile. */
function outlineOf(data: string): Outline {
  const line = straight(data);
  if (line) return line;
  const known = outlines.get(data);
  if (known) return known;
  const outline = parseOutline(data);
  if (data.length > 60) outlines.set(data, outline);
  return outline;
}

function numbers(text: string | undefined): readonly number[] {
  return (text?.match(/[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?/g) ?? []).map(Number);
}

function number(element: PlainElement, name: string): number {
  return numbers(element.attributes[name])[0] ?? 0;
}

function rotation(n: readonly number[]): AffineMap {
  const [degrees = 0, x = 0, y = 0] = n;
  const angle = (degrees * Math.PI) / 180;
  const turn: AffineMap = [Math.cos(angle), Math.sin(angle), -Math.sin(angle), Math.cos(angle), 0, 0];
  return compose(shift(x, y), compose(turn, shift(-x, -y)));
}

function stepOf(name: string | undefined, n: readonly number[]): AffineMap {
  if (name === 'translate') return shift(n[0] ?? 0, n[1] ?? 0);
  if (name === 'scale') return scale(n[0] ?? 1, n[1] ?? n[0] ?? 1);
  if (name === 'rotate') return rotation(n);
  if (name === 'matrix') return n as unknown as AffineMap;
  throw new RangeError(`found the transform "${name}", expected translate, scale, rotate or matrix`);
}

/** A shift, and a size after it, as every glyph of an engraving has. */
const PLACED =
  /^translate\((-?\d+(?:\.\d+)?), (-?\d+(?:\.\d+)?)\)(?: scale\((-?\d+(?:\.\d+)?), (-?\d+(?:\.\d+)?)\))?$/;

function transformOf(text: string): AffineMap {
  const placed = PLACED.exec(text);
  if (placed) {
    const [, x, y, width, height] = placed;
    return width === undefined
      ? [1, 0, 0, 1, Number(x), Number(y)]
      : [Number(width), 0, 0, Number(height), Number(x), Number(y)];
  }
  let map = IDENTITY;
  for (const [, name, inner] of text.matchAll(/(\w+)\s*\(([^)]*)\)/g)) {
    map = compose(map, stepOf(name, numbers(inner)));
  }
  return map;
}

function viewBoxOf(svg: PlainElement): Box | null {
  const [x, y, width, height] = numbers(svg.attributes.viewBox);
  if (height === undefined) return null;
  return { x: x as number, y: y as number, width: width as number, height };
}

/** What an element's own style says. */
function styleOf(text: string): Readonly<Record<string, string>> {
  return Object.fromEntries(text.split(';').map((rule) => rule.split(':').map((s) => s.trim())));
}

const PAINTED = ['style', 'fill', 'stroke', 'stroke-width'] as const;

function paintOf(element: PlainElement, around: Paint): Paint {
  const { attributes } = element;
  // Most elements say nothing of it, and a drawing has thousands.
  if (!PAINTED.some((name) => attributes[name] !== undefined)) return around;
  const style = styleOf(attributes.style ?? '');
  const value = (name: string): string | undefined => style[name] ?? element.attributes[name];
  const colour = (text: string | undefined, otherwise: string | null) => {
    if (text === undefined) return otherwise;
    return text === 'none' || text === 'transparent' ? null : text === 'currentColor' ? 'ink' : text;
  };
  const width = value('stroke-width');
  const strokeWidth = width === undefined ? around.strokeWidth : Number.parseFloat(width);
  const stroke = colour(value('stroke'), width === undefined ? around.stroke : (around.stroke ?? 'ink'));
  return { fill: colour(value('fill'), around.fill), stroke, strokeWidth };
}

function ellipse(cx: number, cy: number, rx: number, ry: number): Outline {
  const [kx, ky] = [QUARTER_HANDLE * rx, QUARTER_HANDLE * ry];
  const steps: readonly Step[] = [
    ['M', cx + rx, cy],
    ['C', cx + rx, cy + ky, cx + kx, cy + ry, cx, cy + ry],
    ['C', cx - kx, cy + ry, cx - rx, cy + ky, cx - rx, cy],
    ['C', cx - rx, cy - ky, cx - kx, cy - ry, cx, cy - ry],
    ['C', cx + kx, cy - ry, cx + rx, cy - ky, cx + rx, cy],
    ['Z'],
  ];
  return { steps };
}

function polygon(element: PlainElement, closed: boolean): Outline {
  const n = numbers(element.attributes.points);
  const steps: Step[] = [];
  for (let i = 0; i + 1 < n.length; i += 2)
    steps.push([i === 0 ? 'M' : 'L', n[i] as number, n[i + 1] as number]);
  if (closed) steps.push(['Z']);
  return { steps };
}

function rectangle(element: PlainElement): Outline {
  const [x, y] = [number(element, 'x'), number(element, 'y')];
  const [right, bottom] = [x + number(element, 'width'), y + number(element, 'height')];
  return { steps: [['M', x, y], ['L', right, y], ['L', right, bottom], ['L', x, bottom], ['Z']] };
}

/** The outline of a basic shape, or null for anything else. */
function shapeOutline(element: PlainElement): Outline | null {
  const n = (name: string) => number(element, name);
  if (element.name === 'path') return outlineOf(element.attributes.d ?? '');
  if (element.name === 'rect') return rectangle(element);
  if (element.name === 'circle') return ellipse(n('cx'), n('cy'), n('r'), n('r'));
  if (element.name === 'ellipse') return ellipse(n('cx'), n('cy'), n('rx'), n('ry'));
  if (element.name === 'polygon') return polygon(element, true);
  if (element.name === 'polyline') return polygon(element, false);
  if (element.name === 'line')
    return {
      steps: [
        ['M', n('x1'), n('y1')],
        ['L', n('x2'), n('y2')],
      ],
    };
  return null;
}

/** How far what is drawn reaches each way. Plain numbers and no lists, since a sheet has thousands of groups. */
class Extent {
  #left = Infinity;
  #top = Infinity;
  #right = -Infinity;
  #bottom = -Infinity;

  add({ x, y, width, height }: Box): void {
    this.#left = Math.min(this.#left, x);
    this.#top = Math.min(this.#top, y);
    this.#right = Math.max(this.#right, x + width);
    this.#bottom = Math.max(this.#bottom, y + height);
  }

  addAll(other: Extent): void {
    this.#left = Math.min(this.#left, other.#left);
    this.#top = Math.min(this.#top, other.#top);
    this.#right = Math.max(this.#right, other.#right);
    this.#bottom = Math.max(this.#bottom, other.#bottom);
  }

  /** Null where nothing is drawn. */
  box(): Box | null {
    if (this.#left === Infinity) return null;
    return {
      x: this.#left,
      y: this.#top,
      width: this.#right - this.#left,
      height: this.#bottom - this.#top,
    };
  }
}

interface SizedGlyph {
  readonly a: number;
  readonly d: number;
  readonly box: Box;
}

const glyphBoxes = new WeakMap<Outline, SizedGlyph>();

/** The box of a glyph: the same outline stands in many places in one size. */
function glyphBox(outline: Outline, map: AffineMap): Box | null {
  const [a, b, c, d, e, f] = map;
  if (b !== 0 || c !== 0) return outlineBox(outline, map);
  const known = glyphBoxes.get(outline);
  const box = known?.a === a && known.d === d ? known.box : outlineBox(outline, [a, 0, 0, d, 0, 0]);
  if (!box) return null;
  if (box !== known?.box) glyphBoxes.set(outline, { a, d, box });
  return { x: box.x + e, y: box.y + f, width: box.width, height: box.height };
}

function addShape(reading: Reading, outline: Outline, context: Context, extent: Extent): void {
  const { map, paint, glyph, within } = context;
  const strokeWidth = paint.stroke === null ? 0 : mapLength(map, paint.strokeWidth ?? 1);
  const bare = glyph === null ? outlineBox(outline, map) : glyphBox(outline, map);
  if (!bare || (paint.fill === null && strokeWidth === 0)) return;
  const box = strokeBox(bare, strokeWidth);
  const stroke = strokeWidth > 0 ? paint.stroke : null;
  reading.shapes.push({ outline, map, fill: paint.fill, stroke, strokeWidth, box, glyph, within });
  extent.add(box);
}

/** The box with its stroke; a straight upright or level line ends flat, so it grows only across. */
function strokeBox(box: Box, strokeWidth: number): Box {
  const grown = grow(box, strokeWidth / 2);
  if (box.width === 0) return { ...grown, y: box.y, height: box.height };
  if (box.height === 0) return { ...grown, x: box.x, width: box.width };
  return grown;
}

const PASSED_OVER: ReadonlySet<string> = new Set(['defs', 'style', 'title', 'desc', 'metadata']);

function readUse(reading: Reading, element: PlainElement, context: Context, extent: Extent): void {
  const target = (element.attributes.href ?? '').replace(/^#/, '');
  const definition = reading.definitions.get(target);
  if (!definition) throw new RangeError(`found a use of "${target}", expected one that is defined`);
  const { x, y } = element.attributes;
  const map =
    x === undefined && y === undefined
      ? context.map
      : compose(context.map, shift(number(element, 'x'), number(element, 'y')));
  const glyph = /^[0-9A-F]{4,5}(?=-)/.exec(target)?.[0] ?? null;
  readElement(reading, definition, { ...context, map, glyph }, extent);
}

function readChildren(reading: Reading, element: PlainElement, context: Context, extent: Extent): void {
  for (const child of element.children) readElement(reading, child, context, extent);
}

function readGroup(reading: Reading, element: PlainElement, context: Context, around: Extent): void {
  if (context.glyph !== null) {
    readChildren(reading, element, context, around);
    return;
  }
  const id = element.attributes.id ?? null;
  const extent = new Extent();
  readChildren(reading, element, id === null ? context : { ...context, within: id }, extent);
  around.addAll(extent);
  const classes = (element.attributes.class ?? '').split(/\s+/).filter(Boolean);
  const box = id !== null || classes.length > 0 ? extent.box() : null;
  if (box) reading.groups.push({ id, classes, within: context.within, box });
}

/** The map of a nested `svg`: its viewBox into its place. */
function nestedMap(element: PlainElement, around: AffineMap, room: Box | null): AffineMap {
  const inner = viewBoxOf(element);
  if (!inner) return compose(around, shift(number(element, 'x'), number(element, 'y')));
  const width = number(element, 'width') || (room?.width ?? inner.width);
  const height = number(element, 'height') || (room?.height ?? inner.height);
  const place = compose(
    shift(number(element, 'x'), number(element, 'y')),
    scale(width / inner.width, height / inner.height),
  );
  return compose(around, compose(place, shift(-inner.x, -inner.y)));
}

/** What an element is read in: that of its surroundings, where it says nothing of paint and place. */
function contextOf(element: PlainElement, around: Context): Context {
  const paint = paintOf(element, around.paint);
  const { transform } = element.attributes;
  if (paint === around.paint && transform === undefined) return around;
  const map = transform === undefined ? around.map : compose(around.map, transformOf(transform));
  return { ...around, paint, map };
}

function readElement(
  reading: Reading,
  element: PlainElement,
  around: Context,
  extent: Extent,
  room: Box | null = null,
): void {
  if (PASSED_OVER.has(element.name)) return;
  const context = contextOf(element, around);
  if (element.name === 'use') readUse(reading, element, context, extent);
  else if (element.name === 'g') readGroup(reading, element, context, extent);
  else if (element.name === 'svg') {
    readChildren(reading, element, { ...context, map: nestedMap(element, context.map, room) }, extent);
  } else {
    const outline = shapeOutline(element);
    if (!outline) throw new RangeError(`found <${element.name}> in an SVG, expected paths and basic shapes`);
    addShape(reading, outline, context, extent);
  }
}

function collect(element: PlainElement, into: Map<string, PlainElement>): void {
  for (const child of element.children) {
    if (child.attributes.id !== undefined) into.set(child.attributes.id, child);
    collect(child, into);
  }
}

/** The root of an XML text. @throws RangeError when it is not well-formed */
function rootOf(text: string): PlainElement {
  const plain = readPlainXml(text);
  if (plain) return plain;
  const { root, fault } = readXml(text);
  if (fault) throw new RangeError(`found ${fault.found.fact} (line ${fault.line}), expected well-formed XML`);
  return root;
}

/**
 * Flattens an SVG.
 * @returns its shapes in drawing order, in the user units of its viewBox.
 * @throws RangeError when it is not an SVG or has parts that cannot be flattened (text, images, gradients).
 */
export function readSvg(svg: string): Drawing {
  const root = rootOf(svg);
  if (root.name !== 'svg') throw new RangeError(`found <${root.name}>, expected <svg>`);
  const definitions = new Map<string, PlainElement>();
  collect(root, definitions);
  const reading: Reading = { definitions, shapes: [], groups: [] };
  const size = { x: 0, y: 0, width: number(root, 'width'), height: number(root, 'height') };
  const viewBox = viewBoxOf(root) ?? size;
  const paint: Paint = { fill: 'ink', stroke: null, strokeWidth: null };
  const context = { map: IDENTITY, paint: paintOf(root, paint), within: null, glyph: null };
  const extent = new Extent();
  for (const child of root.children) readElement(reading, child, context, extent, viewBox);
  return { viewBox, shapes: reading.shapes, groups: reading.groups };
}
