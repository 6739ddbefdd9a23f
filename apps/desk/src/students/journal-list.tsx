/** The journal on the desk: who did what, and when; opened when it is asked for. */
import type { JournalEntry } from '@shedbook/routes';
import { Button, useSay } from '@shedbook/stand';
import { journalWords } from '@shedbook/words';
import { useState } from 'react';
import { wordsFor } from '../document/error-words.ts';
import { useLanguage, useWords } from '../words/students-words.tsx';
import { readJournal } from './api.ts';
import styles from './journal-list.module.css';

/** The list. */
export function JournalList() {
  const all = useWords();
  const { words, tag } = useLanguage();
  const say = useSay();
  const [entries, setEntries] = useState<readonly JournalEntry[]>([]);
  const [next, setNext] = useState<string | null>(null);
  const more = async (after: string | null) => {
    try {
      const page = await readJournal(after);
      setEntries((before) => [...(after === null ? [] : before), ...page.entries]);
      setNext(page.next);
    } catch (error) {
      say(wordsFor(error, all));
    }
  };
  const when = (at: string) => new Date(at).toLocaleString(tag, { dateStyle: 'medium', timeStyle: 'short' });
  return (
    <details
      className={styles.journal}
      data-part="journal"
      onToggle={(event) => event.currentTarget.open && void more(null)}
    >
      <summary>{words.journal.title}</summary>
      <p className="quiet">{words.journal.lead}</p>
      <ol>
        {entries.map((entry, index) => (
          <li key={`${entry.at} ${index}`}>
            <time dateTime={entry.at}>{when(entry.at)}</time>{' '}
            <span>{journalWords(words.journal.entries, entry)}</span>
          </li>
        ))}
      </ol>
      {next !== null && <Button onClick={() => void more(next)}>{words.journal.more}</Button>}
    </details>
  );
}
