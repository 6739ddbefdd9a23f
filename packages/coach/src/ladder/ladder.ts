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

function afterClean(state: LadderState, rule: LadderRule): LadderStep {
  const clean = state.clean + 1;
  const next = { ...state, clean, loose: 0 };
  if (clean < rule.cleanLoops) return { state: next, move: 'stay' };
  if (state.bpm >= rule.goalBpm) return { state: { ...next, arrived: true }, move: 'arrived' };
  const bpm = within(rule, state.bpm + rule.stepBpm);
  return { state: { ...next, bpm, clean: 0 }, move: 'up' };
}

function comeDown(state: LadderState, rule: LadderRule): LadderStep {
  const bpm = within(rule, state.bpm - rule.stepBpm);
  return { state: { ...state, bpm, clean: 0, loose: 0 }, move: bpm < state.bpm ? 'down' : 'stay' };
}

function afterLoose(state: LadderState, rule: LadderRule): LadderStep {
  const loose = state.loose + 1;
  if (loose >= rule.looseLoops) return comeDown(state, rule);
  return { state: { ...state, clean: 0, loose }, move: 'stay' };
}

/** The next state after a loop. A loop that was not heard changes nothing. */
export function climb(state: LadderState, verdict: LoopVerdict, rule: LadderRule): LadderStep {
  switch (verdict) {
    case 'unheard':
      return { state, move: 'stay' };
    case 'stumble':
      return comeDown(state, rule);
    case 'loose':
      return afterLoose(state, rule);
    case 'clean':
      return afterClean(state, rule);
  }
}
