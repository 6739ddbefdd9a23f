/** Everything in one file, and practice as a table: links, so that the browser writes to the disk as it comes. */
import { addressOf, ROUTES } from '@shedbook/routes';
import { buttonClass, Icon } from '@shedbook/stand';
import { useFresh } from '../document/use-fresh.ts';
import { useLanguage } from '../words/students-words.tsx';
import { readSession } from './api.ts';
import { JournalList } from './journal-list.tsx';
import styles from './keep-safe.module.css';
import { KeepingSetting } from './keeping.tsx';

interface TableProps {
  /** Whose practice; everybody's where it is left out. */
  readonly student?: { readonly id: string; readonly name: string };
}

/** Practice as a table for a spreadsheet. */
export function PracticeTable({ student }: TableProps) {
  const { words, tag } = useLanguage();
  const query = new URLSearchParams({ language: tag, ...(student ? { student: student.id } : {}) });
  return (
    <a className={buttonClass()} download href={`${addressOf(ROUTES.exportPractice, {})}?${query}`}>
      <Icon name="file" />
      {student ? words.safe.tableOf({ name: student.name }) : words.safe.tableOfAll}
    </a>
  );
}

/** The links that are of everybody, and in a school what is for its head alone. */
export function KeepSafe() {
  const { value: session } = useFresh(readSession);
  const isHead = session?.school?.teacher?.role !== 'teacher';
  const { safe: words, refusals } = useLanguage().words;
  return (
    <section className={styles.safe} aria-label={words.title} data-part="keep-safe">
      <h2>{words.title}</h2>
      <p className="quiet">{session?.school ? refusals['school-backup'] : words.lead}</p>
      <p>
        {session && !session.school && (
          <a className={buttonClass()} download href={addressOf(ROUTES.backUp, {})}>
            <Icon name="file" />
            {words.backUp}
          </a>
        )}
        <PracticeTable />
        <a className={buttonClass()} download href={addressOf(ROUTES.exportEverything, {})}>
          <Icon name="file" />
          {words.everything}
        </a>
      </p>
      <KeepingSetting isFixed={!isHead} />
      <JournalList />
    </section>
  );
}
