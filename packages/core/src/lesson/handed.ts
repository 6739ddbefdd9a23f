/**
 * Slots with the hands that play them: whatever moves a stroke moves its hand.
 *
 * Conventions: bars, beats and slots count from 0. A hand stands at a struck slot only.
 */
import type { Voice } from '../kit/voice.ts';
import { cell, isStruck, type Mark } from '../rhythm/cell.ts';
import { released } from '../rhythm/held.ts';
import type { Pattern } from '../rhythm/pattern.ts';
import type { Hand, Hands } from './hand.ts';
import { handsOf, withHands } from './hands.ts';
import type { Exercise, ExercisePart } from './lesson.ts';

/** A slot of a pattern with the hand that is written for it, or null. */
export interface HandedSlot {
  readonly mark: Mark;
  readonly hand: Hand | null;
}

/** Slots by bar, then by beat. */
export type HandedBars = readonly (readonly (readonly HandedSlot[])[])[];

/** What a voice plays, with its hands. */
export interface HandedPart {
  readonly voice: Voice;
  readonly bars: HandedBars;
}

/** A slot without a stroke. */
export const SILENT_SLOT: HandedSlot = { mark: '.', hand: null };

/** A pattern with the hands of its strokes, or without any. */
export function handSlots(pattern: Pattern, hands: Hands | null): HandedBars {
  let next = 0;
  return pattern.bars.map((cells) =>
    cells.map(({ marks }) =>
      marks.map((mark) => ({ mark, hand: isStruck(mark) ? (hands?.[next++] ?? null) : null })),
    ),
  );
}

/** What every voice of an exercise plays, with its hands. */
export function handedParts(exercise: Pick<Exercise, 'parts' | 'sticking'>): readonly HandedPart[] {
  return exercise.parts.map(({ voice, pattern }, part) => ({
    voice,
    bars: handSlots(pattern, handsOf(exercise, part)),
  }));
}

/** The hand that a stroke takes where none is written for it: the other one than the stroke before it. */
export function nextHand(before: Hand | undefined): Hand {
  return before === 'R' ? 'L' : 'R';
}

/** Hands of the strokes, those that have none by turns; null where none has one. */
function handsIn(bars: HandedBars): Hands | null {
  const struck = bars.flat(2).filter(({ mark }) => isStruck(mark));
  if (struck.every(({ hand }) => hand === null)) return null;
  const hands: Hand[] = [];
  for (const { hand } of struck) hands.push(hand ?? nextHand(hands.at(-1)));
  return hands;
}

function patternIn(bars: HandedBars): Pattern {
  return {
    bars: released(bars.map((beats) => beats.map((slots) => cell(slots.map(({ mark }) => mark).join(''))))),
  };
}

/** The parts of an exercise and the hands of its first one. */
export function withoutSlots(parts: readonly HandedPart[]): Pick<Exercise, 'parts' | 'sticking'> {
  const plain = parts.map(({ voice, bars }, index): ExercisePart => {
    const part = { voice, pattern: patternIn(bars) };
    return index === 0 ? part : withHands(part, handsIn(bars));
  });
  const [first] = parts;
  return { parts: plain, sticking: first ? handsIn(first.bars) : null };
}

/** Bars of a voice in another order, or more than once, by their numbers from 0. */
export function handedBars({ voice, bars }: HandedPart, order: readonly number[]): HandedPart {
  return { voice, bars: order.map((bar) => bars[bar] ?? []) };
}
