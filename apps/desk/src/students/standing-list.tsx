/** Exercises as they stand for a student: each as it is written, with what is known of it. */

import { type ExerciseStanding, nameOf } from '@shedbook/coach';
import { countedTempo } from '@shedbook/core';
import { Button } from '@shedbook/stand';
import { sayExercise } from '@shedbook/words';
import type { ReactNode } from 'react';
import { ExerciseDrawing } from '../notation/exercise-drawing.tsx';
import { useSay, useWords } from '../words/students-words.tsx';
import styles from './standing-list.module.css';
import type { Passed } from './use-pass.ts';

interface StandingListProps {
  readonly title: string;
  readonly standings: readonly ExerciseStanding[];
  /** Passes one at its goal; where left out, they hold already. */
  readonly pass?: (passed: Passed) => Promise<void>;
}

/** Exercises that are shown before the rest is only counted. */
const SHOWN = 6;

/** Exercises beside and under each other. */
export function ExerciseGrid({ children }: { readonly children: ReactNode }) {
  return <ul className={styles.grid}>{children}</ul>;
}

/** The name of an exercise of a lesson. */
export function StandingName({ children }: { readonly children: ReactNode }) {
  return <p className={styles.name}>{children}</p>;
}

/** One exercise: its name, its notation, its tempo, and where it slips. */
function StandingItem({ standing }: { readonly standing: ExerciseStanding }) {
  const words = useWords();
  const say = useSay();
  const { exercise, lesson, cleanBpm, sore } = standing;
  const counted = (bpm: number) => countedTempo(lesson.meter, bpm);
  return (
    <div className={styles.standing}>
      <StandingName>{nameOf(standing)}</StandingName>
      <div role="img" aria-label={sayExercise(exercise, words)}>
        <ExerciseDrawing exercise={exercise} meter={lesson.meter} />
      </div>
      <p className="quiet">
        {cleanBpm !== null &&
          words.students.clean({ bpm: counted(cleanBpm), goal: counted(lesson.tempo.goalBpm) })}
        {cleanBpm !== null && sore && '; '}
        {sore && say(sore.told)}
      </p>
    </div>
  );
}

type PassButtonProps = { readonly standing: ExerciseStanding } & Required<Pick<StandingListProps, 'pass'>>;

function PassButton({ standing, pass }: PassButtonProps) {
  const words = useWords().students;
  const { id, key, lesson } = standing;
  const { goalBpm } = lesson.tempo;
  const tempo = countedTempo(lesson.meter, goalBpm);
  return (
    <Button
      dress="bare"
      aria-label={words.passThis({ name: nameOf(standing), bpm: tempo })}
      onClick={() => void pass({ lesson: id, exercise: key, bpm: goalBpm })}
    >
      {words.pass({ bpm: tempo })}
    </Button>
  );
}

/** The list; nothing where there is none. */
export function StandingList({ title, standings, pass }: StandingListProps) {
  const words = useWords().students;
  if (standings.length === 0) return null;
  const rest = standings.length - SHOWN;
  return (
    <section aria-label={title}>
      <h3>{title}</h3>
      <ExerciseGrid>
        {standings.slice(0, SHOWN).map((standing) => (
          <li key={`${standing.id} ${standing.key}`}>
            <StandingItem standing={standing} />
            {pass && <PassButton standing={standing} pass={pass} />}
          </li>
        ))}
      </ExerciseGrid>
      {rest > 0 && <p className="quiet">{words.more({ n: rest })}</p>}
    </section>
  );
}
