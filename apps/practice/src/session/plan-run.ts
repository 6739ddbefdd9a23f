/**
 * Going through today's list: which item is on, how much of its time is left, and what comes next. It is kept while the
 * page is open; what was done is in the log, so that a page that is loaded anew goes on where it was.
 *
 * Conventions: items count from 0; seconds of playing, of a break seconds by the clock.
 */
import type { ItemProgress, PlanItem, PracticePlan } from '@shedbook/coach';
import { useSyncExternalStore } from 'react';
import { FREE_PLAY, type Place } from '../page/route.ts';

/** A list that is being gone through. */
export interface PlanRun {
  readonly plan: PracticePlan;
  /** Number of the item that is on, from 0. */
  readonly at: number;
  readonly leftSeconds: number;
}

/** Where an item is played. @param home lasting name of the page's own lesson */
export function placeOf({ kind, number, lesson }: PlanItem, home: string): Place {
  const place: Place = kind === 'free' ? FREE_PLAY : { at: 'stage', exercise: number };
  return lesson === null || lesson === home || place.at !== 'stage' ? place : { ...place, lesson };
}

/** The item that is on. */
export function itemOf({ plan, at }: PlanRun): PlanItem | null {
  return plan.items[at] ?? null;
}

/** The first item that is not done, from one on; null when all are. A break at the end of what is done is left out. */
export function nextOpen(
  plan: PracticePlan,
  progress: readonly ItemProgress[],
  from = 0,
): { readonly at: number; readonly leftSeconds: number } | null {
  const at = plan.items.findIndex(
    ({ kind }, index) =>
      index >= from && progress[index]?.isDone !== true && (kind !== 'break' || index > from),
  );
  const item = plan.items[at];
  if (!item) return null;
  return { at, leftSeconds: item.minutes * 60 - (progress[at]?.seconds ?? 0) };
}

/** The run at its next item, or null after the last. */
export function afterItem({ plan, at }: PlanRun): PlanRun | null {
  const next = plan.items[at + 1];
  return next ? { plan, at: at + 1, leftSeconds: next.minutes * 60 } : null;
}

/** The run after some seconds. */
export function afterSeconds(run: PlanRun, seconds: number): PlanRun {
  return { ...run, leftSeconds: Math.max(0, run.leftSeconds - seconds) };
}

let run: PlanRun | null = null;
const listeners = new Set<() => void>();

/** The run as it is now, or null. */
export function currentRun(): PlanRun | null {
  return run;
}

/** Begins a run, goes on with it, or ends it. */
export function setRun(next: PlanRun | null): void {
  run = next;
  for (const listener of listeners) listener();
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** The run as it changes, or null. */
export function useRun(): PlanRun | null {
  return useSyncExternalStore(subscribe, currentRun);
}
