/**
 * Fills: a phrase whose last beat, or last two, leave the rhythm and the time for both hands by turns.
 *
 * Conventions: the exercise is repeated until it fills the phrase; in the beats of the fill the hands leave groove and
 * exercise, feet that keep the time go on. Each hand plays the snare drum and the toms that are its own in the lesson,
 * so that no hand crosses the other. A fill is drawn by its seed from all that both hands can play at the goal tempo,
 * coming from the rhythm and going back to it.
 * Source: common practice; limits as in `timing.ts`.
 */
import {
  type Cell,
  cell,
  type Exercise,
  type ExercisePart,
  type Fill,
  type Hands,
  handedBars,
  handLetter,
  handSlots,
  handsOf,
  homeOf,
  isAccent,
  isStruck,
  type Lesson,
  type Mark,
  type Random,
  SILENT_SLOT,
  saidAt,
  strikeOf,
  struckSlots,
  type Voice,
  withHands,
  withoutSlots,
  writtenOut,
} from '@shedbook/core';
import { compingPart } from '../page.ts';
import type { Arranged } from './arranged.ts';
import { mapMarks, mapSlots, repeatBars } from './place.ts';
import { FILL_CELLS, TOMS } from './rules.data.ts';
import { hasTime, lengthSeconds, type TimedStroke, timedStrokes } from './timing.ts';

type HandLimb = 'lead hand' | 'other hand';
const HANDS = ['lead hand', 'other hand'] as const satisfies readonly HandLimb[];

/** What to end the phrase with. */
export interface FillOptions {
  /** Length of the fill in beats. */
  readonly beats: 1 | 2;
  /** Bars of the phrase; an exercise that is longer, or does not divide it, is repeated whole. */
  readonly bars: number;
}

/** How a fill goes over a hand's drums: staying, down, or from the first to the last. */
const PATHS: readonly ((share: number, drums: number) => number)[] = [
  () => 0,
  (share, drums) => Math.floor(share * drums),
  (share, drums) => (share < 0.5 ? 0 : drums - 1),
];

/** A stroke of a fill: its place in the fill, its hand and its drum. */
interface FillStroke {
  readonly beat: number;
  readonly slot: number;
  readonly slots: number;
  readonly hand: HandLimb;
  readonly voice: Voice;
}

/** The drum that fills are built on: the one that the rhythm is written for, if it is a drum of the hands; else the snare. */
function baseDrum(lesson: Lesson, voice: Voice): Voice {
  const home = homeOf(voice) ?? voice;
  return home.startsWith('tom') && lesson.limbs[home].endsWith('hand') ? home : 'snare';
}

/** The part as its home drum writes it: a side stick is a mark of the snare drum. */
function atHome(part: ExercisePart, drum: Voice): ExercisePart {
  if (part.voice === drum) return part;
  const written =
    (['s', 'r', 'o'] as const).find((mark) => strikeOf(drum, mark)?.voice === part.voice) ?? 'x';
  const pattern = mapMarks(part.pattern, (mark): Mark => {
    if (!isStruck(mark)) return mark;
    return isAccent(mark) ? (written.toUpperCase() as Mark) : written;
  });
  return withHands({ voice: drum, pattern }, part.hands ?? null);
}

/** Slots that a fill's beats may have: those of the vocabulary and the lead voice; of eighths, sixteenths too. */
function divisions(lesson: Lesson): readonly (2 | 3 | 4)[] {
  const lead = lesson.groove.find((part) => part.voice === lesson.lead);
  const cells = [...lesson.vocabulary.map((each) => each.cell), ...(lead?.pattern.bars.flat() ?? [])];
  const sizes = new Set(cells.map((each) => each.marks.length));
  if (sizes.has(3) || sizes.has(6) || lesson.meter.compound) return [3];
  return sizes.has(4) ? [4] : [2, 4];
}

/** Every row of cells for a fill of so many beats. */
function cellRows(lesson: Lesson, beats: number): readonly (readonly string[])[] {
  return divisions(lesson).flatMap((slots) => {
    const one = FILL_CELLS[slots].map((text) => [text]);
    return beats === 1 ? one : one.flatMap((row) => FILL_CELLS[slots].map((text) => [...row, text]));
  });
}

function drumsOf(lesson: Lesson, base: Voice, hand: HandLimb): readonly Voice[] {
  return [base, ...TOMS.filter((tom) => tom !== base && lesson.limbs[tom] === hand)];
}

/** A row of cells played by turns from one hand, along a path. */
function fillFrom(
  lesson: Lesson,
  base: Voice,
  row: readonly string[],
  first: 0 | 1,
  path: (typeof PATHS)[number],
): readonly FillStroke[] {
  const places = row.flatMap((text, beat) =>
    struckSlots(cell(text)).map((slot) => ({ beat, slot, slots: text.length })),
  );
  return places.map((place, i): FillStroke => {
    const hand = HANDS[(i + first) % 2] as HandLimb;
    const drums = drumsOf(lesson, base, hand);
    return { ...place, hand, voice: drums[path(i / places.length, drums.length)] as Voice };
  });
}

