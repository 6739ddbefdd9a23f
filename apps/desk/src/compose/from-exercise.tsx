/** From one exercise: easier, harder and like bars, its variations, or a page that leads to it; what is made is proposed. */
import { DIRECTIONS } from '@shedbook/composer';
import { Button, Choices } from '@shedbook/stand';
import { useState } from 'react';
import { useWords } from '../words/words.tsx';
import styles from './compose-view.module.css';
import type { FromAsk } from './composer-messages.ts';
import type { Composer } from './use-composer.ts';

interface FromExerciseProps {
  readonly composer: Composer;
  /** Number of the exercise that is chosen. */
  readonly chosen: number;
}

const WAYS = [...DIRECTIONS, 'variations', 'goal'] as const;
type Way = (typeof WAYS)[number];

/** What the student has of the page that leads to an exercise. */
type Has = 'nothing' | 'before';

function askOf(way: Way, has: Has, exercise: number): FromAsk {
  if (way === 'variations') return { ask: 'variations', exercise };
  if (way !== 'goal') return { ask: 'near', exercise, direction: way };
  return { ask: 'goal', exercise, hasBefore: has === 'before' };
}

/** The way to go from the chosen exercise. */
export function FromExercise({ composer, chosen }: FromExerciseProps) {
  const words = useWords();
  const said = words.compose;
  const [way, setWay] = useState<Way>('easier');
  const [has, setHas] = useState<Has>('before');
  return (
    <details className={styles.second} data-part="from-exercise">
      <summary>{said.from({ n: chosen })}</summary>
      <div className={styles.opened}>
        <p>{said.fromLead}</p>
        <Choices
          label={said.way}
          value={way}
          choices={WAYS.map((each) => [each, said.ways[each]] as const)}
          onChange={setWay}
        />
        {way === 'goal' && (
          <Choices
            label={said.has}
            value={has}
            choices={[
              ['before', said.hasBefore],
              ['nothing', said.hasNothing],
            ]}
            onChange={setHas}
          />
        )}
        <Button onClick={() => composer.propose(askOf(way, has, chosen))}>{said.proposePass}</Button>
      </div>
    </details>
  );
}
