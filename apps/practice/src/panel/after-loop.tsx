/** After each loop: what it was, why, and what follows; said once, when the loop is over. */

import { say } from '@shedbook/words';
import type { JudgedLoop } from '../ear/hearing.ts';
import { useHearingCatalogue, useHearingWords } from '../page/hearing-words.ts';
import styles from './after-loop.module.css';
import type { HearingView } from './use-hearing.ts';

/** Reasons that are said: more than three at once help nobody. */
const REASONS = 3;

function Rounds({ loops }: { readonly loops: readonly JudgedLoop[] }) {
  const words = useHearingWords().after;
  return (
    <ol className={styles.rounds} data-part="rounds" aria-label={words.rounds}>
      {loops.map(({ stretch, number, judgement: { verdict }, loop }) => (
        <li key={`${stretch} ${number}`} data-verdict={verdict}>
          <span className={styles.sign} aria-hidden="true" />
          <span>
            {words.round({ n: number + 1, bpm: Math.round(loop.bpm), verdict: words.short[verdict] })}
          </span>
        </li>
      ))}
    </ol>
  );
}

/** The words after the loop. */
export function AfterLoop({ view }: { readonly view: HearingView }) {
  const { words, language } = useHearingCatalogue();
  const { loops, said } = view;
  const last = loops.at(-1);
  const reasons =
    last?.judgement.verdict === 'clean' ? [] : (last?.judgement.reasons.slice(0, REASONS) ?? []);
  return (
    <section className={styles.after} data-part="after-loop" aria-labelledby="after-title">
      <h3 id="after-title">{words.after.title}</h3>
      <div role="status">
        {!last && <p className="quiet">{words.after.nothing}</p>}
        {last && (
          <p>
            <strong data-verdict={last.judgement.verdict}>
              {words.after.verdicts[last.judgement.verdict]}
            </strong>
          </p>
        )}
        {last?.isRecording && <p>{words.after.recording}</p>}
        {last && reasons.length > 0 && (
          <ul className={styles.reasons} data-part="reasons">
            {reasons.map(({ fact }, index) => (
              <li key={index}>{say(fact, language)}</li>
            ))}
          </ul>
        )}
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
      {loops.length > 0 && <Rounds loops={loops} />}
    </section>
  );
}
