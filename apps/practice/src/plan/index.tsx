/** Today's plan, the log, takes and care on the sheet; loaded after the page itself. */
import { lazy, Suspense } from 'react';

const Body = lazy(() => import('./plan-body.tsx'));

/** The panel under the heading of the sheet. */
export function PlanPanel() {
  return (
    <Suspense fallback={null}>
      <Body />
    </Suspense>
  );
}
