/** Today's list: what to play, for how long, and why. Nothing is counted up, and nothing is lost by a day without. */

import {
  isCoachSilent,
  meterOfItem,
  type PlanItem,
  planFor,
  progressOf,
  type ShelfLesson,
  USUAL_MINUTES,
} from '@shedbook/coach';
import type { Meter, PracticeLog } from '@shedbook/core';
import { Button, Check, momentNow, Select } from '@shedbook/stand';

import { say, tempoWords } from '@shedbook/words';
import { useMemo, useState } from 'react';
import { keepLesson, type OwnLessons, ownLessons } from '../kept/own-lessons.ts';
import { currentStudent, rememberedOwn, rememberOwn } from '../kept/students.ts';
import { useHearingCatalogue, useHearingWords } from '../page/hearing-words.ts';
import { goTo, hrefOf } from '../page/route.ts';
import { chooseHandsFree } from '../session/hearing-settings.ts';
import { nextOpen, placeOf, setRun } from '../session/plan-run.ts';
import { usePracticeSession } from '../session/practice-session.tsx';
import { usePacks, useShelf } from '../session/shelf.tsx';
import { lastWeek } from '../week/read-week.ts';
import { GoalLine } from './goal-line.tsx';
import { nameOf, sayPart } from './item-words.ts';
import styles from './today-view.module.css';

/** Minutes that can be chosen. */
const MINUTES = [10, 15, 20, 30, 45, 60] as const;

const KEY = 'plan.minutes';

function useMinutes() {
  const [minutes, set] = useState(() => {
    const kept = Number(rememberedOwn(KEY));
    return MINUTES.find((each) => each === kept) ?? USUAL_MINUTES;
  });
  const choose = (next: number) => {
    rememberOwn(KEY, String(next));
    set(next as (typeof MINUTES)[number]);
  };
  return [minutes, choose] as const;
}

interface ItemProps {
  readonly item: PlanItem;
  readonly name: string;
  readonly isDone: boolean;
  /** What its tempo is counted in. */
  readonly meter: Meter;
}

function Item({ item, name, isDone, meter }: ItemProps) {
  const { words: all, language } = useHearingCatalogue();
  const words = all.plan;
  const { choose, home } = usePracticeSession();
  const isBreak = item.kind === 'break';
  return (
    <li className={styles.item} data-part="plan-item" data-kind={item.kind} data-done={isDone || undefined}>
      <span className={styles.minutes} data-part="minutes">
        {words.short({ n: item.minutes })}
        {isDone && (
          <span className={styles.done}>
            <span aria-hidden="true">✓ </span>
            {words.done}
          </span>
        )}
      </span>
      <span className={styles.what}>
        {isBreak ? (
          <strong>{name}</strong>
        ) : (
          <a
            href={hrefOf(placeOf(item, home))}
            aria-label={words.open({ what: name })}
            onClick={() =>
              item.kind === 'warm-up' &&
              item.lesson === home &&
              item.tempo &&
              choose({ bpm: item.tempo.fromBpm })
            }
          >
            {name}
          </a>
        )}
        {item.tempo && (
          <span className={styles.tempo}>
            {' '}
            {tempoWords(words, meter, { fromBpm: item.tempo.fromBpm, toBpm: item.tempo.goalBpm })}
          </span>
        )}
        {item.part && <span className={styles.part}>{sayPart(item.part, words)}</span>}
        <span className={styles.reason}>{say(item.reason, language)}</span>
      </span>
    </li>
  );
}

/** Which of the student's lessons the list takes from; nothing where there is but one. */
function LessonsPick({
  shelf,
  own,
  onChange,
}: {
  readonly shelf: readonly ShelfLesson[];
  readonly own: OwnLessons;
  readonly onChange: (own: OwnLessons) => void;
}) {
  const words = useHearingWords().plan;
  if (shelf.length < 2) return null;
  return (
    <fieldset className={styles.lessons} data-part="lessons">
      <legend>{words.lessons}</legend>
      {shelf.map(({ id, lesson }) => (
        <Check key={id} checked={own[id] !== false} onChange={(isIn) => onChange(keepLesson(id, isIn))}>
          {lesson.title}
        </Check>
      ))}
    </fieldset>
  );
}

/** What the teacher set: in their order where it is known, else lesson by lesson. */
function useAssignments() {
  const packs = usePacks();
  return useMemo(() => {
    const all = packs.flatMap(({ id, assignments = [] }) =>
      assignments.map((each) => ({ ...each, lesson: id })),
    );
    return all.toSorted((a, b) => (a.place ?? 0) - (b.place ?? 0));
  }, [packs]);
}

/** The list. */
export function TodayView({ log }: { readonly log: PracticeLog }) {
  const { words: catalogue, language } = useHearingCatalogue();
  const words = catalogue.plan;
  const [minutes, choose] = useMinutes();
  const { player, home } = usePracticeSession();
  const all = useShelf();
  const [own, setOwn] = useState(ownLessons);
  const shelf = useMemo(() => all.filter(({ id }) => own[id] !== false), [all, own]);
  const set = useAssignments();
  const plan = useMemo(() => {
    const assignments = set.filter(({ lesson }) => own[lesson] !== false);
    const coach = lastWeek()?.coach;
    const now = momentNow();
    const isSilent = coach !== undefined && isCoachSilent(coach, now);
    return planFor(currentStudent(), { shelf, log, now, minutes, assignments, isSilent });
  }, [log, minutes, shelf, set, own]);
  const progress = progressOf(plan, log, shelf);
  const isBegun = progress.some(({ isDone }) => isDone);
  const next = nextOpen(plan, progress);
  const takeUp = () => {
    if (!next) return;
    // The press allows the browser to sound; the list then goes on by itself, by minutes rather than by clean rounds.
    void player.context().resume();
    chooseHandsFree(false);
    setRun({ plan, ...next });
    const item = plan.items[next.at];
    if (item) goTo(placeOf(item, home));
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
      <LessonsPick shelf={all} own={own} onChange={setOwn} />
      <GoalLine />
      <ol className={styles.items}>
        {plan.items.map((item, index) => (
          <Item
            key={index}
            item={item}
            name={nameOf(item, shelf, words)}
            isDone={progress[index]?.isDone ?? false}
            meter={meterOfItem(item, shelf)}
          />
        ))}
      </ol>
      {next && (
        <Button dress="strong" onClick={takeUp}>
          {isBegun ? words.goOn : words.takeUp}
        </Button>
      )}
      {!next && plan.items.length > 0 && <p role="status">{words.allDone}</p>}
      {plan.notes.map((note) => (
        <p key={note.fact} className="quiet">
          {say(note, language)}
        </p>
      ))}
    </section>
  );
}
