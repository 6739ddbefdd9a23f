/** What came of a recording: three sentences, what could not be told, and the picture. */
import type { FullReport } from '@shedbook/core';
import { drawReport } from '@shedbook/engrave/report';
import { asJudged, type Judgement } from '@shedbook/judge';
import { pictureText, teacherSentences, unheardSentences } from '@shedbook/words';
import { useEffect, useMemo, useState } from 'react';
import { useLanguage, useWords } from '../words/students-words.tsx';
import styles from './heard-report.module.css';

/** What is shown. */
export interface HeardReportProps {
  readonly report: FullReport;
  readonly judgement: Judgement;
  /** Lesson and exercise. */
  readonly title: string;
}

/** The report. */
export function HeardReport({ report: heard, judgement, title }: HeardReportProps) {
  const { language, tag } = useLanguage();
  const words = useWords().takes;
  const report = useMemo(() => asJudged(heard, judgement), [heard, judgement]);
  const svg = useMemo(
    () => drawReport(report, pictureText(report, { title, judgement, language: tag })),
    [report, judgement, title, tag],
  );
  const [url, setUrl] = useState<string | null>(null);
  useEffect(() => {
    const next = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
    setUrl(next);
    return () => URL.revokeObjectURL(next);
  }, [svg]);
  return (
    <div className={styles.report} data-part="heard-report">
      <ul>
        {teacherSentences(judgement, language).map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      {unheardSentences(report, language).map((sentence) => (
        <p key={sentence} className="quiet">
          {sentence}
        </p>
      ))}
      {url && <img className={styles.picture} src={url} alt={words.picture({ title })} />}
    </div>
  );
}
