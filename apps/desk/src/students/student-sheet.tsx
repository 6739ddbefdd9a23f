/** One student: what holds, what slips and in which limb, what comes next, and what is set. */

import { momentOf, printPracticeLog, summariseStudent } from '@shedbook/coach';
import type { Lesson, PracticeLog } from '@shedbook/core';
import { LEVELS, type Level } from '@shedbook/judge';
import type { StoredStudent, StudentContent } from '@shedbook/routes';
import { Button, Choices } from '@shedbook/stand';
import { useMemo } from 'react';
import { Paper, ViewHead } from '../shared/paper.tsx';
import { sideOfLimb } from '../shared/sides-of.ts';
import { useLanguage, useSay, useWords } from '../words/words.tsx';
import { Assignments, assign } from './assignments.tsx';
import { BringIn } from './bring-in.tsx';
import { limbShares } from './by-limb.ts';
import { PlanList } from './plan-list.tsx';
import { StandingItem, StandingList } from './standing-list.tsx';
import styles from './student-sheet.module.css';
import { TakeHomePacks } from './take-home-packs.tsx';
import { type DeskShelf, readKeptLog } from './take-in.ts';

interface StudentSheetProps {
  readonly student: StoredStudent;
  readonly shelf: readonly DeskShelf[];
  /** A moment. */
  readonly now: string;
  readonly onChange: (change: (content: StudentContent) => StudentContent) => void;
  readonly onMakeLesson: () => void;
  readonly onRemove: () => void;
}

/** Days from today in the reader's words. */
function useDayWords(): (days: number) => string {
  const { tag } = useLanguage();
  const format = new Intl.RelativeTimeFormat(tag, { numeric: 'auto' });
  return (days) => format.format(days, 'day');
}

interface ByLimbProps {
  readonly shelf: readonly DeskShelf[];
  readonly log: PracticeLog;
  readonly setUp: Lesson['setUp'];
}

function ByLimb({ shelf, log, setUp }: ByLimbProps) {
  const words = useWords();
  const shares = useMemo(() => limbShares(shelf, log), [shelf, log]);
  if (shares.length === 0) return null;
  return (
    <section className={styles.byLimb} aria-label={words.students.byLimb}>
      <h3>{words.students.byLimb}</h3>
      <dl>
        {shares.map(({ limb, loops, clean, mostly }) => (
          <div key={limb}>
            <dt>{words.groove.sides[sideOfLimb(limb, setUp)][limb.endsWith('foot') ? 'foot' : 'hand']}</dt>
            <dd>
              {words.students.cleanLoops({ clean, loops })}
              {mostly && `; ${words.students.mostly[mostly]}`}
            </dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

/** The sheet. */
export function StudentSheet(props: StudentSheetProps) {
  const { student, shelf, now, onChange, onRemove } = props;
  const words = useWords();
  const say = useSay();
  const dayWords = useDayWords();
  const log = useMemo(() => readKeptLog(student.log), [student.log]);
  const { name, assignments } = student;
  const summary = useMemo(
    () => summariseStudent({ name, shelf, log, assignments }, now),
    [name, shelf, log, assignments, now],
  );
  const today = momentOf(now).day;
  const { next, lastDay } = summary;
  const keepLog = (change: (log: PracticeLog) => PracticeLog) =>
    onChange((content) => ({ ...content, log: printPracticeLog(change(readKeptLog(content.log))) }));
  return (
    <Paper className={styles.sheet}>
      <ViewHead
        isClose
        title={name}
        lead={
          lastDay === null
            ? words.students.nothingHeard
            : words.students.lastPlayed({ when: dayWords(lastDay - today), minutes: summary.minutesThisWeek })
        }
      />
      <BringIn shelf={shelf} level={student.level} onLog={keepLog} />
      <Choices<Level>
        label={words.students.level}
        value={student.level}
        choices={LEVELS.map((level) => [level, words.students.levels[level]])}
        onChange={(level) => onChange((content) => ({ ...content, level }))}
      />
      <StandingList title={words.students.slips} standings={summary.shaky} />
      <StandingList title={words.students.learning} standings={summary.learning} />
      <StandingList title={words.students.holds} standings={summary.firm} />
      <ByLimb shelf={shelf} log={log} setUp={shelf[0]?.lesson.setUp ?? 'right-handed'} />
      {next && (
        <section className={styles.nextUp} aria-label={words.students.next}>
          <h3>{words.students.next}</h3>
          <p>{say(next.why)}</p>
          <StandingItem standing={next.exercise} />
          <Button
            dress="strong"
            onClick={() => onChange((content) => assign(content, next.exercise.id, next.exercise.key))}
          >
            {words.students.setThis}
          </Button>
        </section>
      )}
      <Assignments
        shelf={shelf}
        assignments={assignments}
        onChange={onChange}
        onMakeLesson={props.onMakeLesson}
      />
      <TakeHomePacks student={student} shelf={shelf} />
      <PlanList id={student.id} shelf={shelf} log={log} assignments={assignments} now={now} />
      <Button onClick={onRemove}>{words.students.remove({ name })}</Button>
    </Paper>
  );
}
