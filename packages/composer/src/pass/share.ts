/**
 * Sharing a rhythm out between two voices.
 *
 * Conventions: together the parts strike exactly where the rhythm does, each stroke in one part. A stroke that the
 * lower voice's limb has no time for stays above.
 * Source: common practice in jazz comping: short notes on the snare drum, long ones on the bass drum.
 */
import { type Exercise, isAccent, type Lesson, markFor, type Voice } from '@shedbook/core';
import { compingPart } from '../page.ts';
import type { Arranged } from './arranged.ts';
import { mapMarks, type Place, placeKey } from './place.ts';
import type { SharingRule } from './rules.data.ts';
import { busySeconds, hasTime, lengthSeconds, type TimedStroke, timedStrokes } from './timing.ts';

/** Beats from a stroke to the next one, round the loop. */
function beatsAfter(strokes: readonly TimedStroke[], index: number, length: number, beats: number): number {
  const here = strokes[index]?.seconds ?? 0;
  const next = strokes[index + 1]?.seconds ?? length + (strokes[0]?.seconds ?? 0);
  return ((next - here) / length) * beats;
}

/** A beat, less what rounding takes from it. */
const A_BEAT = 1 - 1e-9;

function goesBelow(rule: SharingRule, stroke: TimedStroke, index: number, beatsToNext: number): boolean {
  if (rule === 'beats-below') return stroke.slot === 0;
  if (rule === 'long-below') return beatsToNext >= A_BEAT;
  if (rule === 'by-turns') return index % 2 === 1;
  return isAccent(stroke.mark);
}

/** An exercise whose rhythm is shared out between its voice and a lower one. */
export function share(lesson: Lesson, exercise: Exercise, rule: SharingRule, lower: Voice): Arranged {
  const { voice, pattern } = compingPart(lesson, exercise);
  const bars = pattern.bars.length;
  const length = lengthSeconds(lesson, bars);
  const strokes = timedStrokes(lesson, voice, pattern);
  const beats = bars * lesson.meter.beats.length;
  const wanted = strokes.filter((stroke, i) =>
    goesBelow(rule, stroke, i, beatsAfter(strokes, i, length, beats)),
  );
  const limb = lesson.limbs[lower];
  const times = [...busySeconds(lesson, limb, [voice, lower], bars)];
  const isShared = limb !== lesson.limbs[voice];
  const below = wanted.filter(({ seconds }) => {
    const fits = !isShared || hasTime(limb, times, seconds, length);
    if (fits) times.push(seconds);
    return fits;
  });
  if (below.length === 0) return { exercise: null, said: null, notes: [{ fact: 'pass-no-stroke' }] };
  if (below.length === strokes.length)
    return { exercise: null, said: null, notes: [{ fact: 'pass-every-stroke' }] };
  const keys = new Set(below.map(placeKey));
  const isBelow = (place: Place) => keys.has(placeKey(place));
  const parts = [
    { voice, pattern: mapMarks(pattern, (mark, place) => (isBelow(place) ? '.' : mark)) },
    {
      voice: lower,
      pattern: mapMarks(pattern, (mark, place) => (isBelow(place) ? markFor(lower, mark) : '.')),
    },
  ];
  const left = wanted.length - below.length;
  return {
    exercise: { ...exercise, parts, sticking: null },
    said: { fact: `share-${rule}`, upper: voice, lower },
    notes: left > 0 ? [{ fact: 'pass-otherwise', strokes: left }] : [],
  };
}
