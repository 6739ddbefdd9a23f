/** Today's plan, the log, takes and care on the sheet; loaded after the page itself. */
import { type Lesson, sectionsOf } from '@shedbook/core';
import { type ComponentType, useEffect, useState } from 'react';
import { readLog } from '../log/log-store.ts';
import { loadProse } from '../ui/prose.tsx';

/** The panel once it is loaded; what could not be had, or not soon enough, is none. */
export type Plan = ComponentType | 'none';

/** Milliseconds for which the sheet waits for the panel that stands above it. */
const PATIENCE_MS = 1500;

let there: ComponentType | null = null;

/** Loads the panel, what it shows, and what draws the texts around it, so that all is whole when it is drawn. */
async function load(lesson: Lesson): Promise<ComponentType> {
  const isWritten = [lesson, ...sectionsOf(lesson)].some(
    ({ text, media, exercises }) => text !== null || media || exercises.some((each) => each.media),
  );
  const [{ default: Body }] = await Promise.all([
    import('./plan-body.tsx'),
    readLog(),
    isWritten ? loadProse().catch(() => null) : null,
  ]);
  there = Body;
  return Body;
}

/**
 * The panel; null while the sheet may still wait for it, since a sheet that moves down when its plan comes takes a press
 * that was meant for another exercise.
 */
export function usePlan(lesson: Lesson): Plan | null {
  const [plan, setPlan] = useState<Plan | null>(() => there);
  useEffect(() => {
    const show = (next: Plan) => setPlan(() => next);
    const late = setTimeout(show, PATIENCE_MS, 'none');
    void load(lesson)
      .then(show, () => show('none'))
      .finally(() => clearTimeout(late));
    return () => clearTimeout(late);
  }, [lesson]);
  return plan;
}
