/**
 * The tempo ladder: it climbs after enough clean loops, comes down after a stumble, and never leaves its bounds.
 *
 * Conventions: tempi in quarter notes a minute. Pure: a state and a verdict give the next state.
 */
import { Bpm, type LoopVerdict, type Tempo } from '@shedbook/core';

/** The rungs and what it takes to climb. */
export interface LadderRule {
  readonly startBpm: number;
  readonly goalBpm: number;
  readonly stepBpm: number;
  /** Clean loops in a row that climb one step. */
  readonly cleanLoops: number;
  /** Loose loops since the last change of tempo, without a clean one among them, that come down one step. */
  readonly looseLoops: number;
}

/** Where a student stands on the ladder. */
export interface LadderState {
  readonly bpm: Bpm;
  /** Clean loops in a row at this tempo. */
  readonly clean: number;
  /** Loose loops in a row at this tempo. */
  readonly loose: number;
  /** Whether the goal has been played clean often enough. */
  readonly arrived: boolean;
}

/** One step of the ladder. */
export interface LadderStep {
  readonly state: LadderState;
  readonly move: 'up' | 'down' | 'stay' | 'arrived';
  /** A sentence for the student. */
  readonly says: string;
}

const CLEAN_LOOPS = 3;
const LOOSE_LOOPS = 4;

function lowest(rule: LadderRule): Bpm {
  return Bpm(Math.min(rule.startBpm, rule.goalBpm));
}

function within(rule: LadderRule, bpm: number): Bpm {
  return Bpm(Math.max(lowest(rule), Math.min(rule.goalBpm, bpm)));
}

/** The ladder of a lesson: its start, goal and step. */
export function ladderOf(tempo: Tempo, cleanLoops = CLEAN_LOOPS): LadderRule {
  return { ...tempo, cleanLoops, looseLoops: LOOSE_LOOPS };
}

/** The first rung, or the given tempo brought inside the bounds. */
export function startLadder(rule: LadderRule, bpm: number = rule.startBpm): LadderState {
  return { bpm: within(rule, bpm), clean: 0, loose: 0, arrived: false };
}

function loops(count: number): string {
  return `${count} clean ${count === 1 ? 'loop' : 'loops'}`;
}

function afterClean(state: LadderState, rule: LadderRule): LadderStep {
  const clean = state.clean + 1;
  if (clean < rule.cleanLoops) {
    const says = `${loops(clean)} at ${state.bpm}; ${rule.cleanLoops - clean} more ${state.bpm < rule.goalBpm ? 'to climb' : 'to arrive'}.`;
    return { state: { ...state, clean, loose: 0 }, move: 'stay', says };
  }
  if (state.bpm >= rule.goalBpm) {
    const says = `${loops(clean)} at ${state.bpm}: that is the goal.`;
    return { state: { ...state, clean, loose: 0, arrived: true }, move: 'arrived', says };
  }
  const bpm = within(rule, state.bpm + rule.stepBpm);
  const says = `${loops(clean)} at ${state.bpm}: up to ${bpm}.`;
  return { state: { ...state, bpm, clean: 0, loose: 0 }, move: 'up', says };
}

function comeDown(state: LadderState, rule: LadderRule, why: string): LadderStep {
  const bpm = within(rule, state.bpm - rule.stepBpm);
  const next = { ...state, bpm, clean: 0, loose: 0 };
  if (bpm < state.bpm) return { state: next, move: 'down', says: `${why} at ${state.bpm}: down to ${bpm}.` };
  return { state: next, move: 'stay', says: `${why} at ${bpm}: staying here, the first rung.` };
}

function afterLoose(state: LadderState, rule: LadderRule): LadderStep {
  const loose = state.loose + 1;
  if (loose >= rule.looseLoops) return comeDown(state, rule, `${loose} loose loops in a row`);
  return { state: { ...state, clean: 0, loose }, move: 'stay', says: `Staying at ${state.bpm}.` };
}

/** The next state after a loop, and why. A loop that was not heard changes nothing. */
export function climb(state: LadderState, verdict: LoopVerdict, rule: LadderRule): LadderStep {
  switch (verdict) {
    case 'unheard':
      return { state, move: 'stay', says: `Not heard; staying at ${state.bpm}.` };
    case 'stumble':
      return comeDown(state, rule, 'A stumble');
    case 'loose':
      return afterLoose(state, rule);
    case 'clean':
      return afterClean(state, rule);
  }
}
