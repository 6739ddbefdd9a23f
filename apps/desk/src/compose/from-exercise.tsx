/** From one exercise: easier, harder and like bars, its variations, or a page that leads to it; what is made is proposed. */
import { DIRECTIONS } from '@shedbook/composer';
import { Button, Choices } from '@shedbook/stand';
import { useState } from 'react';
import type { DeskShelf } from '../students/take-in.ts';
import { useWords } from '../words/words.tsx';
import styles from './compose-view.module.css';
import type { FromAsk } from './composer-messages.ts';
import type { Composer } from './use-composer.ts';
import { type Has, WhatIsHad } from './what-is-had.tsx';

interface FromExerciseProps {
  /** The whole lesson under its id. */
  readonly shelf: DeskShelf;
  readonly composer: Composer;
  /** Number of the exercise that is chosen. */
  readonly chosen: number;
}

const WAYS = [...DIRECTIONS, 'variations', 'goal'] as const;
type Way = (typeof WAYS)[number];

function askOf(way: Way, has: readonly number[], exercise: number): FromAsk {
  if (way === 'variations') return { ask: 'variations', exercise };
  if (way !== 'goal') return { ask: 'near', exercise, direction: way };
  return { ask: 'goal', exercise, has };
}

/** The way to go from the chosen exercise. */
export function FromExercise({ shelf, composer, chosen }: FromExerciseProps) {
  const words = useWords();
  const said = words.compose;
  const [way, setWay] = useState<Way>('easier');
  const [has, setHas] = useState<Has>('before');
  const [played, setPlayed] = useState<readonly number[] | null>(null);
  const before = shelf.lesson.exercises.map(({ number }) => number).filter((number) => number < chosen);
  const known = { nothing: [], before, student: played }[has];
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
        {way === 'goal' && <WhatIsHad has={has} onChange={setHas} shelf={shelf} onHas={setPlayed} />}
        <Button disabled={known === null} onClick={() => composer.propose(askOf(way, known ?? [], chosen))}>
          {said.proposePass}
        </Button>
      </div>
    </details>
  );
}
