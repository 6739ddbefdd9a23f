/** Today's list on the stand: which item is on, what of it is played, how long still, and the way to the next. */
import { Button } from '@shedbook/stand';
import { durationWords } from '@shedbook/words';
import { useHearingWords } from '../page/hearing-words.ts';
import { nameOf, sayPart } from '../plan/item-words.ts';
import { itemOf, setRun, useRun } from '../session/plan-run.ts';
import { usePracticeSession } from '../session/practice-session.tsx';
import { useShelf } from '../session/shelf.tsx';
import inRow from '../ui/row.module.css';
import styles from './run-strip.module.css';

/** Seconds are said in fives: a clock that runs draws the eye. */
const SAID_SECONDS = 5;

/** The strip; nothing where no list is gone through. */
export default function RunStrip() {
  const { plan: words, durations } = useHearingWords();
  const run = useRun();
  const { nextOnList } = usePracticeSession();
  const shelf = useShelf();
  const item = run && itemOf(run);
  if (!run || !item) return null;
  const left = durationWords(durations, Math.ceil(run.leftSeconds / SAID_SECONDS) * SAID_SECONDS);
  const what = nameOf(item, shelf, words);
  return (
    <section className={styles.strip} data-part="run" data-kind={item.kind} aria-label={words.title}>
      <p className={styles.says}>
        <strong>{item.kind === 'break' ? words.rests({ left }) : words.running({ what, left })}</strong>
        {item.part && <span>{sayPart(item.part, words)}</span>}
        <span className="quiet">{words.place({ n: run.at + 1, of: run.plan.items.length })}</span>
      </p>
      <div className={inRow.row}>
        <Button onClick={nextOnList}>{words.skip}</Button>
        <Button onClick={() => setRun(null)}>{words.leave}</Button>
      </div>
    </section>
  );
}
