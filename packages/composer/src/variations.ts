/**
 * Variations of one bar: a stroke more, a stroke fewer, all of it a slot later or earlier, a beat later, backwards, strokes and
 * silence exchanged.
 *
 * Conventions: a variation keeps the subdivision of every beat; its strokes are plain where the bar has none.
 */
import {
  type Cell,
  cell,
  isStruck,
  type Lesson,
  type Mark,
  mirror,
  type Pattern,
  type PlaceFact,
  placeInBar,
  released,
  rotate,
} from '@shedbook/core';
import { gradePattern, gradeSettingsOf } from './grade.ts';
import { type Ground, readGround } from './ground.ts';
import { isPlayable, speedLimit, strokeTimes } from './hand-speed.ts';
import type { VariationFact } from './variation-fact.ts';

/** A variation of a bar. */
export interface Variation {
  /** What was done. */
  readonly what: VariationFact;
  readonly pattern: Pattern;
  readonly points: number;
}

type Draft = Omit<Variation, 'points' | 'pattern'> & { readonly cells: readonly Cell[] };

function withMark(cells: readonly Cell[], beat: number, slot: number, mark: Mark): readonly Cell[] {
  return cells.map((each, i) =>
    i === beat ? cell(each.marks.map((m, s) => (s === slot ? mark : m)).join('')) : each,
  );
}

function oneStroke(cells: readonly Cell[], inBar: number): readonly Draft[] {
  return cells.flatMap((each, beat) =>
    each.marks.map((mark, slot): Draft => {
      const inItsBar = placeInBar(beat % inBar, slot, each.marks.length);
      const bar = Math.floor(beat / inBar) + 1;
      const place: PlaceFact = cells.length > inBar ? { fact: 'in-bar', place: inItsBar, bar } : inItsBar;
      const struck = isStruck(mark);
      return {
        what: { fact: struck ? 'variation-fewer' : 'variation-more', place },
        cells: withMark(cells, beat, slot, struck ? '.' : 'x'),
      };
    }),
  );
}

/** The marks of all beats moved by places; only where every beat has as many slots. */
function shifted(cells: readonly Cell[], places: number): readonly Cell[] | null {
  const slots = cells[0]?.marks.length ?? 0;
  if (cells.some((each) => each.marks.length !== slots)) return null;
  const marks = rotate(
    cells.flatMap((each) => each.marks),
    -places,
  );
  return cells.map((_, beat) => cell(marks.slice(beat * slots, (beat + 1) * slots).join('')));
}

function wholeBar(cells: readonly Cell[]): readonly Draft[] {
  const later = shifted(cells, 1);
  const earlier = shifted(cells, -1);
  const exchanged = cells.map((each) =>
    cell(each.marks.map((mark) => (isStruck(mark) ? '.' : 'x')).join('')),
  );
  const drafts: Draft[] = [
    { what: { fact: 'variation-beat-later' }, cells: rotate(cells, -1) },
    { what: { fact: 'variation-exchanged' }, cells: exchanged },
  ];
  if (later) drafts.push({ what: { fact: 'variation-slot-later' }, cells: later });
  if (earlier) drafts.push({ what: { fact: 'variation-slot-earlier' }, cells: earlier });
  const slots = cells[0]?.marks.length ?? 0;
  if (later) {
    const marks = mirror(cells.flatMap((each) => each.marks));
    const back = cells.map((_, beat) => cell(marks.slice(beat * slots, (beat + 1) * slots).join('')));
    drafts.push({ what: { fact: 'variation-backwards' }, cells: back });
  }
  return drafts;
}

function canPlay(ground: Ground, cells: readonly Cell[], handSpeed: number): boolean {
  const limit = speedLimit(ground, handSpeed);
  return cells.every((each, beat) => {
    const after = (beat + 1) % cells.length;
    const next = cells[after] ?? each;
    const length = ground.beatSeconds(beat);
    const times = strokeTimes(ground, after, next).map((time) => time + length);
    return isPlayable([...strokeTimes(ground, beat, each), ...times], limit);
  });
}

/** A variation that is more steps of difficulty away from its bar is another bar. */
const FAR_STEPS = 3;

/**
 * All variations of a pattern of the comping voice in cells of the vocabulary, or of the pattern itself, that can be
 * played at the goal tempo, have a stroke and are near the pattern, each once, in ascending order of difficulty.
 */
export function variationsOf(lesson: Lesson, pattern: Pattern): readonly Variation[] {
  const ground = readGround(lesson, pattern.bars.length);
  const settings = gradeSettingsOf(lesson);
  const inBar = lesson.meter.beats.length;
  const cells = pattern.bars.flat();
  const textOf = (list: readonly Cell[]) => list.map((each) => each.text).join(' ');
  const seen = new Set([textOf(cells)]);
  const drafts = [...oneStroke(cells, inBar), ...wholeBar(cells)].map((draft) => ({
    ...draft,
    cells: released([draft.cells])[0] ?? [],
  }));
  const fresh = drafts.filter((draft) => {
    const text = textOf(draft.cells);
    const isNew = !seen.has(text) && draft.cells.some((each) => each.marks.some(isStruck));
    seen.add(text);
    return isNew && canPlay(ground, draft.cells, settings.handSpeed);
  });
  const known = new Set([...lesson.vocabulary.map((each) => each.cell), ...cells].map((each) => each.text));
  const own = gradePattern(ground, pattern, settings).points;
  const most = FAR_STEPS * lesson.compose.limits.step;
  return fresh
    .filter((draft) => draft.cells.every((each) => known.has(each.text)))
    .map(({ what, cells: list }): Variation => {
      const bars = pattern.bars.map((_, bar) => list.slice(bar * inBar, (bar + 1) * inBar));
      return { what, pattern: { bars }, points: gradePattern(ground, { bars }, settings).points };
    })
    .filter(({ points }) => Math.abs(points - own) <= most)
    .sort((a, b) => a.points - b.points);
}
