/**
 * Patterns rearranged: backwards, moved by a slot, put on another voice; and beats and bars taken out and put in.
 *
 * Conventions: bars, beats and slots count from 0. Where all bars are changed their number stays; where bars come or go,
 * what is written for single bars (dynamics, texts, a fill, repeats) goes, since it no longer stands where it was meant.
 */
import {
  type Cell,
  cell,
  isAccent,
  isStruck,
  type Mark,
  type Pattern,
  strikeOf,
  type Voice,
} from '@shedbook/core';
import type { Unnumbered } from './exercises.ts';
import type { SlotPlace } from './strokes.ts';

/** What is taken at once: a beat, a bar, or whole exercises. */
export type Unit = 'beat' | 'bar' | 'exercise';

/** A stretch of a pattern. */
export interface Stretch {
  readonly unit: Unit;
  readonly place: Pick<SlotPlace, 'bar' | 'beat'>;
}

/** What every voice of an exercise plays in some beats or bars: texts of cells, bar by bar. */
export interface Snippet {
  readonly unit: 'beat' | 'bar';
  readonly parts: readonly { readonly voice: Voice; readonly bars: readonly (readonly string[])[] }[];
}

type Bars = Pattern['bars'];

function isIn({ unit, place }: Stretch, bar: number, beat: number): boolean {
  if (unit === 'exercise') return true;
  return bar === place.bar && (unit === 'bar' || beat === place.beat);
}

/** Puts marks, in order, in the slots of a stretch; the division of each beat stays. */
function withMarks(bars: Bars, stretch: Stretch, marks: readonly Mark[]): Bars {
  let next = 0;
  return bars.map((beats, bar) =>
    beats.map((each, beat) => {
      if (!isIn(stretch, bar, beat)) return each;
      const own = marks.slice(next, next + each.marks.length);
      next += each.marks.length;
      return cell(own.join(''));
    }),
  );
}

function cellsIn(bars: Bars, stretch: Stretch): readonly Cell[] {
  return bars.flatMap((beats, bar) => beats.filter((_, beat) => isIn(stretch, bar, beat)));
}

/** Reads a stretch from its end: beats in the other order, each with its own division, slots turned round with them. */
function turned(bars: Bars, stretch: Stretch): Bars {
  const cells = cellsIn(bars, stretch).toReversed();
  let next = 0;
  return bars.map((beats, bar) =>
    beats.map((each, beat) => {
      if (!isIn(stretch, bar, beat)) return each;
      const from = cells[next] ?? each;
      next += 1;
      return cell(from.marks.toReversed().join(''));
    }),
  );
}

/** The same exercise with other patterns; hands stay where there are as many strokes for them. */
function withPatterns(exercise: Unnumbered, change: (bars: Bars, voice: Voice) => Bars): Unnumbered {
  const parts = exercise.parts.map(({ voice, pattern }) => ({
    voice,
    pattern: { bars: change(pattern.bars, voice) },
  }));
  const sticking = strokesOf(parts[0]?.pattern) === exercise.sticking?.length ? exercise.sticking : null;
  return { ...exercise, parts, sticking };
}

function strokesOf(pattern: Pattern | undefined): number {
  return pattern?.bars.flat(2).flatMap(({ marks }) => marks.filter(isStruck)).length ?? 0;
}

/** The exercise without what is written for single bars. */
function withoutPlaces(exercise: Unnumbered): Unnumbered {
  const { dynamics: _d, above: _a, below: _b, fill: _f, repeats: _r, ...rest } = exercise;
  return rest;
}

/** The exercise read from its end, in the stretch; hands turn round with their strokes. */
export function backwards(exercise: Unnumbered, stretch: Stretch): Unnumbered {
  const after = withPatterns(exercise, (bars) => turned(bars, stretch));
  const isWhole = stretch.unit === 'exercise';
  return isWhole && exercise.sticking ? { ...after, sticking: exercise.sticking.toReversed() } : after;
}

