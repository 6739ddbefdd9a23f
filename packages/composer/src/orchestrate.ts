/**
 * Orchestrations: one comping rhythm shared between two voices by a simple rule.
 *
 * Conventions: together the parts strike exactly where the rhythm does, each stroke in one part.
 * Source: common practice in jazz comping: short notes on the snare drum, long ones on the bass drum.
 */
import {
  type Cell,
  cell,
  type Exercise,
  isAccent,
  type Lesson,
  type Pattern,
  type PatternStroke,
  patternStrokes,
  subtract,
  toNumber,
  type Voice,
} from '@shedbook/core';
import { compingPattern } from './page.ts';

/** How strokes are shared out between the upper and the lower voice. */
export const SHARING_RULES = {
  'beats below': 'strokes on a beat go to the lower voice, all others to the upper',
  'long below': 'strokes followed by a beat or more of silence go to the lower voice',
  'by turns': 'strokes go to the upper and the lower voice by turns',
  'accents below': 'accented strokes go to the lower voice',
} as const;

/** Name of a rule for sharing strokes. */
export type SharingRule = keyof typeof SHARING_RULES;

/** Beats from a stroke to the next one, round the loop. */
function beatsAfter(strokes: readonly PatternStroke[], index: number, lesson: Lesson, bars: number): number {
  const here = strokes[index] as PatternStroke;
  const next = strokes[index + 1];
  const beat = toNumber(lesson.meter.bar) / lesson.meter.beats.length;
  if (next) return toNumber(subtract(next.at, here.at)) / beat;
  const first = strokes[0] as PatternStroke;
  return (toNumber(lesson.meter.bar) * bars - toNumber(subtract(here.at, first.at))) / beat;
}

function goesBelow(rule: SharingRule, stroke: PatternStroke, index: number, beatsToNext: number): boolean {
  if (rule === 'beats below') return stroke.slot === 0;
  if (rule === 'long below') return beatsToNext >= 1;
  if (rule === 'by turns') return index % 2 === 1;
  return isAccent(stroke.mark);
}

function only(pattern: Pattern, keeps: (bar: number, beat: number, slot: number) => boolean): Pattern {
  const sieve = (each: Cell, bar: number, beat: number) =>
    cell(each.marks.map((mark, slot) => (keeps(bar, beat, slot) ? mark : '.')).join(''));
  return { bars: pattern.bars.map((cells, bar) => cells.map((each, beat) => sieve(each, bar, beat))) };
}

/**
 * An exercise whose comping rhythm is shared between the comping voice and a lower one.
 * @param lower the bass drum when left out
 */
export function orchestrate(
  lesson: Lesson,
  exercise: Exercise,
  rule: SharingRule,
  lower: Voice = 'bass',
): Exercise {
  const pattern = compingPattern(lesson, exercise);
  const strokes = patternStrokes(pattern, lesson.meter);
  const below = new Set(
    strokes
      .filter((stroke, i) => goesBelow(rule, stroke, i, beatsAfter(strokes, i, lesson, pattern.bars.length)))
      .map(({ bar, beat, slot }) => `${bar} ${beat} ${slot}`),
  );
  const isBelow = (bar: number, beat: number, slot: number) => below.has(`${bar} ${beat} ${slot}`);
  const parts = [
    { voice: lesson.comping, pattern: only(pattern, (...place) => !isBelow(...place)) },
    { voice: lower, pattern: only(pattern, isBelow) },
  ];
  return { ...exercise, parts, sticking: null };
}