/** Every fill of a length, easy to count and in one order. */
function allFills(lesson: Lesson, base: Voice, beats: number): readonly (readonly FillStroke[])[] {
  return cellRows(lesson, beats).flatMap((row) =>
    PATHS.flatMap((path) => ([0, 1] as const).map((first) => fillFrom(lesson, base, row, first, path))),
  );
}

/** A part over so many bars, repeated, without the last beats of the phrase; hands go with their strokes. */
function repeatedPart(part: ExercisePart, hands: Hands | null, bars: number, beats: number): ExercisePart {
  const own = part.pattern.bars.length;
  const order = Array.from({ length: bars }, (_, bar) => bar % own);
  const whole = handedBars({ voice: part.voice, bars: handSlots(part.pattern, hands) }, order);
  const isFill = (bar: number, beat: number) =>
    bar === bars - 1 && beat >= (whole.bars[bar]?.length ?? 0) - beats;
  const hushed = mapSlots(whole.bars, (slot, { bar, beat }) => (isFill(bar, beat) ? SILENT_SLOT : slot));
  const { parts, sticking } = withoutSlots([{ voice: part.voice, bars: hushed }]);
  return withHands(parts[0] as ExercisePart, sticking);
}

interface Phrase {
  readonly base: Voice;
  readonly bars: number;
  readonly beats: number;
  /** Everything but the fill: the base drum first, then what else the exercise plays, then hands of the groove. */
  readonly parts: readonly ExercisePart[];
  /** When each hand strikes outside the fill. */
  readonly busy: Readonly<Record<HandLimb, readonly number[]>>;
}

/** The hands of an exercise's first part through the phrase, one for each stroke; by the voice's limb where none are written. */
function writtenHands(
  lesson: Lesson,
  exercise: Exercise,
  part: ExercisePart,
  bars: number,
): readonly HandLimb[] {
  const limb = lesson.limbs[part.voice];
  const strokes = timedStrokes(lesson, part.voice, part.pattern).length;
  const leads = handLetter('lead hand', lesson.setUp);
  const once = handsOf(
    exercise,
    exercise.parts.findIndex((each) => each.voice === part.voice),
  );
  const hands = Array.from({ length: strokes }, (_, i): HandLimb => {
    const written = once?.[i];
    if (written === undefined || written === 'B') return limb === 'lead hand' ? limb : 'other hand';
    return written === leads ? 'lead hand' : 'other hand';
  });
  return Array.from({ length: bars / part.pattern.bars.length }, () => hands).flat();
}

function phraseOf(lesson: Lesson, exercise: Exercise, { beats, bars: asked }: FillOptions): Phrase {
  const comping = compingPart(lesson, exercise);
  const own = comping.pattern.bars.length;
  const bars = own * Math.max(1, Math.ceil(asked / own));
  const base = baseDrum(lesson, comping.voice);
  const isOnBase = comping.voice === base || homeOf(comping.voice) === base;
  const played = exercise.parts.map((part) => part.voice);
  const repeated = (part: ExercisePart) =>
    repeatedPart(part, handsOf(exercise, exercise.parts.indexOf(part)), bars, beats);
  const silent = mapMarks(repeatBars(comping.pattern, bars), () => '.');
  const drum = isOnBase ? atHome(repeated(comping), base) : { voice: base, pattern: silent };
  const others = exercise.parts.filter((part) => !(isOnBase && part === comping)).map(repeated);
  const hands = lesson.groove
    .filter(
      ({ voice }) => lesson.limbs[voice].endsWith('hand') && !played.includes(voice) && voice !== drum.voice,
    )
    .map(repeated);
  const parts = [drum, ...others, ...hands].filter(
    (part, i, all) => all.findIndex((each) => each.voice === part.voice) === i,
  );
  const secondsOf = (limb: HandLimb) =>
    [...others, ...hands]
      .filter(({ voice }) => lesson.limbs[voice] === limb)
      .flatMap(({ voice, pattern }) => timedStrokes(lesson, voice, pattern).map(({ seconds }) => seconds));
  const written = writtenHands(lesson, exercise, comping, bars);
  const onBase = timedStrokes(lesson, base, drum.pattern);
  const ofBase = (limb: HandLimb) =>
    onBase.flatMap(({ seconds }, i) => (written[i] === limb ? [seconds] : []));
  const busy = {
    'lead hand': [...secondsOf('lead hand'), ...ofBase('lead hand')],
    'other hand': [...secondsOf('other hand'), ...ofBase('other hand')],
  };
  return { base, bars, beats, parts, busy };
}

/** The strokes of a fill with their times in the phrase. */
function timedFill(
  lesson: Lesson,
  phrase: Phrase,
  fill: readonly FillStroke[],
): readonly (TimedStroke & FillStroke)[] {
  const inBar = lesson.meter.beats.length;
  return fill.map((stroke) => {
    const beat = inBar - phrase.beats + stroke.beat;
    const text = Array.from({ length: stroke.slots }, (_, slot) => (slot === stroke.slot ? 'x' : '.')).join(
      '',
    );
    const bar = lesson.meter.beats.map((_, i) => cell(i === beat ? text : '.'));
    const rest = lesson.meter.beats.map(() => cell('.'));
    const bars = Array.from({ length: phrase.bars }, (_, i) => (i === phrase.bars - 1 ? bar : rest));
    const [timed] = timedStrokes(lesson, stroke.voice, { bars });
    return { ...stroke, ...(timed as TimedStroke) };
  });
}

