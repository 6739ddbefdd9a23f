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

/** The next state and what is said. */
export interface HandsFreeStep {
  readonly state: HandsFreeState;
  readonly says: string;
}

function atItem(items: readonly HandsFreeItem[], item: number, staying: boolean): HandsFreeState {
  const next = items[item];
  const ladder = next ? startLadder(next.ladder, next.fromBpm) : null;
  return { item, ladder, comfortable: 0, staying };
}

/** Before the first loop of the first item. */
export function startHandsFree(items: readonly HandsFreeItem[]): HandsFreeState {
  return atItem(items, 0, false);
}

function moveOn(items: readonly HandsFreeItem[], state: HandsFreeState, why: string): HandsFreeStep {
  const next = atItem(items, state.item + 1, false);
  const name = items[next.item]?.name;
  const says =
    name === undefined ? `${why}That was the last one.` : `${why}Next: ${name} at ${next.ladder?.bpm}.`;
  return { state: next, says };
}

function afterLoop(
  items: readonly HandsFreeItem[],
  state: HandsFreeState,
  verdict: LoopVerdict,
): HandsFreeStep {
  const item = items[state.item];
  if (!item || !state.ladder) return { state, says: 'All items are played.' };
  const step = climb(state.ladder, verdict, item.ladder);
  const comfortable = state.comfortable + (verdict === 'clean' ? 1 : 0);
  const next = { ...state, ladder: step.state, comfortable };
  const isDone = step.state.arrived || comfortable >= item.comfortableLoops;
  if (!isDone || verdict !== 'clean') return { state: next, says: step.says };
  if (state.staying) return { state: next, says: `${step.says} Staying with ${item.name}, as you asked.` };
  return moveOn(items, next, `${step.says} `);
}

/** The next state after a loop or a word from the student. */
export function stepHandsFree(
  items: readonly HandsFreeItem[],
  state: HandsFreeState,
  event: HandsFreeEvent,
): HandsFreeStep {
  switch (event) {
    case 'stay':
      return { state: { ...state, staying: true }, says: 'Staying until you say go on.' };
    case 'go on':
      return { state: { ...state, staying: false }, says: 'Moving on when this one is comfortable.' };
    case 'next':
      return items[state.item] ? moveOn(items, state, '') : { state, says: 'All items are played.' };
    default:
      return afterLoop(items, state, event);
  }
}
