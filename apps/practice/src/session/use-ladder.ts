/** The tempo ladder under a student's feet: loops judged by the student or by an ear move the tempo. */
import {
  climb,
  type LadderRule,
  type LadderState,
  type LadderStep,
  ladderOf,
  startLadder,
} from '@shedbook/coach';
import type { Lesson, LoopVerdict } from '@shedbook/core';
import { useRef, useState } from 'react';

/** Where the student stands. */
export interface Ladder {
  readonly rule: LadderRule;
  readonly state: LadderState;
  /** What the last loop meant, or null before the first. */
  readonly last: LadderStep | null;
  /** A loop was judged. @returns what it means. */
  readonly judge: (verdict: LoopVerdict) => LadderStep;
  /** The student chose a tempo: the ladder stands there. */
  readonly standAt: (bpm: number) => void;
}

interface Stand {
  readonly exercise: number | null;
  readonly rule: LadderRule;
  readonly state: LadderState;
  readonly last: LadderStep | null;
}

/** The lesson's ladder, let down or drawn up to where the student plays. */
function ruleAt(lesson: Lesson, bpm: number): LadderRule {
  const rule = ladderOf(lesson.tempo);
  return { ...rule, lowestBpm: Math.min(rule.lowestBpm, bpm), goalBpm: Math.max(rule.goalBpm, bpm) };
}

function standing(lesson: Lesson, exercise: number | null, bpm: number): Stand {
  const rule = ruleAt(lesson, bpm);
  return { exercise, rule, state: startLadder(rule, bpm), last: null };
}

/** A ladder for the exercise on the stand, from its tempo on. */
export function useLadder(lesson: Lesson, exercise: number | null, bpm: number): Ladder {
  const [kept, setStand] = useState(() => standing(lesson, exercise, bpm));
  const stand = kept.exercise === exercise ? kept : standing(lesson, exercise, bpm);
  const latest = useRef(stand);
  latest.current = stand;
  const move = (next: Stand) => {
    latest.current = next;
    setStand(next);
  };
  return {
    rule: stand.rule,
    state: stand.state,
    last: stand.last,
    judge: (verdict) => {
      const { rule, state } = latest.current;
      const step = climb(state, verdict, rule);
      move({ exercise, rule, state: step.state, last: step });
      return step;
    },
    standAt: (next) => move(standing(lesson, exercise, next)),
  };
}
