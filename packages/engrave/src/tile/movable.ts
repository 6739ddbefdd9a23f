/**
 * What of an engraved line may be moved, where to, and how that is written into its SVG.
 *
 * Conventions: units of verovio's page, 18 to a staff space, ten times as many in its SVG; x to the right, y down.
 */
import { escapeXml } from '@shedbook/core';
import type { Drawing, NamedGroup, Shape } from '../svg/drawing.ts';

/** Somewhere to go. */
export interface Move {
  /** In user units of the page. */
  readonly dx: number;
  /** In user units of the page. */
  readonly dy: number;
  /** What it costs beside standing on things, in user units of the page: how far it is, and how unusual. */
  readonly cost: number;
}

/** Something that may be moved. */
export interface Movable {
  /** Indices of its shapes in the drawing. */
  readonly shapes: ReadonlySet<number>;
  readonly moves: readonly Move[];
  /** The SVG with this move in it. */
  readonly write: (svg: string, move: Move) => string;
}

/** Staff space in units of the page. */
const SPACE = 18;

/** Units of the SVG to a unit of the page. */
const FINE = 10;

/** Width of a notehead, and of a stem. */
const HEAD = 1.3 * SPACE;
const STEM = 1.8;

/** The same move at 1, 2, … times its length; each costs as much as it is long, times its weight. */
function steps(dx: number, dy: number, most: number, weight: number): readonly Move[] {
  return Array.from({ length: most }, (_, index) => {
    const by = index + 1;
    return { dx: dx * by, dy: dy * by, cost: weight * by * Math.hypot(dx, dy) };
  });
}

/** Changes what follows the opening of a group. */
function within(
  svg: string,
  id: string,
  pattern: RegExp,
  change: (match: RegExpExecArray) => string,
): string {
  const from = svg.indexOf(`<g id="${escapeXml(id)}"`);
  const match = from < 0 ? null : pattern.exec(svg.slice(from));
  if (!match) return svg;
  const at = from + match.index;
  return svg.slice(0, at) + change(match) + svg.slice(at + match[0].length);
}

const MOVED = / transform="translate\((-?[\d.]+), (-?[\d.]+)\)"/;

/** Moves a group that has an id, or the first of a class inside it. */
function moveGroup(svg: string, id: string, { dx, dy }: Move, inner?: string): string {
  const opening = inner ? new RegExp(`<g class="${inner}"[^>]*>`) : /<g [^>]*>/;
  return within(svg, id, opening, ([tag]) => {
    const before = MOVED.exec(tag);
    const x = Number(before?.[1] ?? 0) + dx * FINE;
    const y = Number(before?.[2] ?? 0) + dy * FINE;
    return `${tag.replace(MOVED, '').replace(/>$/, '')} transform="translate(${+x.toFixed(2)}, ${+y.toFixed(2)})">`;
  });
}

/** Moves the first use of a glyph inside a group. */
function moveGlyph(svg: string, id: string, glyph: string, { dx, dy }: Move): string {
  const use = new RegExp(
    `(<use xlink:href="#${glyph}-[^"]*" transform="translate\\()(-?[\\d.]+), (-?[\\d.]+)`,
  );
  return within(svg, id, use, ([, before, x, y]) => {
    return `${before}${+(Number(x) + dx * FINE).toFixed(2)}, ${+(Number(y) + dy * FINE).toFixed(2)}`;
  });
}

/** Lengthens the stem of a group by moving its far end. */
function lengthenStem(svg: string, id: string, { dy }: Move): string {
  return within(svg, id, /(<path d="M-?[\d.]+ -?[\d.]+ L-?[\d.]+ )(-?[\d.]+)/, ([, before, y]) => {
    return `${before}${+(Number(y) + dy * FINE).toFixed(2)}`;
  });
}

/** The groups of a drawing by what is inside what. */
class Tree {
  readonly #groups: ReadonlyMap<string, NamedGroup>;
  readonly drawing: Drawing;

  constructor(drawing: Drawing) {
    this.drawing = drawing;
    this.#groups = new Map(drawing.groups.flatMap((group) => (group.id === null ? [] : [[group.id, group]])));
  }

