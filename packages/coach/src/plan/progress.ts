/**
 * How far a day's plan has come: what was played on that day is poured into the items in order.
 *
 * Conventions: seconds of playing. An item that was skipped stays open while later ones are done.
 */
import type { PracticeLog } from '@shedbook/core';
import { isPart } from '../apart/apart.ts';
import { type Identity, identityOf, type ShelfLesson } from '../mastery/identity.ts';
import { formatDay, momentOf } from '../time/moment.ts';
import type { PlanItem, PracticePlan } from './plan-item.ts';

/** How far an item has come. */
export interface ItemProgress {
  /** Seconds that were played of it. */
  readonly seconds: number;
  readonly isDone: boolean;
}

/** From this share of its minutes on an item is done: a visit ends with a round. */
const DONE_SHARE = 0.8;

function nameOf(item: PlanItem, { itemOf }: Identity): string {
  const part = item.part !== null && isPart(item.part.kind) ? item.part.kind : '';
  return `${itemOf(item.lesson ?? '', item.exercise)} ${part}`;
}

/** Seconds that were played on a day, by lesson, exercise and part. */
function playedOn(day: string, log: PracticeLog, { itemOf }: Identity): Map<string, number> {
  const played = new Map<string, number>();
  for (const { startedAt, lesson, exercise, form, durationSeconds } of log.entries) {
    if (formatDay(momentOf(startedAt).day) !== day) continue;
    const name = `${itemOf(lesson, exercise)} ${isPart(form) ? form : ''}`;
    played.set(name, (played.get(name) ?? 0) + durationSeconds);
  }
  return played;
}

/** How far each item of a plan has come, by the log. A break is over when something after it was played. */
export function progressOf(
  plan: PracticePlan,
  log: PracticeLog,
  shelf: readonly ShelfLesson[],
): readonly ItemProgress[] {
  const identity = identityOf(shelf);
  const left = playedOn(plan.day, log, identity);
  const poured = plan.items.map((item): ItemProgress => {
    const name = nameOf(item, identity);
    const seconds = Math.min(item.minutes * 60, left.get(name) ?? 0);
    left.set(name, (left.get(name) ?? 0) - seconds);
    return { seconds, isDone: item.kind !== 'break' && seconds >= item.minutes * 60 * DONE_SHARE };
  });
  const last = poured.findLastIndex(({ seconds }) => seconds > 0);
  return poured.map((each, i) => (plan.items[i]?.kind === 'break' ? { ...each, isDone: i < last } : each));
}
