/** What a teacher wrote, loaded only where something is written. */
import { lazy, Suspense } from 'react';

const Written = lazy(() => import('@shedbook/stand/prose').then(({ Prose }) => ({ default: Prose })));

/** The text; nothing where there is none. */
export function Prose({ text }: { readonly text: string | null }) {
  if (text === null) return null;
  return (
    <Suspense>
      <Written text={text} />
    </Suspense>
  );
}
