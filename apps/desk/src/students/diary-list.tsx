/** The diary on a student's sheet: the last days at once, earlier ones folded away. */
import type { PracticeLog } from '@shedbook/core';
import { useMemo } from 'react';
import { useLanguage } from '../words/students-words.tsx';
import { type DiaryDay, type DiaryPiece, diaryOf } from './diary.ts';
import styles from './diary-list.module.css';
import type { DeskShelf } from './take-in.ts';
import { useTakeWords } from './take-words.ts';
import { useSentTakes } from './use-sent-takes.ts';

/** Days that are shown at once: the week between two lessons. */
const SHOWN = 7;

function usePieceWords(): (piece: DiaryPiece) => string {
  const { words } = useLanguage();
  return ({ exercise, isGroove, heardBy, rounds, clean, bpm }) => {
    const named = exercise ?? words.students.gone;
    const name = isGroove && exercise !== null ? `${named}, ${words.inbox.groove}` : named;
    if (bpm === null || rounds === 0) return words.diary.played({ exercise: name });
    return words.diary[heardBy]({ exercise: name, rounds, clean, bpm });
  };
}

function Day({ of: { day, minutes, pieces, takes } }: { readonly of: DiaryDay }) {
  const { words, tag } = useLanguage();
  const pieceWords = usePieceWords();
  const takeWords = useTakeWords();
  const isThisYear = day.startsWith(`${new Date().getFullYear()}-`);
  const date = new Date(`${day}T12:00:00Z`).toLocaleDateString(tag, {
    ...{ weekday: 'long', day: 'numeric', month: 'long', timeZone: 'UTC' },
    ...(isThisYear ? {} : { year: 'numeric' }),
  });
  return (
    <li>
      <h4>{words.diary.day({ day: date, minutes })}</h4>
      <ul>
        {pieces.map((piece, index) => (
          <li key={index}>{pieceWords(piece)}</li>
        ))}
        {takes.map(({ facts, answer }) => (
          <li key={facts.id}>
            {words.diary.sent({ what: takeWords(facts) })} {answer !== null && words.inbox.said({ answer })}
          </li>
        ))}
      </ul>
    </li>
  );
}

interface DiaryListProps {
  readonly student: string;
  readonly shelf: readonly DeskShelf[];
  readonly log: PracticeLog;
}

/** The list; nothing where nothing was played yet. */
export function DiaryList({ student, shelf, log }: DiaryListProps) {
  const words = useLanguage().words.diary;
  const { takes } = useSentTakes(student);
  const days = useMemo(() => diaryOf(shelf, log, takes), [shelf, log, takes]);
  if (days.length === 0) return null;
  const list = (some: readonly DiaryDay[]) => (
    <ol>
      {some.map((day) => (
        <Day key={day.day} of={day} />
      ))}
    </ol>
  );
  return (
    <section className={styles.diary} aria-label={words.title} data-part="diary">
      <h3>{words.title}</h3>
      {list(days.slice(0, SHOWN))}
      {days.length > SHOWN && (
        <details>
          <summary>{words.earlier({ n: days.length - SHOWN })}</summary>
          {list(days.slice(SHOWN))}
        </details>
      )}
    </section>
  );
}
