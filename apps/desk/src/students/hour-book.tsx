/** The lesson book of a student: what was done in each dated lesson, what was set, and the teacher's own notes. */
import { ATTENDANCES, type Attendance, type StoredHour } from '@shedbook/routes';
import { Button, Choices, Field, Icon, Problem } from '@shedbook/stand';
import { useState } from 'react';
import { KeptField } from '../shared/kept-field.tsx';
import { useWords } from '../words/students-words.tsx';
import { useAimWords } from './aim-words.ts';
import styles from './hour-book.module.css';
import type { DeskShelf } from './take-in.ts';
import { useDayName } from './use-day-name.ts';
import type { Hours } from './use-hours.ts';

/** Lessons that are shown at once; earlier ones are folded away. */
const SHOWN = 2;

interface HourBookProps {
  readonly name: string;
  readonly hours: Hours;
  readonly shelf: readonly DeskShelf[];
  /** The teacher's own day, ISO 8601 without a time. */
  readonly today: string;
}

type HourSheetProps = Omit<HourBookProps, 'today'> & { readonly hour: StoredHour };

/** One lesson. */
function HourSheet({ hour, name, hours, shelf }: HourSheetProps) {
  const words = useWords().hours;
  const aimWords = useAimWords(shelf);
  const day = useDayName(true)(hour.day);
  const write = (change: Parameters<Hours['write']>[1]) => void hours.write(hour.day, change);
  return (
    <li className={styles.hour} data-part="hour">
      <h4>{words.of({ day })}</h4>
      <Choices<Attendance>
        label={words.attendance({ name })}
        value={hour.attendance}
        choices={ATTENDANCES.map((each) => [each, words.attendances[each]])}
        onChange={(attendance) => write({ attendance })}
      />
      <KeptField isLong label={words.done} value={hour.done} onKeep={(done) => write({ done })} />
      <KeptField isLong label={words.notes} value={hour.notes} onKeep={(notes) => write({ notes })} />
      {hour.set.length > 0 && (
        <div>
          <h5>{words.set}</h5>
          <ul>
            {hour.set.map((each) => (
              <li key={`${each.lesson} ${each.exercise}`}>{aimWords(each)}</li>
            ))}
          </ul>
        </div>
      )}
      <Button dress="bare" onClick={() => void hours.erase(hour)}>
        {words.erase({ day })}
      </Button>
    </li>
  );
}

/** A new lesson, by its day. */
function WriteOn({ hours, today }: Pick<HourBookProps, 'hours' | 'today'>) {
  const words = useWords().hours;
  const [day, setDay] = useState(today);
  const isThere = hours.list?.hours.some((each) => each.day === day);
  return (
    <form
      className={styles.write}
      onSubmit={(event) => {
        event.preventDefault();
        if (day !== '' && !isThere) void hours.write(day, day > today ? {} : { attendance: 'came' });
      }}
    >
      <Field
        label={words.writeOn}
        type="date"
        value={day}
        required
        onChange={(event) => setDay(event.target.value)}
      />
      <Button type="submit" disabled={day === '' || isThere}>
        <Icon name="plus" />
        {words.write}
      </Button>
    </form>
  );
}

/** The book. */
export function HourBook({ name, hours, shelf, today }: HourBookProps) {
  const words = useWords().hours;
  const dayName = useDayName(true);
  const { hours: all = [], damaged = [] } = hours.list ?? {};
  const sheets = (some: readonly StoredHour[]) => (
    <ol>
      {some.map((hour) => (
        <HourSheet key={hour.day} {...{ hour, name, hours, shelf }} />
      ))}
    </ol>
  );
  return (
    <section className={styles.book} aria-label={words.title} data-part="hours">
      <h3>{words.title}</h3>
      {damaged.map((day) => (
        <Problem key={day}>{words.damaged({ day: dayName(day) })}</Problem>
      ))}
      <WriteOn hours={hours} today={today} />
      {all.length > 0 && sheets(all.slice(0, SHOWN))}
      {all.length > SHOWN && (
        <details>
          <summary>{words.earlier({ n: all.length - SHOWN })}</summary>
          {sheets(all.slice(SHOWN))}
        </details>
      )}
    </section>
  );
}
