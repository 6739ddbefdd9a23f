/**
 * Taking a rhythm over the kit: every stroke on the drum that a rule says.
 *
 * Conventions: drums go from high to low, the voice that the rhythm is written for first. Each drum is played by its
 * limb in the lesson; a drum whose limb the groove needs at that moment gives way to the next.
 * Source: common practice; the rules are ours.
 */
import { type Exercise, isAccent, type Lesson, markFor, type Voice } from '@shedbook/core';
import { compingPart } from '../page.ts';
import type { Arranged } from './arranged.ts';
import { mapMarks, placeKey } from './place.ts';
import { type KitRule, TOMS } from './rules.data.ts';
import { busySeconds, hasTime, lengthSeconds, type TimedStroke, timedStrokes } from './timing.ts';

/** The place of the drum that a stroke should go to, 0 for the voice as written. */
function drumFor(rule: KitRule, stroke: TimedStroke, index: number, drums: number, beats: number): number {
  if (rule === 'by-beat') return stroke.beat % drums;
  if (rule === 'by-stroke') return index % drums;
  if (rule === 'down-the-bar')
    return Math.floor(((stroke.beat + stroke.slot / stroke.slots) / beats) * drums);
  return isAccent(stroke.mark) ? 1 + (index % (drums - 1)) : 0;
}

/** Chooses a drum for each stroke, in order of time. */
function chooseDrums(
  lesson: Lesson,
  voice: Voice,
  strokes: readonly TimedStroke[],
  rule: KitRule,
  bars: number,
) {
  const drums: readonly Voice[] = [voice, ...TOMS.filter((tom) => tom !== voice)];
  const length = lengthSeconds(lesson, bars);
  const own = lesson.limbs[voice];
  const limbs = new Set(drums.map((drum) => lesson.limbs[drum]));
  const times = new Map([...limbs].map((limb) => [limb, [...busySeconds(lesson, limb, drums, bars)]]));
  let otherwise = 0;
  const chosen = strokes.map((stroke, index) => {
    const wanted = drumFor(rule, stroke, index, drums.length, lesson.meter.beats.length);
    const inOrder = [...drums.slice(wanted), ...drums.slice(0, wanted)];
    const drum =
      inOrder.find((each) => {
        const limb = lesson.limbs[each];
        return limb === own || hasTime(limb, times.get(limb) ?? [], stroke.seconds, length);
      }) ?? voice;
    times.get(lesson.limbs[drum])?.push(stroke.seconds);
    if (drum !== inOrder[0]) otherwise += 1;
    return drum;
  });
  return { chosen, otherwise };
}

/** An exercise whose rhythm goes over the kit. */
export function goOverKit(lesson: Lesson, exercise: Exercise, rule: KitRule): Arranged {
  const { voice, pattern } = compingPart(lesson, exercise);
  const bars = pattern.bars.length;
  const strokes = timedStrokes(lesson, voice, pattern);
  const { chosen, otherwise } = chooseDrums(lesson, voice, strokes, rule, bars);
  if (chosen.every((drum) => drum === voice)) {
    return { exercise: null, said: null, notes: [{ fact: 'pass-no-stroke' }] };
  }
  const drumAt = new Map(strokes.map((stroke, i) => [placeKey(stroke), chosen[i]]));
  const used = [voice, ...TOMS].filter((drum) => chosen.includes(drum));
  const moved = used.map((drum) => ({
    voice: drum,
    pattern: mapMarks(pattern, (mark, place) =>
      drumAt.get(placeKey(place)) === drum ? markFor(drum, mark) : '.',
    ),
  }));
  const others = exercise.parts.filter((part) => part.voice !== voice && !used.includes(part.voice));
  return {
    exercise: { ...exercise, parts: [...moved, ...others], sticking: null },
    said: { fact: `kit-${rule}`, voices: used },
    notes: otherwise > 0 ? [{ fact: 'pass-otherwise', strokes: otherwise }] : [],
  };
}
