/** Hearing oneself on the stand; loaded after the page itself. */
import { lazy, Suspense } from 'react';

const Body = lazy(() => import('./hearing-body.tsx'));

/** The panel under the exercise. */
export function HearingPanel() {
  return (
    <Suspense fallback={null}>
      <Body />
    </Suspense>
  );
}
