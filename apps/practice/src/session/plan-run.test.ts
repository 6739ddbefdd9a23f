import { planPractice, progressOf } from '@shedbook/coach';
import { expect, it } from 'vitest';
import { HEARING_LESSON, lessonOf } from '../../../../internal/testing/hearing.ts';
import { afterItem, afterSeconds, itemOf, nextOpen, type PlanRun } from './plan-run.ts';

const LOG = { version: 1, entries: [], removed: [] };
const shelf = [{ id: 'hearing', lesson: lessonOf(HEARING_LESSON) }];
const now = '2026-11-25T17:00:00+01:00';
const plan = planPractice({ shelf, log: LOG, now, minutes: 45, assignments: [], seed: 1 });

it('[ST114] a list begins with its warm-up and goes item by item to its end, breaks included', () => {
  const first = nextOpen(plan, progressOf(plan, LOG, shelf));
  // definition: nothing was played, so the first item is open with all of its minutes
  expect(first).toEqual({ at: 0, leftSeconds: (plan.items[0]?.minutes ?? 0) * 60 });
  const kinds: (string | undefined)[] = [];
  for (let run: PlanRun | null = { plan, ...first } as PlanRun; run; run = afterItem(run)) {
    kinds.push(itemOf(run)?.kind);
    expect(afterSeconds(run, 1e6).leftSeconds).toBe(0);
  }
  expect(kinds).toEqual(plan.items.map(({ kind }) => kind));
  expect(kinds).toContain('break');
});

it('[ST114] it goes on at the first item that is not done, with what is left of it', () => {
  const progress = plan.items.map((_, i) => ({ seconds: i === 1 ? 30 : 0, isDone: i === 0 }));
  const left = (plan.items[1]?.minutes ?? 0) * 60 - 30;
  expect(nextOpen(plan, progress)).toEqual({ at: 1, leftSeconds: left });
  expect(
    nextOpen(
      plan,
      plan.items.map(() => ({ seconds: 60, isDone: true })),
    ),
  ).toBeNull();
});
