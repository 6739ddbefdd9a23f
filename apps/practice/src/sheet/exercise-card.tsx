/** One exercise on the sheet: its number, its notation, and the way to the stand. */

import { type Exercise, exerciseLabel } from '@shedbook/core';
import type { PackBar } from '@shedbook/pack';
import { classes, ExampleSign } from '@shedbook/stand';
import { sayExercise } from '@shedbook/words';
import { hrefOf } from '../page/route.ts';
import { usePracticeWords } from '../page/words.tsx';
import styles from './exercise-card.module.css';

interface TileProps {
  readonly bar: PackBar;
  /** Whether it is one of those that come into sight first. */
  readonly first?: boolean;
}

/** A tile as a picture; its words stand beside it. */
function TilePicture({ bar, first = false }: TileProps) {
  const { widthMm, heightMm, tile } = bar;
  return (
    <img
      className={styles.tile}
      src={tile}
      alt=""
      width={Math.round(widthMm * 10)}
      height={Math.round(heightMm * 10)}
      loading={first ? 'eager' : 'lazy'}
      decoding="async"
    />
  );
}

interface ExerciseCardProps {
  readonly exercise: Exercise;
  readonly bars: readonly PackBar[];
  /** Whether it is in sight as the page opens. */
  readonly isInSight: boolean;
}

/** The card. */
export function ExerciseCard({ exercise, bars, isInSight }: ExerciseCardProps) {
  const words = usePracticeWords();
  const { number, name, notes, example } = exercise;
  return (
    <li>
      <a className={styles.card} data-part="exercise" href={hrefOf({ at: 'stage', exercise: number })}>
        <span className={styles.number} aria-hidden="true">
          {exerciseLabel(number)}
          {example && <ExampleSign says={words.stage.example} />}
        </span>
        <span className="hidden-words">
          {words.sheet.open({ n: number, name: name ?? '' })}. {sayExercise(exercise, words, 'always')}
          {example && ` ${words.stage.example}.`}
        </span>
        <span className={styles.tiles} aria-hidden="true">
          {name && <span className={styles.name}>{name}</span>}
          {bars.map((bar) => (
            <TilePicture key={bar.bar} bar={bar} first={isInSight} />
          ))}
          {notes && <span className={styles.notes}>{notes}</span>}
        </span>
      </a>
    </li>
  );
}

/** The groove alone, as a card. */
export function TimeCard({ bars }: { readonly bars: readonly PackBar[] }) {
  const words = usePracticeWords().sheet;
  return (
    <a
      className={classes(styles.card, styles.time)}
      data-part="exercise"
      href={hrefOf({ at: 'stage', exercise: null })}
    >
      <span className={styles.name}>{words.timeOnly}</span>
      <span className="hidden-words">{words.openTime}</span>
      <span className={styles.tiles} aria-hidden="true">
        {bars.map((bar) => (
          <TilePicture key={bar.bar} bar={bar} first />
        ))}
      </span>
    </a>
  );
}
