/** The bin: what was deleted, for as long as it can be brought back, and a way to be rid of it at once. */

import type { BinContent } from '@shedbook/routes';
import { Button, Icon, useSay } from '@shedbook/stand';
import { useCallback, useEffect, useState } from 'react';
import { ask } from '../document/client.ts';
import { wordsFor } from '../document/error-words.ts';
import { titleOf } from '../edit/heading.ts';
import { ReallyErase } from '../shared/really-erase.tsx';
import { type Erased, ReceiptSheet } from '../shared/receipt.tsx';
import { go } from '../shared/route.ts';
import { NothingYet, ScreenHead } from '../shared/screen-head.tsx';
import { useWhen } from '../shared/use-when.ts';
import { StudentsWordsProvider } from '../words/students-words.tsx';
import { useWords } from '../words/words.tsx';
import styles from './bin-screen.module.css';

/** One thing in the bin, whatever it is. */
interface BinItem {
  readonly key: string;
  readonly title: string;
  readonly removedAt: string;
  readonly restore: () => Promise<unknown>;
  readonly erase: () => Promise<unknown>;
}

interface BinGroup {
  readonly title: string;
  readonly items: readonly BinItem[];
}

/** What is in the bin, by kind. */
function useGroups(content: BinContent | null, onErased: (erased: Erased) => void): readonly BinGroup[] {
  const words = useWords();
  const when = useWhen();
  const { lessons = [], books = [], students = [], practice = [] } = content ?? {};
  return [
    {
      title: words.desk.binLessons,
      items: lessons.map(({ id, text, removedAt }) => ({
        ...{ key: id, title: titleOf(text) ?? words.desk.untitled, removedAt },
        restore: () => ask('restoreLesson', { params: { id } }),
        erase: () => ask('eraseLesson', { params: { id } }),
      })),
    },
    {
      title: words.desk.books,
      items: books.map(({ id, title, removedAt }) => ({
        ...{ key: id, title, removedAt },
        restore: () => ask('restoreBook', { params: { id } }),
        erase: () => ask('eraseBook', { params: { id } }),
      })),
    },
    {
      title: words.desk.binStudents,
      items: students.map(({ id, name, removedAt }) => ({
        ...{ key: id, title: name, removedAt },
        restore: () => ask('restoreStudent', { params: { id } }),
        erase: async () => onErased({ name, receipt: await ask('eraseStudent', { params: { id } }) }),
      })),
    },
    {
      title: words.desk.binPractice,
      items: practice.map(({ student: id, name, takenAt, rows, removedAt }) => ({
        ...{ key: `${id} ${takenAt}`, removedAt },
        title: words.desk.binPracticeOf({ name, n: rows, when: when(takenAt) }),
        restore: () => ask('putBackLog', { params: { id, takenAt } }),
        erase: () => ask('eraseLog', { params: { id, takenAt } }),
      })),
    },
  ].filter(({ items }) => items.length > 0);
}

/** The screen. */
export function BinScreen() {
  const all = useWords();
  const words = all.desk;
  const say = useSay();
  const when = useWhen();
  const [content, setContent] = useState<BinContent | null>(null);
  const [erasing, setErasing] = useState<BinItem | null>(null);
  const refresh = useCallback(
    () => ask('listBin', {}).then(setContent, (error: unknown) => say(wordsFor(error, all))),
    [say, all],
  );
  useEffect(() => void refresh(), [refresh]);
  const [erased, setErased] = useState<Erased | null>(null);
  const groups = useGroups(content, setErased);
  const attempt = (work: () => Promise<unknown>, said: string) =>
    work().then(
      () => {
        say(said);
        return refresh();
      },
      (error: unknown) => say(wordsFor(error, all)),
    );
  return (
    <>
      <ScreenHead title={words.binTitle} lead={words.binLead}>
        <Button onClick={() => go({ at: 'desk' })}>
          <Icon name="back" />
          {all.lesson.backToDesk}
        </Button>
      </ScreenHead>
      <main className={styles.bin} id="main" tabIndex={-1} aria-label={words.binTitle}>
        {content && groups.length === 0 && <NothingYet>{words.binEmpty}</NothingYet>}
        {groups.map(({ title, items }) => (
          <section key={title} aria-label={title}>
            <h2>{title}</h2>
            <ul>
              {items.map((item) => (
                <li key={item.key}>
                  <div>
                    <strong>{item.title}</strong>
                    <span className="quiet">{words.deleted({ when: when(item.removedAt) })}</span>
                  </div>
                  <Button
                    aria-label={words.restoreNamed({ title: item.title })}
                    onClick={() => void attempt(item.restore, words.restored({ title: item.title }))}
                  >
                    <Icon name="undo" />
                    {words.restore}
                  </Button>
                  <Button
                    dress="bare"
                    aria-label={words.eraseNamed({ title: item.title })}
                    onClick={() => setErasing(item)}
                  >
                    {words.eraseNow}
                  </Button>
                </li>
              ))}
            </ul>
          </section>
        ))}
      </main>
      {erased && (
        <StudentsWordsProvider>
          <ReceiptSheet erased={erased} onClose={() => setErased(null)} />
        </StudentsWordsProvider>
      )}
      {erasing && (
        <ReallyErase
          title={words.eraseNamed({ title: erasing.title })}
          warning={words.eraseWarning}
          keep={words.keepIt}
          erase={words.eraseNow}
          onErase={() => void attempt(erasing.erase, words.erasedLesson({ title: erasing.title }))}
          onClose={() => setErasing(null)}
        />
      )}
    </>
  );
}
