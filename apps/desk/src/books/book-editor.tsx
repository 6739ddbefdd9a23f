/** A book lying open: what it is called, its lessons in order, and what is made of it. */
import type { LessonSummary, StoredBook } from '@shedbook/routes';
import { Button, Icon, useSay } from '@shedbook/stand';
import type { BooksWords } from '@shedbook/words';
import { KeptField } from '../shared/kept-field.tsx';
import { useWords } from '../words/words.tsx';
import { BookChapters } from './book-chapters.tsx';
import { BookFiles } from './book-files.tsx';
import { BookLooks } from './book-looks.tsx';
import styles from './books.module.css';
import { LessonsToPutIn } from './lessons-to-put-in.tsx';
import { useBook } from './use-books.ts';
import { useFacts } from './use-facts.ts';

interface BookEditorProps {
  readonly stored: StoredBook;
  readonly lessons: readonly LessonSummary[];
  readonly words: BooksWords;
  readonly onKept: () => void;
  readonly onRemove: (book: StoredBook) => void;
}

/** The book. */
export function BookEditor({ stored, lessons, words, onKept, onRemove }: BookEditorProps) {
  const untitled = useWords().desk.untitled;
  const say = useSay();
  const { book, state, change, kept } = useBook(stored, words, onKept);
  const titles = new Map(lessons.map(({ id, title }) => [id, title ?? untitled]));
  const titleOf = (lesson: string) => titles.get(lesson) ?? null;
  const factsOf = useFacts(lessons, words);
  const isAlone = (lesson: string) =>
    lessons.filter(({ title }) => (title ?? untitled) === titleOf(lesson)).length < 2;
  const isWhole = book.chapters.every(({ lesson }) => titles.has(lesson));
  const lacks = book.chapters.length === 0 ? words.needsLessons : isWhole ? null : words.hasGone;
  const orNull = (text: string) => (text.trim() === '' ? null : text.trim());
  const rename = (text: string) => {
    const title = orNull(text);
    if (title) change({ title });
    else say(words.needsTitle);
  };
  const put = ({ id: lesson }: LessonSummary, title: string) => {
    change({ chapters: [...book.chapters, { lesson, title: null }] });
    say(words.wasPutIn({ title }));
  };
  return (
    <article className={styles.book} aria-label={book.title} data-part="book">
      <header className={styles.head}>
        <h2>{book.title}</h2>
        <p className="quiet" role="status">
          {state === 'saving' ? words.saving : words.saved}
        </p>
      </header>
      <div className={styles.said}>
        <KeptField label={words.bookTitle} value={book.title} onKeep={rename} />
        <KeptField label={words.by} value={book.by ?? ''} onKeep={(by) => change({ by: orNull(by) })} />
        <KeptField
          label={words.text}
          value={book.text ?? ''}
          onKeep={(text) => change({ text: orNull(text) })}
          isLong
        />
      </div>
      <section className={styles.part} aria-label={words.inBook}>
        <h3>{words.inBook}</h3>
        <BookChapters
          {...{ chapters: book.chapters, titleOf, words }}
          factsOf={(lesson) => (isAlone(lesson) ? null : factsOf(lesson))}
          onChange={(chapters) => change({ chapters })}
        />
      </section>
      <LessonsToPutIn
        {...{ lessons, words, factsOf }}
        inBook={new Set(book.chapters.map(({ lesson }) => lesson))}
        onPut={put}
      />
      <BookLooks {...{ book, words }} onChange={change} />
      <BookFiles {...{ id: book.id, lacks, words, kept }} />
      <Button dress="bare" onClick={() => onRemove(book)}>
        <Icon name="bin" />
        {words.remove}
      </Button>
    </article>
  );
}
