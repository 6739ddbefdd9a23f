/** The progress page of a student, to be printed for parents and students. */
import type { Paper } from '@shedbook/core';
import { addressOf, ROUTES } from '@shedbook/routes';
import { buttonClass, Choices, Icon } from '@shedbook/stand';
import { useState } from 'react';
import { useLanguage } from '../words/students-words.tsx';
import styles from './progress-page.module.css';

interface ProgressPageProps {
  readonly student: { readonly id: string; readonly name: string };
  /** A moment. */
  readonly now: string;
  readonly paper: Paper;
}

/** Weeks that it may look back. */
const SPANS = ['4', '13', '52'] as const;

type Span = (typeof SPANS)[number];

/** How far it looks back, and the file. */
export function ProgressPage({ student: { id, name }, now, paper }: ProgressPageProps) {
  const { words, tag } = useLanguage();
  const [weeks, setWeeks] = useState<Span>('4');
  const said = words.progressPage;
  const query = new URLSearchParams({ language: tag, now, weeks, paper });
  return (
    <section className={styles.progress} aria-label={said.title} data-part="progress-page">
      <h3>{said.title}</h3>
      <p className="quiet">{said.lead}</p>
      <Choices<Span>
        label={said.weeks}
        value={weeks}
        choices={SPANS.map((each) => [each, said.span({ n: Number(each) })])}
        onChange={setWeeks}
      />
      <a className={buttonClass()} download href={`${addressOf(ROUTES.printProgress, { id })}?${query}`}>
        <Icon name="print" />
        {said.print({ name })}
      </a>
    </section>
  );
}
