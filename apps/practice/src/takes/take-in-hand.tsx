/** The take that was just played: hear it, keep it, or let it go. */

import { Button, Check } from '@shedbook/stand';
import { useEffect, useMemo, useState } from 'react';
import type { StretchEnded } from '../ear/hearing.ts';
import { useHearingWords } from '../page/hearing-words.ts';
import type { HearingSettings } from '../session/hearing-settings.ts';
import { usePracticeSession } from '../session/practice-session.tsx';
import inRow from '../ui/row.module.css';
import { dropHand } from './hand-store.ts';
import type { WholeTake } from './take.ts';
import { TakeFacts } from './take-facts.tsx';
import { takeFrom } from './take-from.ts';
import styles from './take-in-hand.module.css';
import { TakeListener } from './take-listener.tsx';
import { TakeReportView, useTakeJudgement } from './take-report-view.tsx';
import { keepTake } from './take-store.ts';

interface InHandProps {
  readonly ended: StretchEnded | null;
  /** Lets the take go. */
  readonly letGo: () => void;
  readonly settings: HearingSettings;
  readonly change: (next: Partial<HearingSettings>) => void;
}

function useKeeping(whole: WholeTake | null, keepAll: boolean, lesson: string) {
  const [state, setState] = useState<'open' | 'kept' | 'full'>('open');
  const keep = () => {
    if (!whole) return;
    keepTake(whole).then(
      () => {
        setState('kept');
        void dropHand(lesson).catch(() => undefined);
      },
      () => setState('full'),
    );
  };
  useEffect(() => {
    setState('open');
    if (whole && keepAll) keep();
  }, [whole]);
  return { state, keep };
}

/** The take. */
export function TakeInHand({ ended, letGo, settings, change }: InHandProps) {
  const words = useHearingWords().takes;
  const { pack } = usePracticeSession();
  const whole = useMemo(
    () => ended && takeFrom(ended, { id: pack.id, title: pack.lesson.title }),
    [ended, pack],
  );
  const judgement = useTakeJudgement(whole?.take ?? null);
  const { state, keep } = useKeeping(whole, settings.keepAll, pack.id);
  return (
    <section className={styles.take} data-part="take-in-hand" aria-label={words.title}>
      {whole && (
        <>
          <TakeFacts take={whole.take} />
          <TakeReportView take={whole.take} judgement={judgement} />
          <TakeListener key={whole.take.id} take={whole.take} audioOf={async () => whole.audio} />
          {state !== 'kept' && (
            <div className={inRow.row}>
              <Button dress="strong" onClick={keep}>
                {words.keep}
              </Button>
              <Button onClick={letGo}>{words.letGo}</Button>
            </div>
          )}
        </>
      )}
      <p role="status">
        {state === 'kept' && words.kept}
        {state === 'full' && words.full}
      </p>
      <Check checked={settings.keepAll} onChange={(keepAll) => change({ keepAll })}>
        {words.keepAll}
      </Check>
    </section>
  );
}
