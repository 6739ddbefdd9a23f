/**
 * Taking a rhythm over the kit: every stroke on the drum that a rule says.
 *
 * Conventions: drums go from high to low, the voice that the rhythm is written for first. Each drum is played by its
 * limb in the lesson; a drum whose limb the groove needs at that moment gives way to the next.
 * Source: common practice; the rules are ours.
 */
import {
  type Exercise,
  type HandedPart,
  handedParts,
  isAccent,
  isStruck,
  type Lesson,
  type Limb,
  markFor,
  SILENT_SLOT,
  type Voice,
  withoutSlots,
} from '@shedbook/core';
import { compingPart } from '../page.ts';
import type { Arranged } from './arranged.ts';
import { mapSlots, placeKey } from './place.ts';
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

/** A rhythm and the drums that it may go over. */
interface Kit {
  /** The voice that it is written for first. */
  readonly drums: readonly Voice[];
  readonly strokes: readonly (TimedStroke & { readonly isHanded: boolean })[];
  /** What else the exercise strikes. */
  readonly beside: readonly TimedStroke[];
  readonly bars: number;
}

/** Chooses a drum for each stroke, in order of time. */
function chooseDrums(lesson: Lesson, rule: KitRule, { drums, strokes, beside, bars }: Kit) {
  const voice = drums[0] as Voice;
  const length = lengthSeconds(lesson, bars);
  const own = lesson.limbs[voice];
  const limbs = new Set(drums.map((drum) => lesson.limbs[drum]));
  const played = [...drums, ...beside.map((stroke) => stroke.voice)];
  const secondsOf = (limb: Limb) => [
    ...busySeconds(lesson, limb, played, bars),
    ...beside.flatMap((stroke) => (lesson.limbs[stroke.voice] === limb ? [stroke.seconds] : [])),
  ];
  const times = new Map([...limbs].map((limb) => [limb, secondsOf(limb)]));
  let otherwise = 0;
  const chosen = strokes.map((stroke, index) => {
    const wanted = drumFor(rule, stroke, index, drums.length, lesson.meter.beats.length);
    const inOrder = [...drums.slice(wanted), ...drums.slice(0, wanted)];
    const drum =
      inOrder.find((each) => {
        const limb = lesson.limbs[each];
        return (
          stroke.isHanded || limb === own || hasTime(limb, times.get(limb) ?? [], stroke.seconds, length)
        );
      }) ?? voice;
    times.get(lesson.limbs[drum])?.push(stroke.seconds);
    if (drum !== inOrder[0]) otherwise += 1;
    return drum;
  });
  return { chosen, otherwise };
}

/** The strokes of a voice in order of time, each with whether a hand is written for it. */
function handedStrokes(lesson: Lesson, { voice, bars }: HandedPart) {
  const hands = bars.flat(2).flatMap(({ mark, hand }) => (isStruck(mark) ? [hand] : []));
  const { parts } = withoutSlots([{ voice, bars }]);
  return timedStrokes(lesson, voice, parts[0]?.pattern ?? { bars: [] }).map((stroke, i) => ({
    ...stroke,
    isHanded: (hands[i] ?? null) !== null,
  }));
}

/** An exercise whose rhythm goes over the kit, but for drums that it plays already; what they play stays. */
export function goOverKit(lesson: Lesson, exercise: Exercise, rule: KitRule): Arranged {
  const { voice, pattern } = compingPart(lesson, exercise);
  const all = handedParts(exercise);
  const own = all.find((part) => part.voice === voice) ?? { voice, bars: [] };
  const others = all.filter((part) => part.voice !== voice);
  const isFree = (tom: Voice) => tom !== voice && others.every((part) => part.voice !== tom);
  const drums: readonly Voice[] = [voice, ...TOMS.filter(isFree)];
  const strokes = handedStrokes(lesson, own);
  const beside = others.flatMap((part) => handedStrokes(lesson, part));
  const kit = { drums, strokes, beside, bars: pattern.bars.length };
  const { chosen, otherwise } = chooseDrums(lesson, rule, drums.length > 1 ? kit : { ...kit, strokes: [] });
  if (chosen.every((drum) => drum === voice)) {
    return { exercise: null, said: null, notes: [{ fact: 'pass-no-stroke' }] };
  }
  const drumAt = new Map(strokes.map((stroke, i) => [placeKey(stroke), chosen[i]]));
  const used = drums.filter((drum) => chosen.includes(drum));
  const moved = used.map((drum) => ({
    voice: drum,
    bars: mapSlots(own.bars, ({ mark, hand }, place) =>
      drumAt.get(placeKey(place)) === drum ? { mark: markFor(drum, mark), hand } : SILENT_SLOT,
    ),
  }));
  return {
    exercise: { ...exercise, ...withoutSlots([...moved, ...others]) },
    said: { fact: `kit-${rule}`, voices: used },
    notes: otherwise > 0 ? [{ fact: 'pass-otherwise', strokes: otherwise }] : [],
  };
}
