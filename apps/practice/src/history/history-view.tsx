/** Whether what was done is safe here, and everything as one file and back. */
import { Button, buttonClass, Problem } from '@shedbook/stand';
import { type ChangeEvent, useEffect, useState } from 'react';
import { askToPersist } from '../kept/keeping.ts';
import type { KeptLog } from '../log/log-store.ts';
import { useHearingWords } from '../page/hearing-words.ts';
import { usePracticeSession } from '../session/practice-session.tsx';
import { Folded } from '../ui/folded.tsx';
import inRow from '../ui/row.module.css';
import type { CameBack } from './save.ts';

function BringBack() {
  const words = useHearingWords().history;
  const [came, setCame] = useState<CameBack | 'refused' | null>(null);
  const take = async (event: ChangeEvent<HTMLInputElement>) => {
    const [file] = event.target.files ?? [];
    event.target.value = '';
    if (!file) return;
    try {
      const { bringBack } = await import('./save.ts');
      setCame(await bringBack(file));
    } catch {
      setCame('refused');
    }
  };
  return (
    <>
      <label className={buttonClass('plain')} data-part="bring-back">
        {words.back}
        <input type="file" accept=".zip,application/zip" className="hidden-words" onChange={take} />
      </label>
      <div role="status" data-part="came-back">
        {came === 'refused' && <Problem>{words.refused}</Problem>}
        {came !== null && came !== 'refused' && (
          <>
            <p>{words.cameBack({ entries: came.entries, takes: came.takes })}</p>
            <Button onClick={() => window.location.reload()}>{words.again}</Button>
          </>
        )}
      </div>
    </>
  );
}

/** The view. */
export function HistoryView({ kept }: { readonly kept: KeptLog }) {
  const words = useHearingWords().history;
  const { pack } = usePracticeSession();
  const [isSafe, setSafe] = useState<boolean | null>(null);
  const hasEntries = kept.log.entries.length > 0;
  useEffect(() => {
    if (hasEntries) void askToPersist().then(setSafe);
  }, [hasEntries]);
  const save = async () => {
    const { saveEverything } = await import('./save.ts');
    await saveEverything(pack.id);
  };
  return (
    <Folded title={words.title} part="history">
      <p className="quiet">{isSafe ? words.safe : words.lead}</p>
      <div className={inRow.row}>
        <Button onClick={() => void save()}>{words.save}</Button>
        <BringBack />
      </div>
    </Folded>
  );
}
