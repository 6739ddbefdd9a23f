/**
 * Going on by itself: when the ear has heard enough comfortable loops, the next exercise comes.
 *
 * Conventions: tempi in quarter notes a minute. Pure: nothing here plays or stops anything. The tempo is the
 * session's own ladder's; only going on is decided here.
 */
import { type HandsFreeState, type LadderRule, startLadder, stepHandsFree } from '@shedbook/coach';
import type { LoopVerdict } from '@shedbook/core';

/** Exercises in the order in which they come, by their numbers on the sheet. */
export interface Course {
  /** Numbers of exercises on the sheet, from 1. */
  readonly numbers: readonly number[];
  /** Clean loops, at whatever tempo, after which it is time for the next one. */
  readonly comfortableLoops: number;
}

/** What is said about going on, for words in any language. */
export type Said =
  | { readonly kind: 'next'; readonly number: number }
  | { readonly kind: 'staying' }
  | { readonly kind: 'held' }
  | { readonly kind: 'going on' }
  | { readonly kind: 'more'; readonly loops: number }
  | { readonly kind: 'all done' };

/** Where going on stands. */
export interface Going {
  readonly state: HandsFreeState;
  readonly said: Said | null;
  /** Number of the exercise to go to now, from 1, or null. */
  readonly next: number | null;
}

/** The ladder that an exercise stands on. */
export interface Standing {
  readonly rule: LadderRule;
  readonly bpm: number;
}

function itemsOf(course: Course, { rule, bpm }: Standing) {
  return course.numbers.map((number) => ({
    name: String(number),
    ladder: rule,
    fromBpm: bpm,
    comfortableLoops: course.comfortableLoops,
  }));
}

/**
 * At the start of an exercise; one that is not in the course stands before it.
 * @param expected where in the course one was sent, for an exercise that comes more than once
 */
export function arriveAt(course: Course, exercise: number, standing: Standing, expected = 0): HandsFreeState {
  const isExpected = course.numbers[expected] === exercise;
  const item = isExpected ? expected : Math.max(0, course.numbers.indexOf(exercise));
  return { item, ladder: startLadder(standing.rule, standing.bpm), comfortable: 0, staying: false };
}

function isDone(state: HandsFreeState, course: Course): boolean {
  return state.comfortable >= course.comfortableLoops || (state.ladder?.arrived ?? false);
}

/** What follows from a loop, or from a word of the student: `stay`, `go on`, or `next` at once. */
export function goOn(
  course: Course,
  state: HandsFreeState,
  event: LoopVerdict | 'stay' | 'go on' | 'next',
  standing: Standing,
): Going {
  const after = stepHandsFree(itemsOf(course, standing), state, event);
  if (event === 'stay') return { state: after, said: { kind: 'staying' }, next: null };
  if (event === 'go on') return { state: after, said: { kind: 'going on' }, next: null };
  if (after.item !== state.item) {
    const number = course.numbers[after.item];
    if (number === undefined) return { state: after, said: { kind: 'all done' }, next: null };
    return { state: after, said: { kind: 'next', number }, next: number };
  }
  if (after.item >= course.numbers.length) return { state: after, said: { kind: 'all done' }, next: null };
  if (isDone(after, course)) return { state: after, said: { kind: 'held' }, next: null };
  const loops = course.comfortableLoops - after.comfortable;
  return { state: after, said: { kind: 'more', loops }, next: null };
}
