/** How far what the teacher set is to come, and for which day. */
import { countedTempo } from '@shedbook/core';
import type { AimedFact } from '../fact.ts';
import type { ShelfLesson } from '../mastery/identity.ts';
import { readMoment } from '../time/moment.ts';
import type { Assignment } from './plan-item.ts';

/** The tempo that something is set for, in quarter notes a minute: the lesson's own goal where the teacher named none. */
export function aimBpmOf({ toBpm }: Assignment, { lesson }: Pick<ShelfLesson, 'lesson'>): number {
  return toBpm ?? lesson.tempo.goalBpm;
}

/** Days from today on which something is to be ready; null where no day was named, or it is past. */
function daysUntil({ by }: Assignment, today: number): number | null {
  const day = by ? (readMoment(`${by}T12:00:00Z`)?.day ?? null) : null;
  return day === null || day < today ? null : day - today;
}

/** What there is to say of how far something is to come; null where the teacher said nothing of it. */
export function tellAim(
  assignment: Assignment,
  { lesson }: Pick<ShelfLesson, 'lesson'>,
  today: number,
): AimedFact['aim'] | null {
  const day = daysUntil(assignment, today);
  const { toBpm } = assignment;
  if (toBpm === null || toBpm === undefined) return day === null ? null : { fact: 'ready-by', day };
  const bpm = countedTempo(lesson.meter, toBpm);
  return day === null ? { fact: 'up-to', bpm } : { fact: 'up-to-by', bpm, day };
}
