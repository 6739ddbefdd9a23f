/** Entries of the log that cannot be read, to look at and to take out. */
import { Button, Problem } from '@shedbook/stand';
import { download } from '../kept/download.ts';
import { useHearingWords } from '../page/hearing-words.ts';
import inRow from '../ui/row.module.css';
import { dropUnreadable, type KeptLog } from './log-store.ts';

/** Entries that cannot be read; nothing where all can. */
export function UnreadableEntries({ unreadable }: Pick<KeptLog, 'unreadable'>) {
  const words = useHearingWords().history;
  if (unreadable.length === 0) return null;
  const text = () =>
    `${JSON.stringify(
      unreadable.map(({ value }) => value),
      null,
      2,
    )}\n`;
  return (
    <div data-part="unreadable">
      <Problem>{words.unreadable({ n: unreadable.length })}</Problem>
      <div className={inRow.row}>
        <Button onClick={() => download('unreadable.json', text(), 'application/json')}>{words.look}</Button>
        <Button onClick={() => void dropUnreadable(unreadable)}>{words.takeOut}</Button>
      </div>
    </div>
  );
}
