/** The teacher's books: which there are, and one of them lying open. */
import type { StoredBook } from '@shedbook/routes';
import { Button, Icon, Problem, useSay } from '@shedbook/stand';
import { type BooksWords, loadBooks } from '@shedbook/words';
import { useState } from 'react';
import { useShelf } from '../desk/use-shelf.ts';
import { ask } from '../document/client.ts';
import { wordsFor } from '../document/error-words.ts';
import { go } from '../shared/route.ts';
import { NothingYet, ScreenHead } from '../shared/screen-head.tsx';
import { useLateWords } from '../words/late-words.ts';
import { useLanguage } from '../words/words.tsx';
import { BookEditor } from './book-editor.tsx';
import styles from './books.module.css';
import { newBook, useBooks } from './use-books.ts';

interface BookListProps {
  readonly books: readonly StoredBook[];
  readonly open: string | null;
  readonly words: BooksWords;
  readonly onOpen: (id: string) => void;
}

function BookList({ books, open, words, onOpen }: BookListProps) {
  return (
    <ul className={styles.books}>
      {books.map(({ id, title, chapters }) => (
        <li key={id}>
          <button
            type="button"
            className={styles.spine}
            aria-pressed={id === open}
            onClick={() => onOpen(id)}
          >
            <strong>{title}</strong>
            <span className="quiet">{words.lessonsIn({ n: chapters.length })}</span>
          </button>
        </li>
      ))}
    </ul>
  );
}

function Books({ words }: { readonly words: BooksWords }) {
  const { words: all } = useLanguage();
  const say = useSay();
  const { lessons } = useShelf();
  const { books, error, refresh } = useBooks();
  const [chosen, setChosen] = useState<string | null>(null);
  const open = books?.find(({ id }) => id === chosen) ?? books?.[0] ?? null;
  const attempt = (work: () => Promise<void>) =>
    void work().catch((reason: unknown) => say(wordsFor(reason, all)));
  const begin = () =>
    attempt(async () => {
      const { id } = await ask('createBook', { body: newBook(words.untitled) });
      await refresh();
      setChosen(id);
    });
  const restore = ({ id, title }: StoredBook) =>
    attempt(async () => {
      await ask('restoreBook', { params: { id } });
      await refresh();
      setChosen(id);
      say(all.desk.restored({ title }));
    });
  const remove = (book: StoredBook) =>
    attempt(async () => {
      await ask('removeBook', { params: { id: book.id } });
      await refresh();
      say(words.removed({ title: book.title }), { label: all.desk.undo, run: () => restore(book) });
      document.getElementById('main')?.focus();
    });
  return (
    <>
      <ScreenHead title={words.title} lead={words.lead}>
        <Button onClick={() => go({ at: 'desk' })}>
          <Icon name="back" />
          {all.lesson.backToDesk}
        </Button>
        <Button dress="strong" onClick={begin}>
          <Icon name="plus" />
          {words.newBook}
        </Button>
      </ScreenHead>
      <main className={styles.screen} id="main" tabIndex={-1} aria-label={words.title}>
        {error && <Problem>{wordsFor(error, all)}</Problem>}
        {books?.length === 0 && <NothingYet>{words.none}</NothingYet>}
        {books && books.length > 0 && (
          <BookList {...{ books, words }} open={open?.id ?? null} onOpen={setChosen} />
        )}
        {open && lessons && (
          <BookEditor
            key={open.id}
            {...{ stored: open, lessons, words }}
            onKept={() => void refresh()}
            onRemove={remove}
          />
        )}
      </main>
    </>
  );
}

/** The screen. */
export function BooksScreen() {
  const words = useLateWords(loadBooks);
  return words && <Books words={words} />;
}
