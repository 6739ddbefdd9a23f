/** What the ear makes of a whole take: three sentences, what it could not tell, and the report as a page. */
import { asJudged, type Judgement, judgeTaken } from '@shedbook/judge';
import type { RefusalFact } from '@shedbook/listen';
import { REPORTS, say, sayRounds, teacherSentences, unheardSentences } from '@shedbook/words';
import { useEffect, useMemo, useState } from 'react';
import { useHearingCatalogue, useHearingWords } from '../page/hearing-words.ts';
import { usePracticeLanguage } from '../page/words.tsx';
import { formOf } from '../session/choice.ts';
import { useHearingSettings } from '../session/hearing-settings.ts';
import { usePracticeSession } from '../session/practice-session.tsx';
import { reportPage } from './report-page.ts';
import type { Take } from './take.ts';
import styles from './take-report-view.module.css';

function useTitle(take: Take): string {
  const words = useHearingWords().takes;
  const { number } = take;
  return `${take.lessonTitle}, ${number === null ? words.timeAlone : words.exercise({ n: number })}`;
}

/** The verdict on a take, for the level that is chosen; null where there is none. */
export function useTakeJudgement(take: Take | null): Judgement | null {
  const { lesson } = usePracticeSession();
  const [{ level }] = useHearingSettings();
  return useMemo(
    () => take && judgeTaken(take, lesson, formOf(lesson, take.form), level),
    [take, lesson, level],
  );
}

interface JudgedTake {
  readonly take: Take;
  readonly judgement: Judgement | null;
}

/** Draws the report of a take as a page when asked; null where there is none. */
export function useReportPage({ take, judgement }: JudgedTake): () => string | null {
  const { tag } = usePracticeLanguage();
  const title = useTitle(take);
  return () => take.report && judgement && reportPage(take.report, judgement, tag, title);
}

/** The page as a picture, drawn when it is opened. */
function Page({ take, judgement }: JudgedTake) {
  const words = useHearingWords().takes;
  const title = useTitle(take);
  const draw = useReportPage({ take, judgement });
  const [isOpen, setOpen] = useState(false);
  const [url, setUrl] = useState<string | null>(null);
  useEffect(() => {
    const page = isOpen ? draw() : null;
    if (page === null) return setUrl(null);
    const next = URL.createObjectURL(new Blob([page], { type: 'image/svg+xml' }));
    setUrl(next);
    return () => URL.revokeObjectURL(next);
  }, [isOpen, take, judgement]);
  return (
    <details className={styles.page} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{words.report}</summary>
      {url && <img src={url} alt={words.reportOf({ title })} />}
    </details>
  );
}

/** The view. */
export function TakeReportView({ take, judgement }: JudgedTake) {
  const { language } = useHearingCatalogue();
  const { tag } = usePracticeLanguage();
  const sentences = judgement ? teacherSentences(judgement, language) : [];
  const rounds = judgement ? sayRounds(judgement, REPORTS[tag]) : [];
  if (!take.report) {
    const why = take.refused ? say<RefusalFact>(take.refused, language) : take.refusal;
    return why ? <p className="quiet">{why}</p> : null;
  }
  const report = judgement ? asJudged(take.report, judgement) : take.report;
  return (
    <div className={styles.report}>
      <ul>
        {sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      {rounds.length > 0 && (
        <ol className={styles.rounds} data-part="take-rounds">
          {rounds.map((round) => (
            <li key={round}>{round}</li>
          ))}
        </ol>
      )}
      {unheardSentences(report, language).map((sentence) => (
        <p key={sentence} className="quiet">
          {sentence}
        </p>
      ))}
      {judgement && <Page take={take} judgement={judgement} />}
    </div>
  );
}
