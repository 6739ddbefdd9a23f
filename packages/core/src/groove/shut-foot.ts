/**
 * The hi-hat foot under a hand that strikes the same hi-hat closed: the foot that chicks is the one that holds the
 * plates shut, so nothing of it is heard at such a moment.
 * Source: how a hi-hat works; common practice, which writes the foot where the hand is on another cymbal.
 */
import type { Exercise, Form, Lesson } from '../lesson/lesson.ts';
import { formatFraction } from '../rhythm/fraction.ts';
import { commonGrid } from '../rhythm/grid.ts';
import { perform } from './perform.ts';
import { barsOf } from './place.ts';
import type { Stroke } from './stroke.ts';

/** Bars of a groove that are looked at, at most: voices of many lengths come together after hundreds. */
const MOST_BARS = 64;

/** A form that plays one thing once. */
export function onceThrough(play: 'pattern' | 'time', bars: number): Form {
  return { name: 'check', sections: [{ play, bars, ending: null }], repeat: 1, countInBars: 0 };
}

/** How many bars each hi-hat of the groove has, of hand and foot. */
function barsOfHihats({ groove }: Lesson): readonly number[] {
  const parts = groove.filter(({ voice }) => voice === 'hihat' || voice === 'hihat-foot');
  return parts.map(({ pattern }) => pattern.bars.length);
}

/** The groove through once, whatever the lengths of its hi-hats; nothing where hand and foot do not both have it. */
export function hihatsOf(section: Lesson): readonly Stroke[] {
  const lengths = barsOfHihats(section);
  if (lengths.length < 2) return [];
  const form = onceThrough('time', Math.min(MOST_BARS, commonGrid(lengths)));
  return perform(section, { exercise: null, form }).strokes;
}

/** An exercise over every bar that the hi-hats of its groove may have under it. */
export function overHihats(section: Lesson, exercise: Exercise): readonly Stroke[] {
  const bars = commonGrid([barsOf(exercise), ...barsOfHihats(section)]);
  const form = onceThrough('pattern', Math.min(MOST_BARS, bars));
  return perform(section, { exercise: exercise.number, form }).strokes;
}

/** The strokes of the hi-hat foot, and those of them that cannot be heard. @param strokes of any performance */
export function shutFoot(strokes: readonly Stroke[]): {
  readonly foot: readonly Stroke[];
  readonly shut: readonly Stroke[];
} {
  const foot = strokes.filter(({ voice }) => voice === 'hihat-foot');
  const closed = new Set(
    strokes.filter(({ voice }) => voice === 'hihat').map(({ at }) => formatFraction(at)),
  );
  return { foot, shut: foot.filter(({ at }) => closed.has(formatFraction(at))) };
}

/** Whether a hi-hat foot is written in some sections, and nothing of it can be heard in groove or exercises. */
export function isFootShut(sections: readonly Lesson[]): boolean {
  const feet = sections.flatMap((section) => [
    shutFoot(hihatsOf(section)),
    ...section.exercises.map((exercise) => shutFoot(overHihats(section, exercise))),
  ]);
  return (
    feet.some(({ foot }) => foot.length > 0) && feet.every(({ foot, shut }) => foot.length === shut.length)
  );
}
