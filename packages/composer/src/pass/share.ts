/**
 * Sharing a rhythm out between two voices.
 *
 * Conventions: together the parts strike exactly where the rhythm does, each stroke in one part. A stroke that the
 * lower voice's limb has no time for, or no slot where it plays already, stays above. Hands go with their strokes.
 * Source: common practice in jazz comping: short notes on the snare drum, long ones on the bass drum.
 */
import {
  type Exercise,
  type ExercisePart,
  type HandedBars,
  type HandedPart,
  type HandedSlot,
  handedParts,
  isAccent,
  isStruck,
  type Lesson,
  markFor,
  SILENT_SLOT,
  type Voice,
  withinItsBars,
  withoutSlots,
} from '@shedbook/core';
import { compingPart } from '../page.ts';
import type { Arranged } from './arranged.ts';
import { mapSlots, type Place, placeKey } from './place.ts';
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

/** Slots of a voice with those of another put among them. */
function together(own: HandedBars, added: HandedBars): HandedBars {
  return own.map((beats, bar) =>
    beats.map((slots, beat) => {
      const more = added[bar]?.[beat] ?? [];
      if (!isStruckIn(more)) return slots;
      return isStruckIn(slots)
        ? slots.map((slot, i) => (isStruck(slot.mark) ? slot : (more[i] ?? slot)))
        : more;
    }),
  );
}

function isStruckIn(slots: readonly HandedSlot[]): boolean {
  return slots.some(({ mark }) => isStruck(mark));
}

/** Whether a voice that plays already has an empty slot for a stroke: in a beat that is divided alike, or silent. */
function hasRoom(bars: HandedBars, { bar, beat, slot, slots }: TimedStroke): boolean {
  const own = bars[bar]?.[beat] ?? [];
  return !isStruckIn(own) || (own.length === slots && !isStruck(own[slot]?.mark ?? '.'));
}

/** Strokes that the lower voice takes over: those that the rule names and its limb has time for. */
function strokesBelow(
  lesson: Lesson,
  { voice, pattern }: ExercisePart,
  rule: SharingRule,
  lower: HandedPart,
) {
  const bars = pattern.bars.length;
  const length = lengthSeconds(lesson, bars);
  const strokes = timedStrokes(lesson, voice, pattern);
  const beats = bars * lesson.meter.beats.length;
  const wanted = strokes.filter((stroke, i) =>
    goesBelow(rule, stroke, i, beatsAfter(strokes, i, length, beats)),
  );
  const limb = lesson.limbs[lower.voice];
  const own = timedStrokes(lesson, lower.voice, withoutSlots([lower]).parts[0]?.pattern ?? { bars: [] });
  const times = [
    ...busySeconds(lesson, limb, [voice, lower.voice], bars),
    ...own.map(({ seconds }) => seconds),
  ];
  const isShared = limb !== lesson.limbs[voice] || own.length > 0;
  const below = wanted.filter((stroke) => {
    const { seconds } = stroke;
    const fits = hasRoom(lower.bars, stroke) && (!isShared || hasTime(limb, times, seconds, length));
    if (fits) times.push(seconds);
    return fits;
  });
  return { strokes: strokes.length, wanted: wanted.length, below };
}

/** An exercise whose rhythm is shared out between its voice and a lower one; what others play stays. */
export function share(lesson: Lesson, exercise: Exercise, rule: SharingRule, lower: Voice): Arranged {
  const comping = compingPart(lesson, exercise);
  const { voice } = comping;
  const all = handedParts(exercise);
  const upper = all.find((part) => part.voice === voice)?.bars ?? [];
  const silent = { voice: lower, bars: mapSlots(upper, () => SILENT_SLOT) };
  const own = all.find((part) => part.voice === lower) ?? silent;
  const { strokes, wanted, below } = strokesBelow(lesson, comping, rule, own);
  if (below.length === 0) return { exercise: null, said: null, notes: [{ fact: 'pass-no-stroke' }] };
  if (below.length === strokes) return { exercise: null, said: null, notes: [{ fact: 'pass-every-stroke' }] };
  const keys = new Set(below.map(placeKey));
  const isBelow = (place: Place) => keys.has(placeKey(place));
  const hasHands = lesson.limbs[lower].endsWith('hand');
  const slotBelow = ({ mark, hand }: HandedSlot) => ({
    mark: markFor(lower, mark),
    hand: hasHands ? hand : null,
  });
  const moved = mapSlots(upper, (slot, place) => (isBelow(place) ? slotBelow(slot) : SILENT_SLOT));
  const parts = [
    { voice, bars: mapSlots(upper, (slot, place) => (isBelow(place) ? SILENT_SLOT : slot)) },
    { voice: lower, bars: together(own.bars, moved) },
    ...all.filter((part) => part.voice !== voice && part.voice !== lower),
  ];
  const left = wanted - below.length;
  return {
    exercise: withinItsBars({ ...exercise, ...withoutSlots(parts) }),
    said: { fact: `share-${rule}`, upper: voice, lower },
    notes: left > 0 ? [{ fact: 'pass-otherwise', strokes: left }] : [],
  };
}
