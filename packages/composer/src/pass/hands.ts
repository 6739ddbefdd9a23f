/**
 * Stickings: which hand plays which stroke of the exercise's first part.
 *
 * Conventions: a rule names a hand for each stroke. A hand that the groove needs, or that could not keep up, gives the
 * stroke to the other one; where neither has time there is no sticking. By place, the lead hand has every second slot of
 * the beat's division from 1 on, whether struck or not, so that a place is always played by the same hand.
 * Source: common practice (alternate, lead-hand, double and paradiddle sticking); limits as in `timing.ts`.
 */
import { type Exercise, handLetter, type Lesson, type Limb } from '@shedbook/core';
import type { Arranged } from './arranged.ts';
import type { HandsRule } from './rules.data.ts';
import { busySeconds, hasTime, lengthSeconds, type TimedStroke, timedStrokes } from './timing.ts';

type HandLimb = 'lead hand' | 'other hand';

const LEAD = 'lead hand' as const;
const OTHER = 'other hand' as const;

/** Hands by turns of a row that begins anew. */
const ROWS: Readonly<Record<Exclude<HandsRule, 'by-place'>, readonly HandLimb[]>> = {
  'by-turns': [LEAD, OTHER],
  doubles: [LEAD, LEAD, OTHER, OTHER],
  paradiddle: [LEAD, OTHER, LEAD, LEAD, OTHER, LEAD, OTHER, OTHER],
};

function handFor(rule: HandsRule, { beat, slot, slots }: TimedStroke, index: number): HandLimb {
  if (rule === 'by-place') return (beat * slots + slot) % 2 === 0 ? LEAD : OTHER;
  const row = ROWS[rule];
  return row[index % row.length] as HandLimb;
}

function isHand(limb: Limb): boolean {
  return limb.endsWith('hand');
}

/** Looks that the search takes before it gives up: far more than any bar of common practice needs. */
const LOOKS = 20_000;

/**
 * A hand for each stroke, as near to the rule as the limits let it, from the first stroke on; null where there is none.
 * Depth-first: the rule's hand first, then the other; a stroke that finds neither free takes back the ones before it.
 */
export function chooseHands(
  strokes: readonly TimedStroke[],
  busy: Readonly<Record<HandLimb, readonly number[]>>,
  length: number,
  wanted: (stroke: TimedStroke, index: number) => HandLimb,
): readonly HandLimb[] | null {
  const times = { [LEAD]: [...busy[LEAD]], [OTHER]: [...busy[OTHER]] };
  const hands: HandLimb[] = [];
  let looks = 0;
  const choose = (index: number): boolean => {
    const stroke = strokes[index];
    if (!stroke) return true;
    const first = wanted(stroke, index);
    const inOrder: readonly HandLimb[] = first === LEAD ? [LEAD, OTHER] : [OTHER, LEAD];
    return inOrder.some((hand) => {
      looks += 1;
      if (looks > LOOKS || !hasTime(hand, times[hand], stroke.seconds, length)) return false;
      times[hand].push(stroke.seconds);
      hands[index] = hand;
      if (choose(index + 1)) return true;
      times[hand].pop();
      return false;
    });
  };
  return choose(0) ? hands : null;
}

/** An exercise with a hand for each stroke of its first part. */
export function giveHands(lesson: Lesson, exercise: Exercise, rule: HandsRule): Arranged {
  const [first, ...others] = exercise.parts;
  if (!first || !isHand(lesson.limbs[first.voice])) {
    return { exercise: null, said: null, notes: [{ fact: 'pass-no-hand' }] };
  }
  const bars = first.pattern.bars.length;
  const played = exercise.parts.map((part) => part.voice);
  const strokes = timedStrokes(lesson, first.voice, first.pattern);
  const busy = (limb: HandLimb) => [
    ...busySeconds(lesson, limb, played, bars),
    ...others
      .filter(({ voice }) => lesson.limbs[voice] === limb)
      .flatMap(({ voice, pattern }) => timedStrokes(lesson, voice, pattern).map((stroke) => stroke.seconds)),
  ];
  const wanted = (stroke: TimedStroke, index: number) => handFor(rule, stroke, index);
  const hands = chooseHands(
    strokes,
    { [LEAD]: busy(LEAD), [OTHER]: busy(OTHER) },
    lengthSeconds(lesson, bars),
    wanted,
  );
  if (!hands) return { exercise: null, said: null, notes: [{ fact: 'pass-too-fast' }] };
  const sticking = hands.map((hand) => handLetter(hand, lesson.setUp));
  const otherwise = hands.filter((hand, i) => hand !== wanted(strokes[i] as TimedStroke, i)).length;
  return {
    exercise: { ...exercise, sticking },
    said: { fact: `hands-${rule}`, hands: sticking.join(' ') },
    notes: otherwise > 0 ? [{ fact: 'pass-otherwise', strokes: otherwise }] : [],
  };
}
