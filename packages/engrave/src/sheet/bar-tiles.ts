/**
 * Exercises for a screen: every bar a tile of its own, so that a page can set as many beside each other as it has
 * room for and follow the music on them.
 *
 * Conventions: millimetres from a tile's upper left corner; bars from 1. All tiles of a kind are equally wide, so
 * that beats stand under each other; texts (counts, hands, names) are left to the page.
 */
import {
  type Exercise,
  grooveUnder,
  handsOf,
  type Lesson,
  sectionOf,
  sectionsOf,
  withHands,
} from '@shedbook/core';
import type { Fonts } from '../text/fonts.ts';
import type { Engraver } from '../tile/engraver.ts';
import type { Tile } from '../tile/tile.ts';
import type { SheetContext } from './context.ts';
import { textsOver, textsUnder } from './expression.ts';
import type { Block } from './item.ts';
import { barCount, grooveParts, ownParts, wholeParts } from './parts.ts';
import { type SlotPlace, slotPlaces } from './places.ts';
import { lineRequest, lineWidthMm, type PreparedExercise, prepareExercise } from './prepare.ts';
import { bracketsOf, type EndingBracket } from './repeats.ts';
import { contextOf } from './sheet.ts';
import type { SheetWords } from './sheet-words.ts';

/** One bar, and where each slot of each voice stands on it. */
export interface BarTile {
  readonly bar: number;
  readonly tile: Tile;
  readonly slots: readonly SlotPlace[];
  /** What the exercise says over and under it, as on paper: texts, brackets of endings, dynamics and hairpins. */
  readonly over: Block;
  readonly under: Block;
  /** The bracket of the ending that it lies in, or null. */
  readonly ending: Pick<EndingBracket, 'text' | 'isOpen'> | null;
}

/** The bars of an exercise, or of the groove alone. */
export interface ExerciseBars {
  /** Number of the exercise; null for the groove. */
  readonly exercise: number | null;
  /** What the exercise itself plays; for the groove, the same as `full`. */
  readonly own: readonly BarTile[];
  /** The whole groove with the exercise in it, as many bars as it takes until all begins anew. */
  readonly full: readonly BarTile[];
}

/** How much wider than its least a bar is set. */
const COMFORT = 1.1;

/** What the groove alone is numbered as while it is engraved: no exercise has this number. */
const GROOVE = 0;

/** The groove in the shape of an exercise. */
function grooveAsExercise(lesson: Lesson): Exercise {
  const parts = grooveParts(lesson).map(({ voice, pattern }) => ({ voice, pattern }));
  return { number: GROOVE, name: null, parts, sticking: null, notes: null };
}

/** The most bars that an exercise is shown with. */
const MOST_BARS = 16;

/** The exercise again and again until the groove under it begins anew too. */
function untilAllBeginAnew(lesson: Lesson, exercise: Exercise): Exercise {
  if (exercise.repeats) return exercise;
  const own = barCount(ownParts(exercise), MOST_BARS);
  const bars = barCount(wholeParts(lesson, exercise), MOST_BARS);
  const times = Math.max(1, Math.floor(bars / own));
  const again = <T>(list: readonly T[], count = times): readonly T[] =>
    Array.from({ length: count }, () => list).flat();
  const { fill: _, rests: __, ...plain } = exercise;
  // What is silent is silent each time round: the groove as it plays goes along as voices of the exercise.
  const silenced = exercise.fill || exercise.rests ? grooveUnder(lesson, exercise) : [];
  const parts = [...exercise.parts, ...silenced].map((part, index) => {
    const count = Math.ceil((own * times) / part.pattern.bars.length);
    const pattern = { bars: again(part.pattern.bars, count).slice(0, own * times) };
    const hands = index === 0 ? null : handsOf(exercise, index);
    return withHands({ ...part, pattern }, hands && again(hands, count));
  });
  const hands = handsOf(exercise, 0);
  return { ...plain, parts, sticking: hands && again(hands) };
}

interface Setting {
  readonly context: SheetContext;
  readonly prepared: readonly PreparedExercise[];
  readonly widthMm: number;
}

function barIndexes({ bars }: PreparedExercise): readonly number[] {
  return bars.map((_, index) => index);
}

/** The exercise with all its notes: what is heard is marked on them. */
function inNotes({ barRepeats: _, ...exercise }: Exercise): Exercise {
  return exercise;
}

function setAll(context: SheetContext, exercises: readonly Exercise[]): Setting {
  const prepared = exercises.map((each) => prepareExercise(context, inNotes(each)));
  const widths = prepared.flatMap((each) =>
    barIndexes(each).map((bar) => lineWidthMm(context, each, bar, bar + 1)),
  );
  return { context, prepared, widthMm: COMFORT * Math.max(...widths) };
}

function tilesOf(
  { context, widthMm }: Setting,
  prepared: PreparedExercise,
  kind: string,
): readonly BarTile[] {
  return barIndexes(prepared).map((bar) => {
    const request = lineRequest(context, prepared, bar, bar + 1);
    const { number } = prepared.exercise;
    const title = number === GROOVE ? context.words.groove : (request.title ?? '');
    const tile = context.engraver.engraveTile({
      ...request,
      id: `${kind}${number}-${bar + 1}`,
      title,
      widthMm,
    });
    const slots = slotPlaces(context.lesson, prepared.parts, tile, bar, bar + 1);
    const [bracket] = bracketsOf(prepared.exercise, bar, bar + 1);
    const ending = bracket ? { text: bracket.text, isOpen: bracket.isOpen } : null;
    const line = { from: bar, to: bar + 1, cellMm: widthMm, gutterMm: 0 };
    const over = textsOver(context, prepared, tile, line);
    return { bar: bar + 1, tile, slots, ending, over, under: textsUnder(context, prepared, tile, line) };
  });
}

interface BarTools {
  readonly engraver: Engraver;
  readonly fonts: Fonts;
  readonly words: SheetWords;
}

/**
 * Every exercise of a lesson bar by bar, after the groove alone, which comes first: that of the first section where
 * the lesson is divided.
 */
export function engraveBars(lesson: Lesson, tools: BarTools): readonly ExerciseBars[] {
  const first = sectionOf(lesson, null);
  return sectionsOf(lesson).flatMap((section) =>
    engraveSection(section, tools).filter(({ exercise }) => exercise !== null || section === first),
  );
}

function engraveSection(lesson: Lesson, { engraver, fonts, words }: BarTools): readonly ExerciseBars[] {
  const context = (staff: 'compact' | 'full') =>
    contextOf(lesson, { engraver, fonts, words, counts: true, staff });
  const groove = grooveAsExercise(lesson);
  const whole = lesson.exercises.map((each) => untilAllBeginAnew(lesson, each));
  const own = lesson.exercises.length > 0 ? setAll(context('compact'), lesson.exercises) : null;
  const full = setAll(context('full'), [groove, ...whole]);
  return full.prepared.map((prepared, index) => {
    const together = tilesOf(full, prepared, 'f');
    const alone = own?.prepared[index - 1];
    if (!own || !alone) return { exercise: null, own: together, full: together };
    return { exercise: prepared.exercise.number, own: tilesOf(own, alone, 'o'), full: together };
  });
}
