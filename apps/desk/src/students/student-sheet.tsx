/** One student: what holds, what slips and in which limb, what comes next, and what is set. */

import { isCoachSilent, momentOf, summariseStudent } from '@shedbook/coach';
import { inSetUp, type Lesson, type PracticeLog, SET_UPS, type SetUp } from '@shedbook/core';
import { LEVELS, type Level } from '@shedbook/judge';
import type { CoachSetting, MinorityRequest, StoredStudent, StudentContent } from '@shedbook/routes';
import { Button, Choices, Problem } from '@shedbook/stand';
import { useMemo, useState } from 'react';
import { offer } from '../shared/offer.ts';
import { Paper, ViewHead } from '../shared/paper.tsx';
import { ReallyErase } from '../shared/really-erase.tsx';
import { sideOfLimb } from '../shared/sides-of.ts';
import { useLanguage, useWords } from '../words/students-words.tsx';
import { Assignments } from './assignments.tsx';
import { BringIn } from './bring-in.tsx';
import { BroughtIn } from './brought-in.tsx';
import { limbShares } from './by-limb.ts';
import { ClimbedList } from './climbed-list.tsx';
import { CoachSwitch } from './coach-switch.tsx';
import { Consent } from './consent.tsx';
import { DiaryList } from './diary-list.tsx';
import { HeardTakes } from './heard-takes.tsx';
import { HourBook } from './hour-book.tsx';
import { PracticeTable } from './keep-safe.tsx';
import { asideText, type KeptLog, type KeptReport } from './kept-log.ts';
import { NextLesson } from './next-lesson.tsx';
import type { DeskText } from './own-lesson.ts';
import { PlanList } from './plan-list.tsx';
import { PrivateLinks } from './private-links.tsx';
import { ProgressPage } from './progress-page.tsx';
import { SentTakesList } from './sent-takes-list.tsx';
import { StandingList } from './standing-list.tsx';
import styles from './student-sheet.module.css';
import { TakeHomePacks } from './take-home-packs.tsx';
import type { DeskShelf } from './take-in.ts';
import { nextDayOf, useHours } from './use-hours.ts';
import { usePass } from './use-pass.ts';
import { type StudentLog, useStudentLog } from './use-student-log.ts';

