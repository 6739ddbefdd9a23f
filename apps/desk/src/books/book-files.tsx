/** A book taken away: as one PDF, and as one take-home pack. */
import { Button, Icon } from '@shedbook/stand';
import type { BooksWords } from '@shedbook/words';
import { useState } from 'react';
import { ask } from '../document/client.ts';
import { explain } from '../document/error-words.ts';
import { offer } from '../shared/offer.ts';
import { useLanguage } from '../words/words.tsx';
import styles from './books.module.css';

interface BookFilesProps {
  readonly id: string;
  /** Why nothing can be made of it yet; null where something can. */
  readonly lacks: string | null;
  readonly words: BooksWords;
  /** Waits until the book is kept. @returns whether it is */
  readonly kept: () => Promise<boolean>;
}

/** The two buttons, and what is going on. */
export function BookFiles({ id, lacks, words, kept }: BookFilesProps) {
  const catalogue = useLanguage();
  const [isBusy, setBusy] = useState(false);
  const [said, setSaid] = useState('');
  const make = async (name: 'printBook' | 'packBook') => {
    const isPrint = name === 'printBook';
    setBusy(true);
    setSaid(isPrint ? words.printing : words.packing);
    try {
      if (!(await kept())) return setSaid('');
      const made = await ask(name, { params: { id }, query: { language: catalogue.tag } });
      offer(made.file, made.name);
      setSaid(isPrint ? words.printed : words.packed);
    } catch (error) {
      setSaid(await explain(error, catalogue));
    } finally {
      setBusy(false);
    }
  };
  return (
    <section className={styles.part} aria-label={words.print}>
      <div className={styles.files}>
        <Button dress="strong" disabled={isBusy || lacks !== null} onClick={() => void make('printBook')}>
          <Icon name="print" />
          {words.print}
        </Button>
        <Button disabled={isBusy || lacks !== null} onClick={() => void make('packBook')}>
          <Icon name="file" />
          {words.pack}
        </Button>
      </div>
      <p className="quiet">{words.packHint}</p>
      <p className="quiet" role="status">
        {lacks ?? said}
      </p>
    </section>
  );
}
