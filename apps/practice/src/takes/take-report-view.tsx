/** What the ear makes of a whole take: three sentences, what it could not tell, and the report as a page. */
import type { RefusalFact } from '@shedbook/listen';
import { say, unheardSentences } from '@shedbook/words';
import { useEffect, useMemo, useState } from 'react';
import { useHearingCatalogue, useHearingWords } from '../page/hearing-words.ts';
import { usePracticeLanguage } from '../page/words.tsx';
import { useHearingSettings } from '../session/hearing-settings.ts';
import type { Take } from './take.ts';
import { reportPage, takeSentences } from './take-remarks.ts';
import styles from './take-report-view.module.css';

function useTitle(take: Take): string {
  const words = useHearingWords().takes;
  const { number } = take;
  return `${take.lessonTitle}, ${number === null ? words.timeAlone : words.exercise({ n: number })}`;
}

/** Draws the report of a take as a page when asked; null where there is no report. */
export function useReportPage(take: Take): () => string | null {
  const { tag } = usePracticeLanguage();
  const title = useTitle(take);
  const [{ level }] = useHearingSettings();
  return () => take.report && reportPage(take.report, level, tag, title);
}

/** The page as a picture, drawn when it is opened. */
function Page({ take }: { readonly take: Take }) {
  const words = useHearingWords().takes;
  const title = useTitle(take);
  const draw = useReportPage(take);
  const [isOpen, setOpen] = useState(false);
  const [url, setUrl] = useState<string | null>(null);
  useEffect(() => {
    const page = isOpen ? draw() : null;
    if (page === null) return setUrl(null);
    const next = URL.createObjectURL(new Blob([page], { type: 'image/svg+xml' }));
    setUrl(next);
    return () => URL.revokeObjectURL(next);
  }, [isOpen, take]);
  return (
    <details className={styles.page} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{words.report}</summary>
      {url && <img src={url} alt={words.reportOf({ title })} />}
    </details>
  );
}

/** The view. */
export function TakeReportView({ take }: { readonly take: Take }) {
  const { tag } = usePracticeLanguage();
  const { language } = useHearingCatalogue();
  const [{ level }] = useHearingSettings();
  const sentences = useMemo(
    () => (take.report ? takeSentences(take.report, level, tag) : []),
    [take, level, tag],
  );
  if (!take.report) {
    const why = take.refused ? say<RefusalFact>(take.refused, language) : take.refusal;
    return why ? <p className="quiet">{why}</p> : null;
  }
  return (
    <div className={styles.report}>
      <ul>
        {sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      {unheardSentences(take.report, language).map((sentence) => (
        <p key={sentence} className="quiet">
          {sentence}
        </p>
      ))}
      <Page take={take} />
    </div>
  );
}
