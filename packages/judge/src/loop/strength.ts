/**
 * How much a fault weighs, so that the strongest is said first.
 *
 * Conventions: 1 is a fault that only just is one at the student's level; lateness of twice what is allowed is 2.
 * A missed or added stroke weighs as our choice says: it is the first thing that a teacher would mention.
 */
import type { LoopFault } from '@shedbook/core';
import type { Allowance } from '../level/levels.data.ts';
import { allowedTempoPercent } from '../perception/perception.ts';
import { allowedFor, strokeKey } from './faults.ts';
import type { LoopTask } from './task.ts';

const MISSED = 4;
const EXTRA = 3;

/** The strength of one fault. */
export function strengthOf(fault: LoopFault, task: LoopTask, rule: Allowance): number {
  switch (fault.kind) {
    case 'missed':
      return MISSED;
    case 'extra':
      return EXTRA;
    case 'loud':
    case 'quiet':
      return fault.amount / rule.balanceDb;
    case 'slow':
    case 'fast':
      return fault.amount / allowedTempoPercent(rule);
    case 'early':
    case 'late':
      return fault.amount / allowedAt(fault, task, rule);
  }
}

function allowedAt(fault: LoopFault, task: LoopTask, rule: Allowance): number {
  const { voice, place } = fault;
  if (voice === null || place === null) return rule.togetherMs;
  const key = strokeKey(voice, place);
  const asked = task.strokes.find((stroke) => strokeKey(stroke.voice, stroke.written) === key);
  return asked ? allowedFor(rule, asked) : rule.togetherMs;
}
