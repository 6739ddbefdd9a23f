/**
 * Accents over a kept rhythm.
 *
 * Conventions: a group is a run of strokes less than a beat apart, the exercise looped. What the rule does not name
 * loses its accent; a ghost note that it names becomes an accent.
 * Source: common practice; the rules are ours.
 */
import { type Exercise, type Lesson, letterOf, type Mark, type Random } from '@shedbook/core';
import type { Arranged } from './arranged.ts';
import { mapMarks, placeFact, placeKey } from './place.ts';
import type { AccentRule } from './rules.data.ts';
import { lengthSeconds, type TimedStroke, timedStrokes } from './timing.ts';

/** Share of the strokes that free accents fall on. */
const FREE_SHARE = 1 / 3;

/** Moments closer than this are one. */
const SAME_SECONDS = 1e-6;

/** The moments of an exercise without the voice that carries the time, each as the strokes that fall together. */
function momentsOf(lesson: Lesson, exercise: Exercise): readonly (readonly TimedStroke[])[] {
  const strokes = exercise.parts
    .filter((part) => part.voice !== lesson.lead)
    .flatMap((part) => timedStrokes(lesson, part.voice, part.pattern))
    .sort((a, b) => a.seconds - b.seconds);
  const moments: TimedStroke[][] = [];
  for (const stroke of strokes) {
    const last = moments.at(-1);
    if (last && stroke.seconds - (last[0]?.seconds ?? 0) < SAME_SECONDS) last.push(stroke);
    else moments.push([stroke]);
  }
  return moments;
}

/** Some moments by chance, no two neighbours, one at least. */
function freely(count: number, random: Random): ReadonlySet<number> {
  const wanted = Math.max(1, Math.round(count * FREE_SHARE));
  const left = Array.from({ length: count }, (_, i) => i);
  const taken = new Set<number>();
  while (taken.size < wanted && left.length > 0) {
    const [index] = left.splice(random.below(left.length), 1) as [number];
    if (!taken.has(index - 1) && !taken.has(index + 1)) taken.add(index);
  }
  return taken;
}

interface Moment {
  readonly index: number;
  readonly slot: number;
  /** To the moment before, and to the one after, in beats. */
  readonly before: number;
  readonly after: number;
}

/** A beat, less what rounding takes from it. */
const A_BEAT = 1 - 1e-9;

const NAMED: Readonly<Record<Exclude<AccentRule, 'free'>, (moment: Moment) => boolean>> = {
  'on-the-beat': ({ slot }) => slot === 0,
  'off-the-beat': ({ slot }) => slot > 0,
  'first-of-group': ({ before }) => before >= A_BEAT,
  'last-of-group': ({ after }) => after >= A_BEAT,
  'every-third': ({ index }) => index % 3 === 0,
};

function isNamed(
  rule: AccentRule,
  lesson: Lesson,
  moments: readonly (readonly TimedStroke[])[],
  bars: number,
  random: Random,
) {
  if (rule === 'free') {
    const taken = freely(moments.length, random);
    return (index: number) => taken.has(index);
  }
  const length = lengthSeconds(lesson, bars);
  const beat = length / (bars * lesson.meter.beats.length);
  const secondsOf = (index: number) => moments[index]?.[0]?.seconds ?? 0;
  const gap = (from: number) => {
    const next = (from + 1) % moments.length;
    return (secondsOf(next) - secondsOf(from) + (next <= from ? length : 0)) / beat;
  };
  return (index: number) =>
    NAMED[rule]({
      index,
      slot: moments[index]?.[0]?.slot ?? 0,
      before: gap((index + moments.length - 1) % moments.length),
      after: gap(index),
    });
}

function accented(mark: Mark): Mark {
  return mark === 'g' ? 'X' : (mark.toUpperCase() as Mark);
}

/** An exercise with the accents of a rule and no others. */
export function accent(lesson: Lesson, exercise: Exercise, rule: AccentRule, random: Random): Arranged {
  const bars = exercise.parts[0]?.pattern.bars.length ?? 1;
  const moments = momentsOf(lesson, exercise);
  const named = isNamed(rule, lesson, moments, bars, random);
  const loud = moments.filter((_, index) => named(index));
  const [first] = loud;
  if (!first) return { exercise: null, said: null, notes: [{ fact: 'pass-no-stroke' }] };
  const keys = new Set(loud.flat().map((stroke) => `${stroke.voice} ${placeKey(stroke)}`));
  const parts = exercise.parts.map((part) => {
    if (part.voice === lesson.lead && exercise.parts.length > 1) return part;
    const pattern = mapMarks(part.pattern, (mark, place) => {
      if (letterOf(mark) === null) return mark;
      return keys.has(`${part.voice} ${placeKey(place)}`) ? accented(mark) : (mark.toLowerCase() as Mark);
    });
    return { ...part, pattern };
  });
  const places = loud.flatMap(([stroke]) => (stroke ? [placeFact(stroke, stroke.slots, bars)] : []));
  return { exercise: { ...exercise, parts }, said: { fact: `accents-${rule}`, places }, notes: [] };
}
