/**
 * Moves signs that stand on each other apart, each in the way that is its own.
 *
 * Conventions: units of verovio's page, 18 to a staff space; x to the right, y down. What nothing stands on is left alone.
 * Source: common practice: rests leave their middle, signs over and under notes move out, a head changes the side of its
 * stem, a flag goes on a longer stem, the notes of another voice give way to the side. Where there is no room to give way
 * to, what stands there gives way first.
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

/** The most that moves together, and the most first moves that are tried with what they then stand on. */
const MOST_STEPS = 3;
const MOST_TRIED = 40;

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

/** How far from two signs anything may be that their moves could meet: eight staff spaces. */
const REACH = 144;

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

/** Two things that stand on each other. */
type Pair = readonly [Placed, Placed];

function keyOf([a, b]: Pair): string {
  return `${a.index} ${b.index}`;
}

function pairsOf(placed: readonly Placed[]): readonly Pair[] {
  const signs = placed
    .filter(({ glyph, isBeam }) => glyph !== null || isBeam)
    .toSorted((a, b) => a.box.x - b.box.x);
  const pairs: Pair[] = [];
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

interface Step {
  readonly movable: Movable;
  readonly move: Move;
}

interface Choice {
  readonly steps: readonly Step[];
  readonly gain: number;
}

const STAY: Move = { dx: 0, dy: 0, cost: 0 };

/** Every move of what may be moved, with how much less it then stands on; the best first. */
function choicesOf(placed: readonly Placed[], movables: readonly Movable[]): readonly Choice[] {
  const choices = movables.flatMap((movable) => {
    const before = costOf(placed, movable.shapes, STAY);
    return movable.moves.map((move) => ({
      steps: [{ movable, move }],
      gain: before - costOf(placed, movable.shapes, move),
    }));
  });
  return choices.toSorted((a, b) => b.gain - a.gain);
}

/** Has what moves where a step takes it, or back again. */
function carry(placed: readonly Placed[], { movable, move }: Step, back = false): void {
  const by = back ? { ...move, dx: -move.dx, dy: -move.dy } : move;
  for (const each of placed) if (movable.shapes.has(each.index)) each.box = shifted(each.box, by);
}

/** What may give way to something where it stands, itself left out. */
function inTheWay(
  placed: readonly Placed[],
  { shapes }: Movable,
  all: readonly Movable[],
): readonly Movable[] {
  const own = placed.filter(({ index, glyph }) => shapes.has(index) && glyph !== null);
  const hit = placed.filter(
    (other) =>
      !shapes.has(other.index) && own.some((one) => keepApart(one, other) && share(one.box, other.box, -AIR)),
  );
  return all.filter((movable) => hit.some(({ index }) => movable.shapes.has(index)));
}

/** The best of some moves, each together with up to some more of what it then stands on, and of what those do. */
function bestOf(
  placed: readonly Placed[],
  movables: readonly Movable[],
  all: readonly Movable[],
  more: number,
): Choice | null {
  const alone = choicesOf(placed, movables);
  let best = alone[0] ?? null;
  for (const { steps, gain } of more > 0 ? alone.slice(0, MOST_TRIED) : []) {
    const first = steps[0] as Step;
    carry(placed, first);
    const next = bestOf(placed, inTheWay(placed, first.movable, all), all, more - 1);
    carry(placed, first, true);
    if (next && gain + next.gain > (best?.gain ?? 0)) {
      best = { steps: [first, ...next.steps], gain: gain + next.gain };
    }
  }
  return best;
}

/** What is drawn so near to some shapes that a move of two things could come to stand on it. */
function nearTo(shapes: ReadonlySet<number>, placed: readonly Placed[]): readonly Placed[] {
  const boxes = placed.filter(({ index }) => shapes.has(index)).map(({ box }) => box);
  const left = Math.min(...boxes.map(({ x }) => x)) - REACH;
  const right = Math.max(...boxes.map(({ x, width }) => x + width)) + REACH;
  return placed.filter(({ box }) => box.x < right && box.x + box.width > left);
}

/** How two things that stand on each other come apart: by one move, or where that does not help by two, or three. */
function wayOut([a, b]: Pair, placed: readonly Placed[], all: readonly Movable[]): Choice | null {
  const movables = all.filter(({ shapes }) => shapes.has(a.index) !== shapes.has(b.index));
  const near = nearTo(new Set(movables.flatMap(({ shapes }) => [...shapes])), placed);
  for (let more = 0; more < MOST_STEPS; more += 1) {
    const choice = bestOf(near, movables, all, more);
    if (choice && choice.gain > LEAST_GAIN) return choice;
  }
  return null;
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
  const stuck = new Map<string, Pair>();
  for (let turn = 0; turn < MOST_MOVES; turn += 1) {
    const pair = pairsOf(placed).find((each) => !stuck.has(keyOf(each)));
    if (!pair) break;
    const choice = wayOut(pair, placed, all);
    if (!choice) {
      stuck.set(keyOf(pair), pair);
      continue;
    }
    for (const step of choice.steps) {
      carry(placed, step);
      text = step.movable.write(text, step.move);
    }
    const moved = nearTo(new Set(choice.steps.flatMap(({ movable }) => [...movable.shapes])), placed);
    for (const [key, each] of stuck) if (each.some((one) => moved.includes(one))) stuck.delete(key);
  }
  // Verovio's drawing may be smaller than what is moved out of it.
  return text.replace('<svg class="definition-scale"', '<svg class="definition-scale" overflow="visible"');
}
