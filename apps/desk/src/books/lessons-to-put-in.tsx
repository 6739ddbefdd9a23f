/** The lessons on the desk, to be put into a book. */
import type { LessonSummary } from '@shedbook/routes';
import { Button, Field, Icon } from '@shedbook/stand';
import type { BooksWords } from '@shedbook/words';
import { useDeferredValue, useMemo, useState } from 'react';
import { findLessons } from '../desk/find-lessons.ts';
import { useLanguage } from '../words/words.tsx';
import styles from './books.module.css';

interface LessonsToPutInProps {
  readonly lessons: readonly LessonSummary[];
  /** Ids of those that the book has. */
  readonly inBook: ReadonlySet<string>;
  /** What tells a lesson from others that are called the same. */
  readonly factsOf: (lesson: string) => string | null;
  readonly words: BooksWords;
  readonly onPut: (lesson: LessonSummary, title: string) => void;
}

/** The list, and a search over it. */
export function LessonsToPutIn({ lessons, inBook, factsOf, words, onPut }: LessonsToPutInProps) {
  const { tag, words: all } = useLanguage();
  const [text, setText] = useState('');
  const sought = useDeferredValue(text);
  const found = useMemo(
    () => findLessons(lessons, { text: sought, shelf: { kind: 'all' }, order: 'title', language: tag }),
    [lessons, sought, tag],
  );
  return (
    <section className={styles.part} aria-label={words.onDesk}>
      <h3>{words.onDesk}</h3>
      <Field
        type="search"
        label={words.find}
        value={text}
        onChange={(event) => setText(event.target.value)}
        onKeyDown={(event) => event.key === 'Escape' && setText('')}
      />
      <p className="quiet" role="status">
        {lessons.length === 0 ? words.noLessons : found.length === 0 ? words.noneFound : ''}
      </p>
      <ul className={styles.shelf}>
        {found.map((lesson) => {
          const title = lesson.title ?? all.desk.untitled;
          return (
            <li key={lesson.id}>
              <span className={styles.name}>
                {title}
                {inBook.has(lesson.id) && <small className="quiet"> {words.isIn}</small>}
                <small className={`quiet ${styles.facts}`} id={`facts-${lesson.id}`}>
                  {factsOf(lesson.id)}
                </small>
              </span>
              <Button
                aria-label={words.putIn({ title })}
                aria-describedby={`facts-${lesson.id}`}
                onClick={() => onPut(lesson, title)}
              >
                <Icon name="plus" />
                {words.put}
              </Button>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