/** The exercise with everything in the stretch one slot later (1) or earlier (-1); what leaves it comes in at its other end. */
export function shifted(exercise: Unnumbered, stretch: Stretch, by: -1 | 1): Unnumbered {
  const after = withPatterns(exercise, (bars) => {
    const marks = cellsIn(bars, stretch).flatMap((each) => each.marks);
    const moved =
      by > 0 ? [...marks.slice(-1), ...marks.slice(0, -1)] : [...marks.slice(1), ...marks.slice(0, 1)];
    return withMarks(bars, stretch, moved);
  });
  return stretch.unit === 'exercise' ? after : { ...after, sticking: null };
}

/** A mark as another voice can play it: its accent is kept, what the voice has no such stroke for is a plain one. */
function playedOn(voice: Voice, mark: Mark): Mark {
  if (!isStruck(mark) || strikeOf(voice, mark)) return mark;
  const plain: Mark = isAccent(mark) ? 'X' : 'x';
  return strikeOf(voice, plain) ? plain : 'x';
}

/** The exercise with one of its voices played by another; as it was where the exercise has that one already. */
export function ontoVoice(exercise: Unnumbered, part: number, voice: Voice): Unnumbered {
  if (exercise.parts.some((each) => each.voice === voice)) return exercise;
  const parts = exercise.parts.map((each, index) => {
    if (index !== part) return each;
    const bars = each.pattern.bars.map((beats) =>
      beats.map(({ marks }) => cell(marks.map((mark) => playedOn(voice, mark)).join(''))),
    );
    return { voice, pattern: { bars } };
  });
  return { ...exercise, parts };
}

/** What every voice plays in a beat or a bar. */
export function snippetOf(
  exercise: Unnumbered,
  unit: 'beat' | 'bar',
  { bar, beat }: Stretch['place'],
): Snippet {
  const parts = exercise.parts.map(({ voice, pattern }) => {
    const cells = (pattern.bars[bar] ?? []).map(({ text }) => text);
    return { voice, bars: [unit === 'bar' ? cells : cells.slice(beat, beat + 1)] };
  });
  return { unit, parts };
}

/** The exercise without a bar, or with a silent beat; its only bar is silent then. */
export function withoutSnippet(exercise: Unnumbered, { unit, place }: Stretch): Unnumbered {
  const isOnly = (exercise.parts[0]?.pattern.bars.length ?? 1) < 2;
  const silent = ({ marks }: Cell) => cell('.'.repeat(marks.length));
  if (unit === 'bar' && !isOnly) {
    return withoutPlaces(withPatterns(exercise, (bars) => bars.toSpliced(place.bar, 1)));
  }
  return withPatterns(exercise, (bars) =>
    bars.map((beats, bar) =>
      beats.map((each, beat) => (isIn({ unit, place }, bar, beat) ? silent(each) : each)),
    ),
  );
}

/** What a voice plays of a snippet: what was its own; of a snippet of one voice, that one's; silence else. */
function barsFor(snippet: Snippet, voice: Voice, isFirst: boolean): readonly (readonly string[])[] {
  const own = snippet.parts.find((each) => each.voice === voice);
  if (own) return own.bars;
  const [first] = snippet.parts;
  const bars = first?.bars ?? [];
  const isOnly = snippet.parts.length === 1 && isFirst;
  return bars.map((beats) =>
    beats.map((text) =>
      isOnly ? [...text].map((mark) => playedOn(voice, mark as Mark)).join('') : '.'.repeat(text.length),
    ),
  );
}

/** The exercise with a bar put in behind a bar, or a beat in place of a beat. */
export function withSnippet(
  exercise: Unnumbered,
  snippet: Snippet,
  { bar, beat }: Stretch['place'],
): Unnumbered {
  let isFirst = true;
  const after = withPatterns(exercise, (bars, voice) => {
    const given = barsFor(snippet, voice, isFirst).map((texts) => texts.map((text) => cell(text)));
    isFirst = false;
    if (snippet.unit === 'bar') return bars.toSpliced(bar + 1, 0, ...given);
    const own = bars[bar] ?? [];
    const [beats = []] = given;
    return bars.with(bar, own.toSpliced(beat, beats.length, ...beats).slice(0, own.length));
  });
  return snippet.unit === 'bar' ? withoutPlaces(after) : after;
}
