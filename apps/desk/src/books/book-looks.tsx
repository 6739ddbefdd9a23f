/** What is printed round the lessons of a book, and on what. */
import { PAPERS, type Paper } from '@shedbook/core';
import type { WrittenBook } from '@shedbook/routes';
import { Check, Select } from '@shedbook/stand';
import type { BooksWords } from '@shedbook/words';
import { useWords } from '../words/words.tsx';
import styles from './books.module.css';

const PARTS = ['contents', 'key', 'index', 'twoSided'] as const;

interface BookLooksProps {
  readonly book: WrittenBook;
  readonly words: BooksWords;
  readonly onChange: (change: Partial<WrittenBook>) => void;
}

/** The choices. */
export function BookLooks({ book, words, onChange }: BookLooksProps) {
  const { tablet } = useWords().print;
  return (
    <section className={styles.part} aria-label={words.looks}>
      <h3>{words.looks}</h3>
      {PARTS.map((part) => (
        <Check key={part} checked={book[part]} onChange={(isOn) => onChange({ [part]: isOn })}>
          {words[part]}
        </Check>
      ))}
      <Select
        label={words.paper}
        value={book.paper ?? ''}
        onChange={({ target: { value } }) =>
          onChange({ paper: PAPERS.find((paper: Paper) => paper === value) ?? null })
        }
      >
        <option value="">{words.ownPaper}</option>
        {PAPERS.map((paper) => (
          <option key={paper} value={paper}>
            {paper === 'tablet' ? tablet : paper}
          </option>
        ))}
      </Select>
    </section>
  );
}
