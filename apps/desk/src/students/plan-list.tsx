/** What the student would play next. */
import { lessonsOf, meterOfItem, type PlanItem, planFor, USUAL_MINUTES } from '@shedbook/coach';
import { countedTempo, type PracticeLog } from '@shedbook/core';
import type { StoredAssignment } from '@shedbook/routes';
import { useMemo } from 'react';
import { useSay, useWords } from '../words/students-words.tsx';
import styles from './plan-list.module.css';
import type { DeskShelf } from './take-in.ts';

interface PlanListProps {
  readonly id: string;
  readonly shelf: readonly DeskShelf[];
  readonly log: PracticeLog;
  readonly assignments: readonly StoredAssignment[];
  /** A moment. */
  readonly now: string;
  /** Whether the coach proposes nothing. */
  readonly isSilent: boolean;
}

/** The plan, as their own page makes it. */
export function PlanList({ id, shelf, log, assignments, now, isSilent }: PlanListProps) {
  const words = useWords().students;
  const say = useSay();
  const plan = useMemo(() => {
    const own = lessonsOf(shelf, assignments, log);
    return planFor(id, { shelf: own, log, now, minutes: USUAL_MINUTES, assignments, isSilent });
  }, [shelf, log, now, assignments, id, isSilent]);
  const sayTempo = (item: PlanItem, { fromBpm, goalBpm }: NonNullable<PlanItem['tempo']>) => {
    const meter = meterOfItem(item, shelf);
    return words.from({ bpm: countedTempo(meter, fromBpm), goal: countedTempo(meter, goalBpm) });
  };
  return (
    <section className={styles.plan} aria-label={words.plan({ minutes: USUAL_MINUTES })}>
      <h3>{words.plan({ minutes: USUAL_MINUTES })}</h3>
      <ol>
        {plan.items.map((item, index) => (
          <li key={index}>
            <span className={styles.minutes}>{words.minutes({ n: item.minutes })}</span>
            <span>
              <strong>{say(item.title)}</strong>
              {item.tempo && `, ${sayTempo(item, item.tempo)}`}
              <span className={styles.reason}>{say(item.reason)}</span>
            </span>
          </li>
        ))}
      </ol>
      {plan.notes.map((note) => (
        <p key={note.fact} className="quiet">
          {say(note)}
        </p>
      ))}
    </section>
  );
}
