/** A term: several pages that bring the vocabulary little by little, proposed together. */
import type { Lesson } from '@shedbook/core';
import { Button, Range } from '@shedbook/stand';
import { useState } from 'react';
import { useWords } from '../words/words.tsx';
import styles from './compose-view.module.css';
import type { Composer } from './use-composer.ts';

interface TermChoiceProps {
  /** The whole lesson. */
  readonly lesson: Lesson;
  readonly composer: Composer;
}

/** Fewest and most pages of a term, and as many as it has at first. */
const PAGES = { least: 2, most: 12, first: 4 } as const;

/** How many pages, and asking for them; a lesson that is divided has its pages already. */
export function TermChoice({ lesson, composer }: TermChoiceProps) {
  const words = useWords().compose;
  const [pages, setPages] = useState<number>(PAGES.first);
  const again = composer.ask?.ask === 'term' ? composer.ask.again + 1 : 0;
  const isDivided = lesson.sections.length > 0;
  return (
    <details className={styles.second} data-part="term">
      <summary>{words.term}</summary>
      <div className={styles.opened}>
        <p>{isDivided ? words.termDivided : words.termLead}</p>
        {!isDivided && (
          <>
            <Range
              label={words.termPages}
              says={String(pages)}
              value={pages}
              min={PAGES.least}
              max={PAGES.most}
              step={1}
              onChange={setPages}
            />
            <Button onClick={() => composer.propose({ ask: 'term', pages, again })}>
              {words.proposeTerm}
            </Button>
          </>
        )}
      </div>
    </details>
  );
}
