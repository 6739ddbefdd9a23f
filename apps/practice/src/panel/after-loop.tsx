/**
 * After a round: what it was, one thing to do, and on a press the figures behind it. Who plays well is told less often:
 * after every round at first, then now and then, then on asking.
 */
import { countedTempo } from '@shedbook/core';
import { Button } from '@shedbook/stand';
import { sayVerdict } from '@shedbook/words';
import { useEffect, useState } from 'react';
import type { JudgedLoop } from '../ear/hearing.ts';
import { useHearingCatalogue, useHearingWords } from '../page/hearing-words.ts';
import { usePracticeSession } from '../session/practice-session.tsx';
import styles from './after-loop.module.css';
import { isToldNow } from './told-now.ts';
import type { HearingView } from './use-hearing.ts';

function Rounds({ loops }: { readonly loops: readonly JudgedLoop[] }) {
  const words = useHearingWords().after;
  const { lesson } = usePracticeSession();
  return (
    <ol className={styles.rounds} data-part="rounds" aria-label={words.rounds}>
      {loops.map(({ stretch, number, judgement: { verdict }, loop }) => (
        <li key={`${stretch} ${number}`} data-verdict={verdict.is}>
          <span className={styles.sign} aria-hidden="true" />
          <span>
            {words.round({
              n: number + 1,
              bpm: countedTempo(lesson.meter, loop.bpm),
              verdict: words.short[verdict.is],
            })}
          </span>
        </li>
      ))}
    </ol>
  );
}

/** The verdict on a round, one thing to do, and the figures. */
function Told({ judged: { judgement } }: { readonly judged: JudgedLoop }) {
  const { words, language } = useHearingCatalogue();
  const { advice, figures } = sayVerdict(judgement, language);
  const { is } = judgement.verdict;
  return (
    <>
      <p>
        <strong data-verdict={is}>{words.after.verdicts[is]}</strong>
      </p>
      {advice !== null && <p data-part="advice">{advice}</p>}
      {figures.length > 0 && (
        <details className={styles.figures}>
          <summary>{words.after.figures}</summary>
          <ul className={styles.reasons} data-part="figures">
            {figures.map((figure) => (
              <li key={figure}>{figure}</li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

/** The words after the round. */
export function AfterLoop({ view }: { readonly view: HearingView }) {
  const words = useHearingWords();
  const { loops, said } = view;
  const last = loops.at(-1);
  const [asked, setAsked] = useState<JudgedLoop | null>(null);
  useEffect(() => setAsked(null), [last]);
  const isTold = last !== undefined && (asked === last || isToldNow(loops));
  return (
    <section className={styles.after} data-part="after-loop" aria-labelledby="after-title">
      <h3 id="after-title">{words.after.title}</h3>
      <div role="status">
        {!last && <p className="quiet">{words.after.nothing}</p>}
        {last && isTold && <Told judged={last} />}
        {said && (
          <p className={styles.going}>
            {said.kind === 'next'
              ? words.hearing.said.next({ n: said.number })
              : said.kind === 'more'
                ? words.hearing.said.more({ n: said.loops })
                : words.hearing.said[said.kind]}
          </p>
        )}
      </div>
      {last && !isTold && <Button onClick={() => setAsked(last)}>{words.after.ask}</Button>}
      {loops.length > 0 && <Rounds loops={loops} />}
    </section>
  );
}
