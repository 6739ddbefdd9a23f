/** Today's list on the stand; its words are loaded after the page itself, and only where a list is gone through. */
import { lazy, Suspense } from 'react';
import { useRun } from '../session/plan-run.ts';

const Strip = lazy(() => import('./run-strip.tsx'));

/** The strip over the exercise, or nothing. */
export function RunPanel() {
  const run = useRun();
  if (!run) return null;
  return (
    <Suspense fallback={null}>
      <Strip />
    </Suspense>
  );
}
