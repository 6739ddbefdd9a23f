/** Opens the sheet on which a student teaches the ear their kit; the sheet comes when it is asked for. */
import { Button } from '@shedbook/stand';
import { lazy, Suspense, useState } from 'react';
import type { EarState } from '../ear/ear.ts';
import type { Hearing } from '../ear/hearing.ts';
import { useHearingWords } from '../page/hearing-words.ts';
import { Optional } from '../ui/optional.tsx';

const LineCheckSheet = lazy(() => import('../line-check/line-check-sheet.tsx'));

/** The button. */
export function LineCheckKey({ ear, hearing }: { readonly ear: EarState; readonly hearing: Hearing }) {
  const words = useHearingWords().hearing;
  const [isOpen, setOpen] = useState(false);
  return (
    <div>
      <Button aria-haspopup="dialog" onClick={() => setOpen(true)}>
        {words.lineCheck}
      </Button>
      {isOpen && (
        <Optional>
          <Suspense fallback={null}>
            <LineCheckSheet ear={ear} hearing={hearing} onClose={() => setOpen(false)} />
          </Suspense>
        </Optional>
      )}
    </div>
  );
}
