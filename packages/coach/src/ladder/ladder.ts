/**
 * The tempo ladder: it climbs after clean loops in a row, comes down after two that were not clean, and never leaves
 * its bounds. It goes under the start of the lesson, down to half of it.
 *
 * Conventions: tempi in quarter notes a minute. Pure: a state and a verdict give the next state.
 * Sources: that practice should be as hard as a learner can make use of is the challenge point of Guadagnoli & Lee
 * (2004), Journal of Motor Behavior 36(2), 212–224, who give no figure. Wilson, Shenhav, Straccia & Cohen (2019),
 * Nature Communications 10, 4646, find about 85 % successes best for learning a decision in two. Steps of unequal
 * size that settle on a wanted share: Kaernbach (1991), Perception & Psychophysics 49(3), 227–229, after the
 * up-down method of Levitt (1971), JASA 49, 467–477.
 * Differs from the sources: the procedures were made to measure a threshold; here they set the tempo of practice.
 * With three clean loops up by half a step and two others down by a whole one the clean share settles where
 * p³(2 − p³) = 2/3, at p = 0.75 and above it on the rungs below: about four loops in five, between the two.
 */
import { Bpm, bringWithin, type LoopVerdict, PLAYED_TEMPI, type Tempo } from '@shedbook/core';

/** The rungs and what it takes to climb. */
export interface LadderRule {
  /** Where one begins, and what may be gone under. */
  readonly startBpm: number;
  readonly goalBpm: number;
  /** How far it comes down, and how far it climbs before it ever came down. */
  readonly stepBpm: number;
  readonly lowestBpm: number;
  /** Clean loops in a row that climb. */
  readonly cleanLoops: number;
  /** Loops that were not clean since the last change of tempo that come down one step. */
  readonly missedLoops: number;
}

/** Where a student stands on the ladder. */
export interface LadderState {
  readonly bpm: Bpm;
  /** Clean loops in a row at this tempo. */
  readonly clean: number;
  /** Loops that were not clean at this tempo. */
  readonly missed: number;
  /** How far the next climb goes: a whole step until the ladder came down, then half of one. */
  readonly climbBpm: number;
  /** Whether the goal has been played clean often enough. */
  readonly arrived: boolean;
}

/** One step of the ladder. */
export interface LadderStep {
  readonly state: LadderState;
  readonly move: 'up' | 'down' | 'stay' | 'arrived';
}

/**
 * Share of clean loops at which the ladder settles: where p³(2 − p³) = 2/3, see above. About 0.75, no unit.
 */
export const SETTLED_SHARE = Math.cbrt(1 - Math.sqrt(1 / 3));

/** Clean loops at one tempo after which it counts as played clean. */
export const CLEAN_LOOPS = 3;
const MISSED_LOOPS = 2;

/** The ladder goes down to this share of the start. */
const LOWEST_SHARE = 0.5;

function within({ lowestBpm, goalBpm }: LadderRule, bpm: number): Bpm {
  return Bpm(Math.max(lowestBpm, Math.min(goalBpm, bpm)));
}

/** The ladder of a lesson: its start, goal and step. */
export function ladderOf(tempo: Tempo, cleanLoops = CLEAN_LOOPS): LadderRule {
  const lowest = Math.round(Math.min(tempo.startBpm, tempo.goalBpm) * LOWEST_SHARE);
  const lowestBpm = Math.min(tempo.goalBpm, bringWithin(PLAYED_TEMPI, lowest));
  return { ...tempo, lowestBpm, cleanLoops, missedLoops: MISSED_LOOPS };
}

/** Half a step, at least 1. */
function halfStep({ stepBpm }: LadderRule): number {
  return Math.max(1, Math.round(stepBpm / 2));
}

/**
 * The first rung, or the given tempo brought inside the bounds.
 * @param isKnown whether the student has played this before: it then climbs by half a step from the beginning
 */
export function startLadder(rule: LadderRule, bpm: number = rule.startBpm, isKnown = false): LadderState {
  const climbBpm = isKnown ? halfStep(rule) : rule.stepBpm;
  return { bpm: within(rule, bpm), clean: 0, missed: 0, climbBpm, arrived: false };
}

function afterClean(state: LadderState, rule: LadderRule): LadderStep {
  const clean = state.clean + 1;
  const next = { ...state, clean };
  if (clean < rule.cleanLoops) return { state: next, move: 'stay' };
  if (state.bpm >= rule.goalBpm) return { state: { ...next, missed: 0, arrived: true }, move: 'arrived' };
  const bpm = within(rule, state.bpm + state.climbBpm);
  return { state: { ...next, bpm, clean: 0, missed: 0 }, move: 'up' };
}

function afterMissed(state: LadderState, rule: LadderRule): LadderStep {
  const missed = state.missed + 1;
  if (missed < rule.missedLoops) return { state: { ...state, clean: 0, missed }, move: 'stay' };
  const bpm = within(rule, state.bpm - rule.stepBpm);
  const after = { ...state, bpm, clean: 0, missed: 0, climbBpm: halfStep(rule) };
  return { state: after, move: bpm < state.bpm ? 'down' : 'stay' };
}

/** The next state after a loop. A loop that was not heard changes nothing. */
export function climb(state: LadderState, verdict: LoopVerdict, rule: LadderRule): LadderStep {
  switch (verdict) {
    case 'unheard':
      return { state, move: 'stay' };
    case 'stumble':
    case 'loose':
      return afterMissed(state, rule);
    case 'clean':
      return afterClean(state, rule);
  }
}
