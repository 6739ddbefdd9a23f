/** The teacher's own playing under a film: which files, what was heard of them, and how they are shown. */
import { exerciseLabel, type Lesson } from '@shedbook/core';
import type { FilmWish } from '@shedbook/routes';
import { Button, Choices, FileButton, Icon, Select } from '@shedbook/stand';
import { durationWords } from '@shedbook/words';
import { type ReactNode, useState } from 'react';
import { useWords } from '../words/words.tsx';
import styles from './performances.module.css';
import { heardOf, type SentPerformance, type usePerformances } from './use-performances.ts';

/** How performances are shown. */
export type Over = Omit<NonNullable<FilmWish['over']>, 'performances'>;

/** As they are shown where nobody chose otherwise. */
export const USUAL_OVER: Over = { picture: null, heard: 'teacher', speeds: [1] };

/** Kinds of file that telephones and recorders make. */
const KINDS = ['video/*', 'audio/*', '.mov', '.mp4', '.m4a', '.wav', '.flac', '.mp3'];

function State({ sent: { state } }: { readonly sent: SentPerformance }) {
  const words = useWords();
  const { films } = words;
  switch (state.at) {
    case 'sending':
      return films.sending({ percent: Math.floor(100 * state.share) });
    case 'hearing':
      return films.hearing;
    case 'refused':
      return state.why;
    default: {
      const duration = durationWords(words.durations, state.heard.seconds);
      return films.heard({ duration, faults: state.heard.faults });
    }
  }
}

interface RowsProps {
  readonly all: readonly SentPerformance[];
  readonly onRemove: (key: number) => void;
  /** What else can be done with one that was heard. */
  readonly doWith?: ((sent: SentPerformance) => ReactNode) | undefined;
}

function Rows({ all, onRemove, doWith }: RowsProps) {
  const words = useWords().films;
  const { shown } = heardOf(all);
  const isOneOfSeveral = ({ exercise }: SentPerformance) =>
    all.filter((each) => each.exercise === exercise).length > 1;
  return (
    <ul className={styles.rows}>
      {all.map((each) => (
        <li key={each.key} data-part="performance" data-at={each.state.at}>
          <span>
            <strong>{words.playedIn({ n: each.exercise, file: each.name })}</strong> <State sent={each} />
            {isOneOfSeveral(each) && shown.has(each.key) && ` ${words.isShown}`}
          </span>
          {each.state.at === 'heard' && doWith?.(each)}
          <Button
            dress="bare"
            aria-label={words.takeOut({ file: each.name })}
            onClick={() => onRemove(each.key)}
          >
            <Icon name="close" />
          </Button>
        </li>
      ))}
    </ul>
  );
}

interface MannerProps {
  readonly over: Over;
  readonly hasPicture: boolean;
  readonly ask: (change: Partial<Over>) => void;
}

/** How they are shown and heard. */
export function Manner({ over, hasPicture, ask }: MannerProps) {
  const words = useWords().films;
  type Picture = NonNullable<Over['picture']>;
  const speeds = over.speeds.join(',');
  return (
    <>
      {hasPicture && (
        <Choices<Picture | 'usual'>
          label={words.picturePlace}
          value={over.picture ?? 'usual'}
          choices={(['usual', 'beside', 'above', 'corner', 'none'] as const).map((each) => [
            each,
            words.places[each],
          ])}
          onChange={(picture) => ask({ picture: picture === 'usual' ? null : picture })}
        />
      )}
      <Choices<Over['heard']>
        label={words.heardFrom}
        value={over.heard}
        choices={(['teacher', 'both', 'model'] as const).map((each) => [each, words.sounds[each]])}
        onChange={(heard) => ask({ heard })}
      />
      <Choices<keyof typeof words.speeds>
        label={words.speed}
        value={speeds === '1' ? 'full' : speeds === '0.5' ? 'half' : 'both'}
        choices={(['full', 'half', 'both'] as const).map((each) => [each, words.speeds[each]])}
        onChange={(each) => ask({ speeds: { full: [1], half: [0.5], both: [1, 0.5] }[each] })}
      />
    </>
  );
}

interface PerformancesProps {
  /** What they are for. */
  readonly title: string;
  readonly hint: string;
  readonly lesson: Lesson;
  /** Numbers of the exercises of the film. */
  readonly exercises: readonly number[];
  /** The form that is played. */
  readonly form: string | null;
  readonly performances: ReturnType<typeof usePerformances>;
  /** What else can be done with one that was heard. */
  readonly doWith?: (sent: SentPerformance) => ReactNode;
  readonly children?: ReactNode;
}

/** Files of somebody's playing, to be added and taken out again. */
export function Performances(props: PerformancesProps) {
  const { title, hint, lesson, exercises, form, performances, children } = props;
  const words = useWords();
  const [chosen, choose] = useState<number | null>(null);
  const { all, add, remove } = performances;
  const exercise = chosen !== null && exercises.includes(chosen) ? chosen : exercises[0];
  const nameOf = (number: number) => lesson.exercises.find((each) => each.number === number)?.name ?? '';
  return (
    <details className={styles.fold} data-part="performances">
      <summary>{title}</summary>
      <div className={styles.body}>
        <p className="quiet">{hint}</p>
        <div className={styles.add}>
          <Select
            label={words.films.whichPlayed}
            value={exercise ?? ''}
            onChange={({ target }) => choose(Number(target.value))}
          >
            {exercises.map((number) => (
              <option key={number} value={number}>
                {`${exerciseLabel(number)} ${nameOf(number)}`.trim()}
              </option>
            ))}
          </Select>
          <FileButton
            accept={KINDS}
            disabled={exercise === undefined}
            onFile={(file) => exercise !== undefined && add(file, { exercise, form })}
          >
            <Icon name="plus" />
            {words.films.add}
          </FileButton>
        </div>
        <div role="status">
          <Rows all={all} onRemove={remove} doWith={props.doWith} />
        </div>
        {children}
      </div>
    </details>
  );
}
