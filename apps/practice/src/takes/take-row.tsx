/** One of the takes that are kept. */
import { Button } from '@shedbook/stand';
import { download } from '../kept/download.ts';
import { useHearingWords } from '../page/hearing-words.ts';
import { usePracticeSession } from '../session/practice-session.tsx';
import inRow from '../ui/row.module.css';
import { RoundReplay } from './round-replay.tsx';
import { SendTake } from './send-take.tsx';
import type { Take } from './take.ts';
import { TakeFacts } from './take-facts.tsx';
import { TakeListener } from './take-listener.tsx';
import { TakeReportView, useReportPage, useTakeJudgement } from './take-report-view.tsx';
import { audioOf } from './take-store.ts';
import styles from './takes-view.module.css';

/** A take, and what takes it out. */
export interface TakeRowProps {
  readonly take: Take;
  readonly onRemove: () => void;
}

/** A take: hear it, see what was heard, send it, delete it. */
export default function TakeRow({ take, onRemove }: TakeRowProps) {
  const words = useHearingWords().takes;
  const { pack } = usePracticeSession();
  const judgement = useTakeJudgement(take);
  const drawPage = useReportPage({ take, judgement });
  const save = async () => {
    const { asRecorded, fileNameOf, packTake } = await import('./export-take.ts');
    const audio = await audioOf(take.id);
    const file = packTake(take, audio && (await asRecorded(audio)), drawPage());
    download(fileNameOf(take), file, 'application/zip');
  };
  return (
    <li className={styles.row} data-part="take">
      <TakeFacts take={take} />
      <TakeListener take={take} audioOf={() => audioOf(take.id)} />
      <RoundReplay take={take} audioOf={() => audioOf(take.id)} />
      <TakeReportView take={take} judgement={judgement} />
      {pack.isPrivate && <SendTake id={take.id} />}
      <div className={inRow.row}>
        <Button onClick={() => void save()}>{words.export}</Button>
        <Button dress="bare" onClick={onRemove}>
          {words.remove}
        </Button>
      </div>
    </li>
  );
}
