/**
 * Limbs after a change of meter or feel: two strokes that come together on one limb, and did not before, cannot both be
 * played. Of the groove the lead voice's stays, then that of the voice that is written first; a written hand that the
 * groove has by then is exchanged for the other one.
 */

import { grooveUnder } from '../groove/silence.ts';
import { strikeOf } from '../kit/strike.ts';
import { handLetter, type Limb } from '../kit/voice.ts';
import type { Hand } from '../lesson/hand.ts';
import { type HandedSlot, handedParts, withoutSlots } from '../lesson/handed.ts';
import { handsOf } from '../lesson/hands.ts';
import type { Exercise, GroovePart, Lesson } from '../lesson/lesson.ts';
import { type Cell, cell, isStruck } from '../rhythm/cell.ts';
import { formatFraction, fraction, greatestCommonDivisor } from '../rhythm/fraction.ts';
import { released } from '../rhythm/held.ts';
import { type Rewriting, rewritePattern } from './change-exercises.ts';

/** A groove after a change, and how many strokes found their limb busy. */
export interface ChangedGroove {
  readonly groove: readonly GroovePart[];
  /** Number of strokes that are left out. */
  readonly lost: number;
}

/** A stroke of a groove by its limb and where in its bar it lies. */
interface Moment {
  readonly part: number;
  readonly bar: number;
  /** Limb, beat and share of the beat. */
  readonly key: string;
}

type Limbs = Pick<Lesson, 'limbs'>;

function momentsIn({ limbs }: Limbs, { voice, pattern }: GroovePart, part: number): readonly Moment[] {
  return pattern.bars.flatMap((cells, bar) =>
    cells.flatMap(({ marks }, beat) =>
      marks.flatMap((mark, slot): Moment[] => {
        const strike = strikeOf(voice, mark);
        if (!isStruck(mark) || !strike) return [];
        return [{ part, bar, key: keyOf(limbs[strike.voice], beat, slot, marks.length) }];
      }),
    ),
  );
}

function keyOf(limb: Limb, beat: number, slot: number, slots: number): string {
  return `${limb} ${beat} ${formatFraction(fraction(slot, slots))}`;
}

/** Whether two bars of voices that go round ever sound together. */
function meet(groove: readonly GroovePart[], a: Moment, b: Moment): boolean {
  const bars = (at: Moment) => groove[at.part]?.pattern.bars.length ?? 1;
  return (a.bar - b.bar) % greatestCommonDivisor(bars(a), bars(b)) === 0;
}

/** Strokes whose limb strikes elsewhere at their moment: those of the voice that gives way. */
function clashes(lesson: Limbs, groove: readonly GroovePart[], order: readonly number[]): readonly Moment[] {
  const taken = new Map<string, Moment[]>();
  return order.flatMap((part) => {
    const moments = momentsIn(lesson, groove[part] as GroovePart, part);
    const isTaken = (each: Moment) => (taken.get(each.key) ?? []).some((other) => meet(groove, each, other));
    const clashing = moments.filter(isTaken);
    for (const each of moments) {
      if (!clashing.includes(each)) taken.set(each.key, [...(taken.get(each.key) ?? []), each]);
    }
    return clashing;
  });
}

function without(lesson: Limbs, part: GroovePart, index: number, gone: readonly Moment[]): GroovePart {
  const keys = new Set(gone.filter((each) => each.part === index).map(({ bar, key }) => `${bar} ${key}`));
  const stays = (bar: number, beat: number, { marks }: Cell, slot: number) => {
    const strike = strikeOf(part.voice, marks[slot] ?? '.');
    return !strike || !keys.has(`${bar} ${keyOf(lesson.limbs[strike.voice], beat, slot, marks.length)}`);
  };
  const bars = part.pattern.bars.map((cells, bar) =>
    cells.map((each, beat) =>
      cell(each.marks.map((mark, slot) => (stays(bar, beat, each, slot) ? mark : '.')).join('')),
    ),
  );
  return { ...part, pattern: { bars: released(bars) } };
}

/** The groove of a lesson after a change. */
export function changeGroove(
  lesson: Pick<Lesson, 'groove' | 'limbs' | 'lead'>,
  how: Rewriting,
): ChangedGroove {
  const { groove } = lesson;
  const rewritten = groove.map((part) => ({
    ...part,
    pattern: rewritePattern(part.pattern, how, 'repeats').pattern,
  }));
  const isLead = (part: number) => groove[part]?.voice === lesson.lead;
  const order = groove.map((_, part) => part).toSorted((a, b) => Number(isLead(b)) - Number(isLead(a)));
  if (clashes(lesson, groove, order).length > 0) return { groove: rewritten, lost: 0 };
  const gone = clashes(lesson, rewritten, order);
  if (gone.length === 0) return { groove: rewritten, lost: 0 };
  return { groove: rewritten.map((part, index) => without(lesson, part, index, gone)), lost: gone.length };
}

/** A hand as a limb of a set-up; null for both. */
function limbOf(hand: Hand | null, { setUp }: Pick<Lesson, 'setUp'>): Limb | null {
  if (hand === null || hand === 'B') return null;
  return handLetter('lead hand', setUp) === hand ? 'lead hand' : 'other hand';
}

type Handed = Pick<Lesson, 'groove' | 'limbs' | 'setUp'>;

/** An exercise whose written hands are free where they strike, as far as exchanging them makes them so. */
function exchanged(lesson: Handed, exercise: Exercise): Exercise {
  const groove = grooveUnder(lesson, exercise);
  const busy = groove.flatMap((part, index) => momentsIn(lesson, part, index));
  const parts = handedParts(exercise);
  const own = parts[0]?.bars.length ?? 1;
  const isBusy = (bar: number, key: string) =>
    busy.some((each) => {
      const bars = groove[each.part]?.pattern.bars.length ?? 1;
      return each.key === key && (each.bar - bar) % greatestCommonDivisor(bars, own) === 0;
    });
  const freed = parts.map(({ voice, bars }) => ({
    voice,
    bars: bars.map((beats, bar) =>
      beats.map((slots, beat) =>
        slots.map(({ mark, hand }, slot): HandedSlot => {
          const limb = limbOf(hand, lesson);
          const isTaken = (each: Limb) => isBusy(bar, keyOf(each, beat, slot, slots.length));
          const other = limb === 'lead hand' ? 'other hand' : 'lead hand';
          const isExchanged = limb !== null && isTaken(limb) && !isTaken(other);
          return { mark, hand: isExchanged ? handLetter(other, lesson.setUp) : hand };
        }),
      ),
    ),
  }));
  return { ...exercise, ...withoutSlots(freed) };
}

/** Whether a written hand of an exercise strikes where the groove has it. */
function hasClash(lesson: Handed, exercise: Exercise): boolean {
  const after = exchanged(lesson, exercise);
  return exercise.parts.some((_, part) => `${handsOf(after, part)}` !== `${handsOf(exercise, part)}`);
}

/** An exercise after a change, with written hands that are free where they were free before. */
export function freeHands(
  before: { readonly lesson: Handed; readonly exercise: Exercise },
  lesson: Handed,
  exercise: Exercise,
): Exercise {
  return hasClash(before.lesson, before.exercise) ? exercise : exchanged(lesson, exercise);
}
