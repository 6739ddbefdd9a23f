/** The student's own goal: said over today's list, changed in a sheet of its own. */
import { countedTempo, PLAYED_TEMPI, quarterTempo, sectionOf } from '@shedbook/core';
import { Button, closeSheet, Field, SheetButton } from '@shedbook/stand';
import { type FormEvent, useState } from 'react';
import { useHearingWords } from '../page/hearing-words.ts';
import { readGoal } from '../session/own-goal.ts';
import { usePracticeSession } from '../session/practice-session.tsx';
import inRow from '../ui/row.module.css';
import styles from './goal-line.module.css';

function GoalForm() {
  const words = useHearingWords().plan.goal;
  const { goal, setGoal, pack } = usePracticeSession();
  const { meter } = sectionOf(pack.lesson, null);
  const [text, setText] = useState(goal.words);
  const [bpm, setBpm] = useState(goal.bpm === null ? '' : String(countedTempo(meter, goal.bpm)));
  const keep = (event: FormEvent) => {
    event.preventDefault();
    setGoal(
      readGoal(
        JSON.stringify({ words: text.trim(), bpm: bpm === '' ? null : quarterTempo(meter, Number(bpm)) }),
      ),
    );
    closeSheet(event);
  };
  return (
    <form className={styles.form} onSubmit={keep}>
      <Field
        label={words.what}
        value={text}
        maxLength={120}
        onChange={(event) => setText(event.target.value)}
      />
      <Field
        label={words.tempo}
        type="number"
        inputMode="numeric"
        min={countedTempo(meter, PLAYED_TEMPI.least)}
        max={countedTempo(meter, PLAYED_TEMPI.most)}
        value={bpm}
        onChange={(event) => setBpm(event.target.value)}
      />
      <p className="quiet">{words.hint}</p>
      <Button type="submit" dress="strong">
        {words.keep}
      </Button>
    </form>
  );
}

/** The line. */
export function GoalLine() {
  const all = useHearingWords();
  const words = all.plan.goal;
  const { goal, pack } = usePracticeSession();
  const { meter } = sectionOf(pack.lesson, null);
  const says = [
    goal.words,
    goal.bpm === null ? '' : all.plan.tempo({ bpm: countedTempo(meter, goal.bpm) }),
  ].filter((each) => each !== '');
  return (
    <div className={inRow.row} data-part="goal">
      {says.length > 0 && <p>{words.is({ goal: says.join(', ') })}</p>}
      <SheetButton title={words.title} opens={says.length > 0 ? words.change : words.title} done={all.close}>
        <GoalForm />
      </SheetButton>
    </div>
  );
}
