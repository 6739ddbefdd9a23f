/** Today's list: what to play, for how long, and why. Nothing is counted up, and nothing is lost by a day without. */

import { type PlanItem, planPractice, type ShelfLesson } from '@shedbook/coach';
import type { PracticeLog } from '@shedbook/core';
import { Button, momentNow, remember, remembered, Select } from '@shedbook/stand';
import { type HearingWords, say, tempoWords } from '@shedbook/words';
import { useMemo, useState } from 'react';
import { exerciseName } from '../page/exercise-name.ts';
import { useHearingCatalogue } from '../page/hearing-words.ts';
import { goTo, hrefOf } from '../page/route.ts';
import { takeUpList } from '../session/course.ts';
import { chooseHandsFree } from '../session/hearing-settings.ts';
import { usePracticeSession } from '../session/practice-session.tsx';
import styles from './today-view.module.css';

/** Minutes that can be chosen. */
const MINUTES = [10, 15, 20, 30, 45, 60] as const;

const KEY = 'plan.minutes';

function useMinutes() {
  const [minutes, set] = useState(() => {
    const kept = Number(remembered(KEY));
    return MINUTES.find((each) => each === kept) ?? 20;
  });
  const choose = (next: number) => {
    remember(KEY, String(next));
    set(next as (typeof MINUTES)[number]);
  };
  return [minutes, choose] as const;
}

/** What an item is called. */
function nameOf(item: PlanItem, shelf: readonly ShelfLesson[], words: HearingWords['plan']): string {
  if (item.kind === 'break') return words.rest;
  const lesson = shelf.find((each) => each.id === item.lesson)?.lesson;
  const exercise = lesson?.exercises.find((each) => each.number === item.number);
  return exerciseName({ number: item.number, name: exercise?.name ?? null }, words);
}

interface ItemProps {
  readonly item: PlanItem;
  readonly name: string;
}

function Item({ item, name }: ItemProps) {
  const { words: all, language } = useHearingCatalogue();
  const words = all.plan;
  const { choose } = usePracticeSession();
  const isBreak = item.kind === 'break';
  return (
    <li className={styles.item} data-part="plan-item" data-kind={item.kind}>
      <span className={styles.minutes} data-part="minutes">
        {words.short({ n: item.minutes })}
      </span>
      <span className={styles.what}>
        {isBreak ? (
          <strong>{name}</strong>
        ) : (
          <a
            href={hrefOf({ at: 'stage', exercise: item.number })}
            aria-label={words.open({ what: name })}
            onClick={() => item.kind === 'warm-up' && item.tempo && choose({ bpm: item.tempo.fromBpm })}
          >
            {name}
          </a>
        )}
        {item.tempo && (
          <span className={styles.tempo}> {tempoWords(words, item.tempo.fromBpm, item.tempo.goalBpm)}</span>
        )}
        <span className={styles.reason}>{say(item.reason, language)}</span>
      </span>
    </li>
  );
}

interface TodayProps {
  readonly log: PracticeLog;
  readonly shelf: readonly ShelfLesson[];
}

/** The list. */
export function TodayView({ log, shelf }: TodayProps) {
  const { words: all, language } = useHearingCatalogue();
  const words = all.plan;
  const [minutes, choose] = useMinutes();
  const plan = useMemo(
    () => planPractice({ shelf, log, now: momentNow(), minutes, assignments: [], seed: shelf[0]?.id ?? '' }),
    [log, minutes, shelf[0]?.lesson],
  );
  const numbers = plan.items.flatMap((item) => item.number ?? []);
  const takeUp = () => {
    takeUpList(numbers);
    chooseHandsFree();
    goTo({ at: 'stage', exercise: numbers[0] ?? null });
  };
  return (
    <section className={styles.today} aria-labelledby="today-title">
      <div className={styles.head}>
        <h2 id="today-title">{words.title}</h2>
        <Select
          label={words.minutes}
          value={minutes}
          onChange={(event) => choose(Number(event.target.value))}
        >
          {MINUTES.map((each) => (
            <option key={each} value={each}>
              {words.minutesOf({ n: each })}
            </option>
          ))}
        </Select>
      </div>
      <ol className={styles.items}>
        {plan.items.map((item, index) => (
          <Item key={index} item={item} name={nameOf(item, shelf, words)} />
        ))}
      </ol>
      {numbers.length > 0 && <Button onClick={takeUp}>{words.takeUp}</Button>}
      {plan.notes.map((note) => (
        <p key={note.fact} className="quiet">
          {say(note, language)}
        </p>
      ))}
    </section>
  );
}
