/**
 * Drawings: an SVG flattened to filled and stroked outlines, with the boxes of what it names.
 *
 * Conventions: user units of the SVG's outermost viewBox; y grows downwards. A colour is `ink` (whatever the
 * page writes in) or a CSS colour.
 */
import type { AffineMap, Box } from './geometry.ts';
import type { Outline } from './outline.ts';

/** One painted outline. */
export interface Shape {
  readonly outline: Outline;
  readonly map: AffineMap;
  readonly fill: string | null;
  readonly stroke: string | null;
  /** In user units, the map counted in. */
  readonly strokeWidth: number;
  readonly box: Box;
  /** SMuFL code point of a glyph, e.g. `E0A9`, or null. */
  readonly glyph: string | null;
  /** Id of the nearest group around it that has one. */
  readonly within: string | null;
}

/** A group that the SVG names by an id or a class. */
export interface NamedGroup {
  readonly id: string | null;
  /** Class names, in order. */
  readonly classes: readonly string[];
  /** Id of the nearest group around it that has one. */
  readonly within: string | null;
  readonly box: Box;
}

/** A flattened SVG. */
export interface Drawing {
  readonly viewBox: Box;
  readonly shapes: readonly Shape[];
  readonly groups: readonly NamedGroup[];
}
