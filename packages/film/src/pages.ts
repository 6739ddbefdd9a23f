/**
 * The pages of a scene: which bars stand on each, where, and how large.
 *
 * Conventions: millimetres of the page from its upper left corner, or, where said, of a bar's tile; a bar is drawn
 * `size` times as large as it is engraved.
 */
import type { Lesson } from '@shedbook/core';
import {
  type BarTile,
  type Block,
  type Engraver,
  engraveBars,
  type Fonts,
  type SheetWords,
} from '@shedbook/engrave';
import type { ShownBar } from '@shedbook/playing';
import type { FilmWords } from '@shedbook/words';
import type { Layout } from './layout.ts';
import { BALL_MM, ROOM_MM } from './look.data.ts';
import type { PlayedScene } from './scene.ts';

/** What notation is drawn with. */
export interface DrawingTools {
  readonly engraver: Engraver;
  readonly fonts: Fonts;
  readonly words: SheetWords;
  readonly said: FilmWords;
}

/** A bar at its place. */
export interface PlacedBar {
  readonly bar: BarTile;
  /** Which picture of the scene it is. */
  readonly shown: ShownBar;
  /** Upper left corner of its tile. */
  readonly xMm: number;
  readonly yMm: number;
  /** How many times as large as it is engraved. */
  readonly size: number;
  /** Where the middle of the ball is when it comes down. */
  readonly floorMm: number;
  /** Baselines of the written hands and of the counts under them. */
  readonly handsMm: number;
  readonly countsMm: number;
}

/** The bars that are seen at once. */
export interface ScenePage {
  readonly bars: readonly PlacedBar[];
}

/** The bars that a scene shows: the exercise's, and the groove's, of the last stage where it is built up. */
export interface ScenePictures {
  readonly exercise: readonly BarTile[];
  readonly groove: readonly BarTile[];
}

/** Bars on a page at most: more could not be read on a telephone. */
const MOST_BARS = 2;
const MOST_SIZE = 2.4;

/** The bars of a scene at one stage of the groove (from 0), or of all of it. */
export function engraveScene(
  { lesson, exercise, stages }: Pick<PlayedScene, 'lesson' | 'exercise' | 'stages'>,
  tools: DrawingTools,
  stage = stages.length - 1,
): ScenePictures {
  const joined = new Set(stages.slice(0, stage + 1).flatMap(({ layer }) => layer.joins));
  const shown: Lesson = {
    ...lesson,
    exercises: lesson.exercises.filter((each) => each.number === exercise),
    groove: exercise === null ? lesson.groove.filter(({ voice }) => joined.has(voice)) : lesson.groove,
  };
  const all = engraveBars(shown, tools);
  return {
    exercise: all.find((each) => each.exercise !== null)?.full ?? [],
    groove: all.find((each) => each.exercise === null)?.full ?? [],
  };
}

interface Measures {
  /** Of a tile. */
  readonly overMm: number;
  readonly underMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  /** Room for written hands; 0 where there are none. */
  readonly handsMm: number;
}

/** Between notes and what is said over and under them, in millimetres of the tile. */
export const SAID_GAP_MM = 0.6;

function roomFor({ heightMm }: Block): number {
  return heightMm > 0 ? heightMm + SAID_GAP_MM : 0;
}

/** What every bar of a page is given room for, so that staves stand level. */
function measuresOf(bars: readonly BarTile[], hasHands: boolean): Measures {
  const overMm = Math.max(...bars.map(({ tile, over }) => tile.staffTopMm + roomFor(over)));
  const staffMm = Math.max(...bars.map(({ tile }) => tile.staffBottomMm - tile.staffTopMm));
  const underMm = Math.max(
    ...bars.map(({ tile, under }) => tile.heightMm - tile.staffBottomMm + roomFor(under)),
  );
  const handsMm = hasHands ? ROOM_MM.hands : 0;
  const heightMm = ROOM_MM.above + overMm + staffMm + underMm + handsMm + ROOM_MM.under;
  const widthMm = Math.max(...bars.map(({ tile }) => tile.widthMm));
  return { overMm, underMm, handsMm, widthMm, heightMm };
}

/** How many columns let the bars be largest, and how large they then are. */
function fit(count: number, measures: Measures, shape: Layout) {
  const room = { width: shape.right - shape.left, height: shape.barsBottom - shape.barsTop };
  const ways = Array.from({ length: shape.columns }, (_, index) => {
    const columns = index + 1;
    const width = room.width / columns / (measures.widthMm + (columns > 1 ? 3 : 0));
    const height = room.height / Math.ceil(count / columns) / (measures.heightMm + 1);
    return { columns, size: Math.min(MOST_SIZE, width, height) };
  });
  return ways.reduce((best, way) => (way.size > best.size ? way : best));
}

interface PagePart {
  readonly bars: readonly BarTile[];
  readonly on: ShownBar['on'];
  /** Index of the first of them in its picture. */
  readonly first: number;
  readonly measures: Measures;
}

function placeBars({ bars, on, first, measures }: PagePart, shape: Layout): ScenePage {
  const { columns, size } = fit(bars.length, measures, shape);
  const rows = Math.ceil(bars.length / columns);
  const cell = {
    width: (shape.right - shape.left) / columns,
    height: (shape.barsBottom - shape.barsTop) / rows,
  };
  const placed = bars.map((bar, index): PlacedBar => {
    const { tile } = bar;
    const left = shape.left + (index % columns) * cell.width + (cell.width - size * tile.widthMm) / 2;
    const top = shape.barsTop + Math.floor(index / columns) * cell.height;
    const staffTop =
      top + (cell.height - size * measures.heightMm) / 2 + size * (ROOM_MM.above + measures.overMm);
    const under = staffTop + size * (tile.staffBottomMm - tile.staffTopMm + measures.underMm);
    return {
      ...{ bar, size, shown: { on, index: first + index } },
      xMm: left,
      yMm: staffTop - size * tile.staffTopMm,
      floorMm: staffTop - size * (measures.overMm + BALL_MM.over),
      handsMm: under + size * measures.handsMm,
      countsMm: under + size * (measures.handsMm + ROOM_MM.under - 1),
    };
  });
  return { bars: placed };
}

/** The pages of a picture. */
function pagesOf(
  bars: readonly BarTile[],
  on: ShownBar['on'],
  measures: Measures,
  shape: Layout,
): readonly ScenePage[] {
  const pages = Math.ceil(bars.length / MOST_BARS);
  const each = Math.ceil(bars.length / Math.max(1, pages));
  return Array.from({ length: pages }, (_, page) =>
    placeBars({ bars: bars.slice(page * each, (page + 1) * each), on, first: page * each, measures }, shape),
  );
}

/**
 * All pages of a scene, those of the exercise before those of the groove. `whole` is the scene with every limb: all bars
 * get the room that its largest needs, so that staves stand still while limbs join.
 */
export function layOutScene(
  { exercise, groove }: ScenePictures,
  { whole, hasHands }: { readonly whole: ScenePictures; readonly hasHands: boolean },
  shape: Layout,
): readonly ScenePage[] {
  const measures = measuresOf([...whole.exercise, ...whole.groove], hasHands);
  return [...pagesOf(exercise, 'exercise', measures, shape), ...pagesOf(groove, 'groove', measures, shape)];
}
