/** The tempo ladder: how many clean loops there are, what the last one meant, and the student's own word on it. */
import type { LadderStep } from '@shedbook/coach';
import { countedTempo, type Meter } from '@shedbook/core';
import { Button } from '@shedbook/stand';
import type { PracticeWords } from '@shedbook/words';
import { usePracticeWords } from '../page/words.tsx';
import { type PracticeSession, usePracticeSession } from '../session/practice-session.tsx';
import type { Ladder } from '../session/use-ladder.ts';
import styles from './ladder-strip.module.css';
import type { StageActions } from './use-stage-actions.ts';

/** What a loop meant, in a sentence. */
function sayStep(
  { move, state }: LadderStep,
  { rule }: Ladder,
  { meter, words }: { readonly meter: Meter; readonly words: PracticeWords['ladder'] },
): string {
  const bpm = countedTempo(meter, state.bpm);
  if (move === 'up') return words.up({ bpm });
  if (move === 'down') return words.down({ bpm });
  if (move === 'arrived') return words.arrived({ bpm });
  const left = rule.cleanLoops - state.clean;
  if (state.clean > 0 && left > 0) return words.more({ n: left });
  return state.bpm <= rule.lowestBpm ? words.lowest({ bpm }) : words.stay({ bpm });
}

/** What came of the last word or verdict, in a sentence. */
function sayLast({ ladder, answer, lesson }: PracticeSession, words: PracticeWords['ladder']): string {
  if (answer !== null && answer !== 'told') return words.answers[answer];
  return ladder.last ? sayStep(ladder.last, ladder, { meter: lesson.meter, words }) : '';
}

function Boxes({ ladder }: { readonly ladder: Ladder }) {
  const { rule, state } = ladder;
  return (
    <span className={styles.boxes} aria-hidden="true">
      {Array.from({ length: rule.cleanLoops }, (_, index) => (
        <span key={index} data-done={index < state.clean || undefined} />
      ))}
    </span>
  );
}

/** The strip. */
export function LadderStrip({ actions }: { readonly actions: StageActions }) {
  const words = usePracticeWords().ladder;
  const session = usePracticeSession();
  const { ladder, choice } = session;
  if (!choice.ladder) return null;
  const { rule, state } = ladder;
  return (
    <section className={styles.strip} data-part="ladder" aria-label={words.title}>
      <div className={styles.says} data-part="ladder-says">
        <Boxes ladder={ladder} />
        <span>
          {words.progress({
            clean: Math.min(state.clean, rule.cleanLoops),
            of: rule.cleanLoops,
            bpm: countedTempo(session.lesson.meter, state.bpm),
          })}
        </span>
        <span className={styles.last} data-part="ladder-last" role="status">
          {sayLast(session, words)}
        </span>
      </div>
      <div className={styles.buttons}>
        <Button onClick={actions.stumbled}>{words.stumbled}</Button>
        <Button dress="strong" onClick={actions.clean}>
          {words.clean}
        </Button>
      </div>
    </section>
  );
}
