/** The students: the roster on one side, the sheet of one of them on the other. */

import { momentOf } from '@shedbook/coach';
import type { StoredStudent } from '@shedbook/routes';
import { AskText, Button, Icon, momentFrom } from '@shedbook/stand';
import { useState } from 'react';
import { Guide } from '../shared/guide.tsx';
import { go } from '../shared/route.ts';
import { NothingYet, ScreenHead } from '../shared/screen-head.tsx';
import { waitingName } from '../takes/dropped.ts';
import { useWords } from '../words/words.tsx';
import { daysAway } from './days-away.ts';
import { Inbox } from './inbox.tsx';
import { KeepSafe } from './keep-safe.tsx';
import { StudentSheet } from './student-sheet.tsx';
import styles from './students-screen.module.css';
import { useRoster } from './use-roster.ts';

interface RosterListProps {
  readonly students: readonly StoredStudent[];
  readonly chosen: string | undefined;
  readonly today: number;
  readonly onChoose: (id: string) => void;
}

function RosterList({ students, chosen, today, onChoose }: RosterListProps) {
  const words = useWords().students;
  return (
    <nav className={styles.roster} aria-label={words.roster}>
      <ul>
        {students.map((student) => {
          const away = daysAway(student, today);
          return (
            <li key={student.id}>
              <button
                type="button"
                aria-current={student.id === chosen ? 'true' : undefined}
                onClick={() => onChoose(student.id)}
              >
                <strong>{student.name}</strong>
                <span>{away === null ? words.nothingHeard : words.daysAway({ days: away })}</span>
              </button>
            </li>
          );
        })}
      </ul>
    </nav>
  );
}

/** The screen. */
export function StudentsScreen() {
  const words = useWords();
  const roster = useRoster();
  const [now] = useState(() => momentFrom(new Date()));
  const [id, setId] = useState<string | null>(null);
  const [adding, setAdding] = useState(false);
  const students = roster.students ?? [];
  const file = waitingName();
  const chosen = students.find((each) => each.id === id) ?? students[0];
  return (
    <>
      <ScreenHead title={words.students.title} lead={words.students.lead}>
        <Button onClick={() => go({ at: 'desk' })}>
          <Icon name="back" />
          {words.lesson.backToDesk}
        </Button>
        <Button dress="strong" onClick={() => setAdding(true)}>
          <Icon name="plus" />
          {words.students.add}
        </Button>
      </ScreenHead>
      <Guide at="hand out" className={styles.guide} />
      <main className={styles.students} aria-label={words.students.title}>
        {roster.students?.length === 0 && (
          <NothingYet>{file === null ? words.students.empty : words.takes.whose({ file })}</NothingYet>
        )}
        {chosen && (
          <>
            <Inbox students={students} today={momentOf(now).day} onChoose={setId} />
            <RosterList students={students} chosen={chosen.id} today={momentOf(now).day} onChoose={setId} />
            <StudentSheet
              key={chosen.id}
              student={chosen}
              shelf={roster.shelf}
              now={now}
              onChange={(change) => void roster.change(chosen, change)}
              onMakeLesson={() => void roster.makeLesson(chosen)}
              onTakeIn={(log, reports) => roster.takeIn(chosen, log, reports)}
              onTakeOut={(takenAt, entries) => void roster.takeOut(chosen, takenAt, entries)}
              onNoteMinority={(minority, said) => void roster.noteMinority(chosen, minority, said)}
              onRemove={() => void roster.remove(chosen)}
              onErase={() => void roster.erase(chosen)}
            />
            <KeepSafe />
          </>
        )}
      </main>
      {adding && (
        <AskText
          title={words.students.add}
          label={words.students.name}
          initial=""
          done={words.heading.close}
          onAnswer={(name) => void roster.add(name)}
          onClose={() => setAdding(false)}
        />
      )}
    </>
  );
}
