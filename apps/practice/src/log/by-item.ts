/** What was played of each exercise, gone through once: a year of practice has thousands of entries. */
import type { Identity } from '@shedbook/coach';
import type { PracticeEntry, PracticeLog } from '@shedbook/core';

/** Gives the entries of an exercise by the lasting names that it has, in their order. */
export function entriesByItem(
  { entries }: PracticeLog,
  { itemOf }: Identity,
): (lesson: string, exercise: string | null) => readonly PracticeEntry[] {
  const byItem = new Map<string, PracticeEntry[]>();
  for (const entry of entries) {
    const item = itemOf(entry.lesson, entry.exercise);
    const known = byItem.get(item);
    if (known) known.push(entry);
    else byItem.set(item, [entry]);
  }
  return (lesson, exercise) => byItem.get(itemOf(lesson, exercise)) ?? [];
}