  group(id: string | null): NamedGroup | null {
    return id === null ? null : (this.#groups.get(id) ?? null);
  }

  /** Ids of the groups around something, the nearest first. */
  around(id: string | null): readonly string[] {
    const ids: string[] = [];
    for (let at = id; at !== null; at = this.group(at)?.within ?? null) ids.push(at);
    return ids;
  }

  /** Indices of the shapes inside a group. */
  shapesIn(id: string, is: (shape: Shape) => boolean = () => true): ReadonlySet<number> {
    return new Set(
      this.drawing.shapes.flatMap((shape, index) =>
        is(shape) && this.around(shape.within).includes(id) ? [index] : [],
      ),
    );
  }

  has(id: string, name: string): boolean {
    return this.group(id)?.classes.includes(name) ?? false;
  }
}

/** Rests leave their place by whole spaces. */
function rest(tree: Tree, id: string): Movable {
  const moves = [...steps(0, -SPACE, 9, 0.5), ...steps(0, SPACE, 9, 0.5)];
  return { shapes: tree.shapesIn(id), moves, write: (svg, move) => moveGroup(svg, id, move) };
}

/** Accents and openings move out; an accent beside its head moves on, to the other side, or out. */
function articulation(tree: Tree, id: string): Movable {
  const shapes = tree.shapesIn(id);
  const glyphs = [...shapes].map((index) => tree.drawing.shapes[index]?.glyph);
  const out = glyphs.includes('E4A1') ? 1 : -1;
  const step = SPACE / 4;
  const outer = steps(0, out * step, 32, 0.6);
  if (!id.endsWith('-accent'))
    return { shapes, moves: outer, write: (svg, move) => moveGroup(svg, id, move) };
  const left = steps(-step, 0, 6, 1).map((move) => ({
    ...move,
    dx: move.dx - 3 * SPACE,
    cost: move.cost + 20,
  }));
  const beside = [-1, 0, 1].flatMap((dy) =>
    steps(step, 0, 10, 1).map((move) => ({ ...move, dy: dy * step, cost: move.cost + Math.abs(dy) * 10 })),
  );
  const far = [...steps(0, -step, 32, 1), ...steps(0, step, 32, 1)].map((move) => ({
    ...move,
    cost: move.cost + 40,
  }));
  return { shapes, moves: [...beside, ...left, ...far], write: (svg, move) => moveGroup(svg, id, move) };
}

/** Dots move on from their heads. */
function dots(tree: Tree, id: string): Movable {
  const moves = steps(2, 0, 12, 1);
  return { shapes: tree.shapesIn(id), moves, write: (svg, move) => moveGroup(svg, id, move) };
}

/** The number of a tuplet moves out with its bracket. */
function tuplet(tree: Tree, id: string): Movable {
  const parts = tree.drawing.groups.flatMap((group) =>
    group.within === id && group.classes.some((name) => name === 'tupletNum' || name === 'tupletBracket')
      ? [group.id as string]
      : [],
  );
  const shapes = new Set(parts.flatMap((part) => [...tree.shapesIn(part)]));
  return {
    shapes,
    moves: [...steps(0, -SPACE / 2, 16, 0.6), ...steps(0, SPACE / 2, 16, 0.6)],
    write: (svg, move) => parts.reduce((text, part) => moveGroup(text, part, move), svg),
  };
}

/** The sign of a buzz goes along its stem. */
function buzz(tree: Tree, id: string): Movable {
  const isBuzz = ({ glyph, within: group }: Shape) => glyph === 'E22A' && group === id;
  const step = SPACE / 4;
  return {
    shapes: tree.shapesIn(id, isBuzz),
    moves: [...steps(0, -step, 14, 0.5), ...steps(0, step, 14, 0.5)],
    write: (svg, move) => moveGlyph(svg, id, 'E22A', move),
  };
}

/** A parenthesis moves away from its head. */
function parenthesis(tree: Tree, id: string, glyph: 'E26A' | 'E26B'): Movable {
  return {
    shapes: tree.shapesIn(id, (shape) => shape.glyph === glyph),
    moves: steps(glyph === 'E26A' ? -2 : 2, 0, 9, 2),
    write: (svg, move) => moveGlyph(svg, id, glyph, move),
  };
}

/** A flag moves out on a longer stem. */
function flag(tree: Tree, id: string): Movable | null {
  const stem = tree.group(id)?.within ?? null;
  const own = tree.group(id);
  const around = tree.group(stem);
  if (stem === null || own === null || around === null) return null;
  const isUp = own.box.y <= around.box.y + 1;
  return {
    shapes: tree.shapesIn(id),
    moves: steps(0, isUp ? -SPACE / 2 : SPACE / 2, 10, 1),
    write: (svg, move) => moveGroup(lengthenStem(svg, stem, move), id, move),
  };
}

/** A head of a chord goes to the other side of its stem, or a little off it. */
function head(tree: Tree, id: string, chord: string): Movable | null {
  const stem = tree.drawing.groups.find((group) => group.within === chord && group.classes.includes('stem'));
  const shapes = tree.shapesIn(id);
  const own = [...shapes]
    .map((index) => tree.drawing.shapes[index] as Shape)
    .find(({ glyph }) => !/^E26/.test(glyph ?? ''));
  if (!stem || !own) return null;
  const line = tree.drawing.shapes.find(({ glyph, within: group }) => glyph === null && group === stem.id);
  if (!line) return null;
  const stemX = line.box.x + line.box.width / 2;
  const isLeft = own.box.x + own.box.width / 2 < stemX;
  const side = isLeft ? 1 : -1;
  const across = { dx: side * (HEAD - STEM), dy: 0, cost: 50 };
  const beyond = steps((side * SPACE) / 4, 0, 8, 6).map(({ dx, dy, cost }) => ({
    dx: dx + across.dx,
    dy,
    cost: cost + 80,
  }));
  const apart = steps((-side * SPACE) / 4, 0, 8, 6).map((move) => ({ ...move, cost: move.cost + 80 }));
  return { shapes, moves: [across, ...beyond, ...apart], write: (svg, move) => moveGroup(svg, id, move) };
}

/** Moves the corners of a beam that stand at a stem. @param stemX where the stem was before anything moved */
function bendBeam(svg: string, beam: string, stemX: number, dx: number): string {
  return within(svg, beam, /(?:<polygon points="[^"]*"\/>)+/, ([polygons]) =>
    polygons.replace(/(-?[\d.]+),(-?[\d.]+)/g, (corner, x: string, y: string) =>
      Math.abs(Number(x) - stemX * FINE) > STEM * FINE
        ? corner
        : `${+(Number(x) + dx * FINE).toFixed(2)},${y}`,
    ),
  );
}

/** How far a group is moved to the right already, in units of the page. */
function movedBy(svg: string, id: string): number {
  const from = svg.indexOf(`<g id="${escapeXml(id)}"`);
  const opening = from < 0 ? '' : svg.slice(from, svg.indexOf('>', from));
  return Number(MOVED.exec(`${opening} `)?.[1] ?? 0) / FINE;
}

const ASIDE = [...steps(SPACE / 4, 0, 9, 3), ...steps(-SPACE / 4, 0, 9, 4)];

/** A note or a chord gives way to the side, and its corners of the beam go with it. */
function beamed(tree: Tree, id: string, beam: string): Movable {
  const stem = tree.drawing.groups.find(
    (group) => group.classes.includes('stem') && tree.around(group.id).includes(id),
  );
  const stemX = stem ? stem.box.x + stem.box.width / 2 : Number.NaN;
  return {
    shapes: tree.shapesIn(id),
    moves: ASIDE,
    write: (svg, move) => moveGroup(bendBeam(svg, beam, stemX + movedBy(svg, id), move.dx), id, move),
  };
}

/** Grace notes together give way to the side, inside the beam of what they stand before where it has one. */
function graceGroup(tree: Tree, id: string): Movable {
  const around = tree.group(id)?.within ?? null;
  const beam = tree.around(around).find((each) => tree.has(each, 'beam'));
  const write = (svg: string, move: Move) => moveGroup(svg, id, move);
  const shapes = tree.shapesIn(id);
  if (!beam) return { shapes, moves: ASIDE, write };
  const stems = tree.drawing.groups.filter(
    (group) => group.classes.includes('stem') && tree.around(group.id).includes(beam),
  );
  const xs = stems.map((group) => group.box.x);
  const mine = stems.find((group) => tree.around(group.id).includes(id))?.box.x ?? 0;
  const isInside = ({ dx }: Move) =>
    dx > 0 ? mine < Math.max(...xs) - SPACE : mine > Math.min(...xs) + SPACE;
  return { shapes, moves: ASIDE.filter(isInside), write };
}

/** A note or a chord gives way to the side. */
function sideways(tree: Tree, id: string): Movable {
  const around = tree.group(id)?.within ?? null;
  if (around !== null && tree.has(around, 'beam')) return beamed(tree, id, around);
  return { shapes: tree.shapesIn(id), moves: ASIDE, write: (svg, move) => moveGroup(svg, id, move) };
}

function ofGroup(tree: Tree, { id, classes, within: around }: NamedGroup): readonly (Movable | null)[] {
  if (id === null) return [];
  const is = (name: string) => classes.includes(name);
  if (is('rest') || is('mRest')) return [rest(tree, id)];
  if (is('dots')) return [dots(tree, id)];
  if (is('artic')) return [articulation(tree, id)];
  if (is('tuplet')) return [tuplet(tree, id)];
  if (is('stem')) return [buzz(tree, id)];
  if (is('flag')) return [flag(tree, id)];
  if (is('chord')) return [sideways(tree, id)];
  if (is('graceGrp')) return [graceGroup(tree, id)];
  if (!is('note')) return [];
  const own = [parenthesis(tree, id, 'E26A'), parenthesis(tree, id, 'E26B')];
  const isInChord = around !== null && tree.has(around, 'chord');
  return [...own, isInChord ? head(tree, id, around) : sideways(tree, id)];
}

/** Everything in a drawing that may be moved. */
export function movablesOf(drawing: Drawing): readonly Movable[] {
  const tree = new Tree(drawing);
  return drawing.groups
    .flatMap((group) => ofGroup(tree, group))
    .filter((movable): movable is Movable => movable !== null && movable.shapes.size > 0);
}
