/**
 * Moves signs that stand on each other apart, each in the way that is its own.
 *
 * Conventions: units of verovio's page, 18 to a staff space; x to the right, y down. What nothing stands on is left alone.
 * Source: common practice: rests leave their middle, signs over and under notes move out, a head changes the side of its
 * stem, a flag goes on a longer stem, the notes of another voice give way to the side.
 */
import type { Drawing } from '../svg/drawing.ts';
import type { Box } from '../svg/geometry.ts';
import { type Movable, type Move, movablesOf } from './movable.ts';

/** What two signs may share each way, for curved edges: a sixth of a staff space. */
const SLACK = 3;

/** Air that a sign has where it is moved to, and a dot always. */
const AIR = 1.5;

/** The most signs that are moved on a line. */
const MOST_MOVES = 80;

/**
 * What it costs to stand on a sign, on one that can easily give way, on a beam, and on a stem or bracket, beside a
 * unit of distance.
 */
const ON_SIGN = 1000;
const ON_LIGHT_SIGN = 600;
const ON_BEAM = 400;
const ON_LINE = 60;

/** How much less a move must cost than staying. */
const LEAST_GAIN = 200;

/** Signs that go wherever there is room: dots, rests, accents and openings, numbers of tuplets, the sign of a buzz. */
const LIGHT = /^E(?:4E|4A|5E|88|22A|1E7)/;

/** Dots, which are drawn and no glyphs. @source SMuFL, augmentationDot */
const DOT = 'E1E7';

/** Accents, openings and numbers of tuplets. */
const OVER_NOTES = /^E(?:4A|5E|88)/;

interface Placed {
  /** Index of the shape in its drawing. */
  readonly index: number;
  readonly glyph: string | null;
  readonly isBeam: boolean;
  box: Box;
}

function share(a: Box, b: Box, slack: number): boolean {
  return (
    Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x) > slack &&
    Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y) > slack
  );
}

/** Signs, and the stems, beams and brackets between them; staff lines are no obstacle. */
function placedOf({ shapes, groups }: Drawing): readonly Placed[] {
  const idsOf = (name: string) =>
    new Set(groups.flatMap(({ id, classes }) => (classes.includes(name) ? [id] : [])));
  const [beams, dots] = [idsOf('beam'), idsOf('dots')];
  const widest = Math.max(0, ...shapes.map(({ glyph, box }) => (glyph === null ? box.width : 0)));
  return shapes.flatMap(({ glyph: own, box, stroke, within }, index) => {
    const glyph = own ?? (dots.has(within) ? DOT : null);
    const isStaffLine = glyph === null && stroke !== null && box.width > 0.9 * widest && box.height < 3;
    return isStaffLine ? [] : [{ index, glyph, box, isBeam: glyph === null && beams.has(within) }];
  });
}

/** What two things may share where they are: curved edges, but nothing of a dot. */
function slackOf(one: Placed, other: Placed): number {
  return one.glyph === DOT || other.glyph === DOT ? -AIR : SLACK;
}

function shifted(box: Box, { dx, dy }: Move): Box {
  return { ...box, x: box.x + dx, y: box.y + dy };
}

/** Whether two things have to stand apart: any two signs, and what stands over or under notes and a beam. */
function keepApart(one: Placed, other: Placed): boolean {
  if (one.glyph !== null && other.glyph !== null) return true;
  return (
    (one.isBeam && OVER_NOTES.test(other.glyph ?? '')) || (other.isBeam && OVER_NOTES.test(one.glyph ?? ''))
  );
}

function pairsOf(placed: readonly Placed[]): readonly (readonly [Placed, Placed])[] {
  const signs = placed
    .filter(({ glyph, isBeam }) => glyph !== null || isBeam)
    .toSorted((a, b) => a.box.x - b.box.x);
  const pairs: (readonly [Placed, Placed])[] = [];
  signs.forEach((a, at) => {
    for (let next = at + 1; next < signs.length; next += 1) {
      const b = signs[next] as Placed;
      if (b.box.x > a.box.x + a.box.width + AIR) break;
      if (keepApart(a, b) && share(a.box, b.box, slackOf(a, b))) pairs.push([a, b]);
    }
  });
  return pairs;
}

/** What it costs that two things stand on each other. */
function costOfPair(one: Placed, other: Placed): number {
  if (one.glyph === null && other.glyph === null) return 0;
  if (one.glyph === null || other.glyph === null) return keepApart(one, other) ? ON_BEAM : ON_LINE;
  return LIGHT.test(one.glyph) || LIGHT.test(other.glyph) ? ON_LIGHT_SIGN : ON_SIGN;
}

/** What it costs to have the shapes of something where a move takes them: what they stand on. */
function costOf(placed: readonly Placed[], own: ReadonlySet<number>, move: Move): number {
  const outside = placed.filter(({ index }) => !own.has(index));
  let cost = move.cost;
  for (const one of placed) {
    if (!own.has(one.index)) continue;
    const at = shifted(one.box, move);
    for (const other of outside) {
      const slack = one.glyph !== null && other.glyph !== null ? -AIR : 0;
      if (share(at, other.box, slack)) cost += costOfPair(one, other);
    }
  }
  return cost;
}

interface Choice {
  readonly movable: Movable;
  readonly move: Move;
  readonly gain: number;
}

/** The best move of what may be moved, if it stands on fewer signs then. */
function bestOf(placed: readonly Placed[], movables: readonly Movable[]): Choice | null {
  let best: Choice | null = null;
  for (const movable of movables) {
    const before = costOf(placed, movable.shapes, { dx: 0, dy: 0, cost: 0 });
    for (const move of movable.moves) {
      const gain = before - costOf(placed, movable.shapes, move);
      if (gain > LEAST_GAIN && (best === null || gain > best.gain)) best = { movable, move, gain };
    }
  }
  return best;
}

/**
 * The SVG with its signs apart.
 * @param drawing what the SVG was read into
 * @returns null where nothing stands on anything
 */
export function movedApart(svg: string, drawing: Drawing): string | null {
  const placed = placedOf(drawing);
  if (pairsOf(placed).length === 0) return null;
  const all = movablesOf(drawing);
  let text = svg;
  const stuck = new Set<string>();
  for (let turn = 0; turn < MOST_MOVES; turn += 1) {
    const pair = pairsOf(placed).find(([a, b]) => !stuck.has(`${a.index} ${b.index}`));
    if (!pair) break;
    const [a, b] = pair;
    const movables = all.filter(({ shapes }) => shapes.has(a.index) !== shapes.has(b.index));
    const choice = bestOf(placed, movables);
    if (!choice) {
      stuck.add(`${a.index} ${b.index}`);
      continue;
    }
    for (const each of placed) {
      if (choice.movable.shapes.has(each.index)) each.box = shifted(each.box, choice.move);
    }
    text = choice.movable.write(text, choice.move);
    stuck.clear();
  }
  // Verovio's drawing may be smaller than what is moved out of it.
  return text.replace('<svg class="definition-scale"', '<svg class="definition-scale" overflow="visible"');
}