interface StudentSheetProps {
  readonly student: StoredStudent;
  readonly shelf: readonly DeskText[];
  /** A moment. */
  readonly now: string;
  readonly onChange: (change: (content: StudentContent) => StudentContent) => void;
  /** Shows what became of the student. */
  readonly onPut: (student: StoredStudent) => void;
  readonly onMakeLesson: () => void;
  /** Adds to the practice, with reports of recordings; @returns whether it is kept */
  readonly onTakeIn: (log: PracticeLog, reports?: readonly KeptReport[]) => Promise<boolean>;
  /** Takes out of the practice what was brought in at a time. */
  readonly onTakeOut: (takenAt: string, entries: number) => void;
  /** Keeps whether a guardian decides about recordings, and says so. */
  readonly onNoteMinority: (minority: MinorityRequest, said: string) => void;
  readonly onSetCoach: (setting: CoachSetting) => void;
  readonly onRemove: () => void;
  readonly onErase: () => void;
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

/** What was taken in and cannot be read: it is told and can be had, and it stays. */
function SetAside({ kept, name }: { readonly kept: KeptLog; readonly name: string }) {
  const words = useWords().students;
  const { aside } = kept;
  if (aside.length === 0) return null;
  const save = () => offer(new Blob([asideText(aside)], { type: 'application/json' }), `${name}.json`);
  return (
    <div data-part="set-aside">
      <Problem>{words.setAside({ n: aside.length })}</Problem>
      <Button onClick={save}>{words.saveAside}</Button>
    </div>
  );
}

/** Takes a student off the roster, or erases them, which is asked once more. */
function Leaving({
  name,
  onRemove,
  onErase,
}: { readonly name: string } & Pick<StudentSheetProps, 'onRemove' | 'onErase'>) {
  const words = useWords().students;
  const [isAsking, setAsking] = useState(false);
  return (
    <>
      <Button onClick={onRemove}>{words.remove({ name })}</Button>
      <Button onClick={() => setAsking(true)}>{words.erase({ name })}</Button>
      {isAsking && (
        <ReallyErase
          title={words.erase({ name })}
          warning={words.eraseWarning}
          keep={words.keep}
          erase={words.erase({ name })}
          onErase={onErase}
          onClose={() => setAsking(false)}
        />
      )}
    </>
  );
}

/** The sheet. */
export function StudentSheet(props: StudentSheetProps) {
  const words = useWords().students;
  const kept = useStudentLog(props.student);
  if (kept) return <ReadSheet {...props} kept={kept} />;
  return (
    <Paper className={styles.sheet}>
      <ViewHead isClose title={props.student.name} lead={words.reading} />
    </Paper>
  );
}

function ReadSheet(props: StudentSheetProps & { readonly kept: StudentLog }) {
  const { student, now, kept, onChange } = props;
  const { setUp } = student;
  const shelf = useMemo(
    () => props.shelf.map((each) => ({ ...each, lesson: inSetUp(each.lesson, setUp) })),
    [props.shelf, setUp],
  );
  const words = useWords();
  const dayWords = useDayWords();
  const { log } = kept;
  const { name, assignments } = student;
  const isSilent = isCoachSilent(student.coach, now);
  const file = useMemo(
    () => ({ name, shelf, log, assignments, isSilent }),
    [name, shelf, log, assignments, isSilent],
  );
  const summary = useMemo(() => summariseStudent(file, now), [file, now]);
  const hours = useHours(student.id, props.onPut);
  const day = now.slice(0, 10);
  const pass = usePass(props.onTakeIn);
  const today = momentOf(now).day;
  const { lastDay } = summary;
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
      <SentTakesList student={student.id} {...{ shelf, pass }} level={student.level} />
      <NextLesson
        key={student.revision}
        student={file}
        now={now}
        nextDay={nextDayOf(hours, day)}
        onSet={(set) => void hours.set(student, day, set)}
      />
      <Assignments
        shelf={shelf}
        assignments={assignments}
        onChange={onChange}
        onMakeLesson={props.onMakeLesson}
      />
      <HourBook name={name} hours={hours} shelf={shelf} today={day} />
      <DiaryList student={student.id} {...{ shelf, log }} />
      <BringIn shelf={shelf} student={student} known={log} onLog={props.onTakeIn} />
      <HeardTakes reports={kept.reports} {...{ log, shelf }} level={student.level} />
      <SetAside kept={kept} name={name} />
      <BroughtIn takings={kept.takings} onTakeOut={props.onTakeOut} />
      <Choices<Level>
        label={words.students.level}
        value={student.level}
        choices={LEVELS.map((level) => [level, words.levels[level]])}
        onChange={(level) => onChange((content) => ({ ...content, level }))}
      />
      <Choices<SetUp | 'written'>
        label={words.students.setUp}
        value={setUp ?? 'written'}
        choices={[
          ['written', words.students.setUpAsWritten],
          ...SET_UPS.map((each) => [each, words.students.setUps[each]] as const),
        ]}
        onChange={(next) => onChange((content) => ({ ...content, setUp: next === 'written' ? null : next }))}
      />
      <CoachSwitch student={student} now={now} onSet={props.onSetCoach} />
      <StandingList title={words.students.slips} standings={summary.shaky} pass={pass} />
      <StandingList title={words.students.learning} standings={summary.learning} pass={pass} />
      <StandingList title={words.students.holds} standings={summary.firm} />
      <ByLimb shelf={shelf} log={log} setUp={setUp ?? shelf[0]?.lesson.setUp ?? 'right-handed'} />
      <ClimbedList shelf={shelf} log={log} />
      <Consent student={student} onNote={props.onNoteMinority} />
      <PrivateLinks student={student} />
      <TakeHomePacks student={student} shelf={shelf} />
      <PlanList id={student.id} {...{ shelf, log, assignments, now, isSilent }} />
      <ProgressPage student={student} now={now} paper={shelf[0]?.lesson.sheet.paper ?? 'A4'} />
      <div>
        <PracticeTable student={student} />
      </div>
      <Leaving name={name} onRemove={props.onRemove} onErase={props.onErase} />
    </Paper>
  );
}