function isPlayable(lesson: Lesson, phrase: Phrase, fill: readonly FillStroke[]): boolean {
  const length = lengthSeconds(lesson, phrase.bars);
  const times = { 'lead hand': [...phrase.busy['lead hand']], 'other hand': [...phrase.busy['other hand']] };
  return timedFill(lesson, phrase, fill).every(({ hand, seconds }) => {
    const fits = hasTime(hand, times[hand], seconds, length);
    times[hand].push(seconds);
    return fits;
  });
}

/** The exercise with what it says of its bars said of every time through the phrase. */
function repeatedWords(exercise: Exercise, bars: number): Exercise {
  const own = exercise.parts[0]?.pattern.bars.length ?? 1;
  return { ...exercise, ...saidAt(exercise, (bar) => everyTime(bar, own, bars)) };
}

function everyTime(bar: number, own: number, bars: number): readonly number[] {
  return Array.from({ length: bars / own }, (_, time) => bar + time * own);
}

/** The cells of a part with a fill's strokes on its voice put in, and where hands are written, theirs too. */
function withFill(
  lesson: Lesson,
  part: ExercisePart,
  phrase: Phrase,
  fill: readonly FillStroke[],
): ExercisePart {
  const mine = fill.filter((stroke) => stroke.voice === part.voice);
  const hands = part.hands && [...part.hands, ...mine.map(({ hand }) => handLetter(hand, lesson.setUp))];
  const last = part.pattern.bars.length - 1;
  const bar = part.pattern.bars[last] ?? [];
  const from = bar.length - phrase.beats;
  const cells = bar.map((each, beat): Cell => {
    const here = mine.filter((stroke) => stroke.beat === beat - from);
    const [first] = here;
    if (!first) return each;
    const mark = (slot: number): Mark => {
      const stroke = here.find((one) => one.slot === slot);
      if (!stroke) return '.';
      return stroke === fill[0] ? 'X' : 'x';
    };
    return cell(Array.from({ length: first.slots }, (_, slot) => mark(slot)).join(''));
  });
  const pattern = { bars: part.pattern.bars.with(last, cells) };
  return withHands({ voice: part.voice, pattern }, hands ?? null);
}

/** The hands of the base drum's part: as before, then those of the fill. */
function stickingOf(lesson: Lesson, exercise: Exercise, phrase: Phrase, fill: readonly FillStroke[]) {
  const drum = phrase.parts[0] as ExercisePart;
  const before = timedStrokes(lesson, drum.voice, drum.pattern).length;
  const written = writtenHands(lesson, exercise, compingPart(lesson, exercise), phrase.bars).slice(0, before);
  const hands = [...written, ...fill.filter(({ voice }) => voice === phrase.base).map(({ hand }) => hand)];
  return hands.length > 0 ? hands.map((hand) => handLetter(hand, lesson.setUp)) : null;
}

/** Where the fill stands: the groove's hands are silent in it, its feet go on. */
function fillAt({ meter }: Lesson, { bars, beats }: Phrase): Fill {
  return { bar: bars - 1, beat: meter.beats.length - beats, silences: ['lead hand', 'other hand'] };
}

/** A phrase made of an exercise, which ends in a fill. */
export function endInFill(lesson: Lesson, given: Exercise, options: FillOptions, random: Random): Arranged {
  const exercise = writtenOut(given);
  const phrase = phraseOf(lesson, exercise, options);
  const playable = allFills(lesson, phrase.base, options.beats).filter((fill) =>
    isPlayable(lesson, phrase, fill),
  );
  if (playable.length === 0) return { exercise: null, said: null, notes: [{ fact: 'pass-too-fast' }] };
  const fill = playable[random.below(playable.length)] as readonly FillStroke[];
  const voices = [...new Set(fill.map((stroke) => stroke.voice))];
  const silent = (phrase.parts[0] as ExercisePart).pattern;
  const toms = voices
    .filter((voice) => !phrase.parts.some((part) => part.voice === voice))
    .map((voice) => ({ voice, pattern: mapMarks(silent, () => '.') }));
  const [drum, ...others] = [...phrase.parts, ...toms].map((part) =>
    withFill(lesson, part, phrase, fill),
  ) as [ExercisePart, ...ExercisePart[]];
  const parts = [withHands(drum, null), ...others];
  const sticking = stickingOf(lesson, exercise, phrase, fill);
  return {
    exercise: { ...repeatedWords(exercise, phrase.bars), parts, sticking, fill: fillAt(lesson, phrase) },
    said: { fact: 'fill', beats: options.beats, bars: phrase.bars, voices },
    notes: [],
  };
}
