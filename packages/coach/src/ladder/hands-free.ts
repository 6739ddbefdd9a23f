/**
 * Hands-free practice: one item after the other, each with its ladder, moving on when the ear has heard enough.
 *
 * Conventions: items count from 0. A student can say `stay` (and `go on` again) at any time; nothing moves on
 * while staying.
 */
import type { LoopVerdict } from '@shedbook/core';
import { climb, type LadderRule, type LadderState, startLadder } from './ladder.ts';

/** One thing to play. */
export interface HandsFreeItem {
  /** What it is called when it is announced. */
  readonly name: string;
  readonly ladder: LadderRule;
  /** Where on the ladder to begin. */
  readonly fromBpm: number;
  /** Clean loops, at whatever tempo, after which it is time for the next item. */
  readonly comfortableLoops: number;
}

/** Where hands-free practice stands. */
export interface HandsFreeState {
  /** The item being played, from 0; the number of items when all are done. */
  readonly item: number;
  readonly ladder: LadderState | null;
  /** Number of clean loops of this item so far. */
  readonly comfortable: number;
  readonly staying: boolean;
}

/** What happens: a loop was judged, or the student said something. */
export type HandsFreeEvent = LoopVerdict | 'stay' | 'go on' | 'next';

function atItem(items: readonly HandsFreeItem[], item: number): HandsFreeState {
  const next = items[item];
  const ladder = next ? startLadder(next.ladder, next.fromBpm) : null;
  return { item, ladder, comfortable: 0, staying: false };
}

/** Before the first loop of the first item. */
export function startHandsFree(items: readonly HandsFreeItem[]): HandsFreeState {
  return atItem(items, 0);
}

function afterLoop(
  items: readonly HandsFreeItem[],
  state: HandsFreeState,
  verdict: LoopVerdict,
): HandsFreeState {
  const item = items[state.item];
  if (!item || !state.ladder) return state;
  const ladder = climb(state.ladder, verdict, item.ladder).state;
  const comfortable = state.comfortable + (verdict === 'clean' ? 1 : 0);
  const isDone = ladder.arrived || comfortable >= item.comfortableLoops;
  if (isDone && verdict === 'clean' && !state.staying) return atItem(items, state.item + 1);
  return { ...state, ladder, comfortable };
}

/** The next state after a loop or a word from the student. */
export function stepHandsFree(
  items: readonly HandsFreeItem[],
  state: HandsFreeState,
  event: HandsFreeEvent,
): HandsFreeState {
  switch (event) {
    case 'stay':
      return { ...state, staying: true };
    case 'go on':
      return { ...state, staying: false };
    case 'next':
      return items[state.item] ? atItem(items, state.item + 1) : state;
    default:
      return afterLoop(items, state, event);
  }
}
