/** The books on the desk: read from the server, and each kept as it is changed. */
import type { StoredBook, WrittenBook } from '@shedbook/routes';
import { useSay } from '@shedbook/stand';
import type { BooksWords } from '@shedbook/words';
import { useCallback, useEffect, useRef, useState } from 'react';
import { ask, RefusedError } from '../document/client.ts';
import { wordsFor } from '../document/error-words.ts';
import { useFresh } from '../document/use-fresh.ts';
import { useWords } from '../words/words.tsx';

const listBooks = () => ask('listBooks', {});

/** The books, the last changed first; null while they are on their way. */
export function useBooks() {
  const { value: books, error, refresh } = useFresh(listBooks);
  return { books, error, refresh };
}

/** A book as it begins. */
export function newBook(title: string): WrittenBook {
  const parts = { twoSided: true, contents: true, key: true, index: true };
  return { title, by: null, text: null, chapters: [], paper: null, ...parts };
}

/** A book that is being changed. */
export interface OpenBook {
  readonly book: StoredBook;
  readonly state: 'saved' | 'saving';
  /** Changes it, and keeps it. */
  readonly change: (change: Partial<WrittenBook>) => void;
  /** Waits until everything is kept. @returns whether it is */
  readonly kept: () => Promise<boolean>;
}

/** A book, every change of it kept in order; what another window kept is shown instead of what it would overwrite. */
export function useBook(stored: StoredBook, words: BooksWords, onKept: () => void): OpenBook {
  const all = useWords();
  const say = useSay();
  const [book, setBook] = useState(stored);
  const [waiting, setWaiting] = useState(0);
  const latest = useRef(stored);
  const queue = useRef<Promise<boolean>>(Promise.resolve(true));
  const show = useCallback((next: StoredBook) => {
    latest.current = next;
    setBook(next);
  }, []);
  useEffect(() => {
    if (stored.revision > latest.current.revision) show(stored);
  }, [stored, show]);
  const save = async (): Promise<boolean> => {
    const { id, updatedAt: _, ...body } = latest.current;
    try {
      const { revision, updatedAt } = await ask('saveBook', { params: { id }, body });
      show({ ...latest.current, revision, updatedAt });
      return true;
    } catch (error) {
      const refused = error instanceof RefusedError ? error.refusal : null;
      if (refused?.code === 'book-changed') show(refused.values.kept);
      say(refused?.code === 'book-changed' ? words.newer : wordsFor(error, all));
      return false;
    }
  };
  const change = (changed: Partial<WrittenBook>) => {
    show({ ...latest.current, ...changed });
    setWaiting((n) => n + 1);
    queue.current = queue.current.then(save).finally(() => {
      setWaiting((n) => n - 1);
      onKept();
    });
  };
  return { book, state: waiting > 0 ? 'saving' : 'saved', change, kept: () => queue.current };
}
