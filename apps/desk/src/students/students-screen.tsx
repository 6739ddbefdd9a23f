/** The students: the roster on one side, the sheet of one of them on the other. */

import { momentOf } from '@shedbook/coach';
import { AskText, Button, Icon, momentFrom } from '@shedbook/stand';
import { useState } from 'react';
import { useFresh } from '../document/use-fresh.ts';
import { Guide } from '../shared/guide.tsx';
import { type Erased, ReceiptSheet } from '../shared/receipt.tsx';
import { go } from '../shared/route.ts';
import { NothingYet, ScreenHead } from '../shared/screen-head.tsx';
import { waitingName } from '../takes/dropped.ts';
import { StudentsWordsProvider, useWords } from '../words/students-words.tsx';
import { readSession } from './api.ts';
import { Inbox } from './inbox.tsx';
import { KeepSafe } from './keep-safe.tsx';
import { Passkeys } from './passkeys.tsx';
import { RosterList } from './roster-list.tsx';
import { StudentSheet } from './student-sheet.tsx';
import styles from './students-screen.module.css';
import { TeachersList } from './teachers-list.tsx';
import { useRoster } from './use-roster.ts';

function Students() {
  const words = useWords();
  const [erased, setErased] = useState<Erased | null>(null);
  const roster = useRoster(setErased);
  const [now] = useState(() => momentFrom(new Date()));
  const [adding, setAdding] = useState(false);
  const { value: session } = useFresh(readSession);
  const isHead = session?.school?.teacher?.role === 'head';
  const { view, find, chosen, choose } = roster.part;
  const today = momentOf(now).day;
  const file = waitingName();
  const isNobody = view?.of === 0 && find === '';
  return (
    <>
      <ScreenHead title={words.desk.students} lead={words.students.lead}>
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
      <main className={styles.students} aria-label={words.desk.students}>
        {isNobody && (
          <NothingYet>{file === null ? words.students.empty : words.takes.whose({ file })}</NothingYet>
        )}
        {view && !isNobody && (
          <>
            <Inbox today={today} onChoose={choose} />
            <RosterList part={roster.part} today={today} />
            {chosen && (
              <StudentSheet
                key={chosen.id}
                student={chosen}
                shelf={roster.shelf}
                now={now}
                onChange={(change) => void roster.change(chosen, change)}
                onPut={roster.part.put}
                onMakeLesson={() => void roster.makeLesson(chosen)}
                onTakeIn={(log, reports) => roster.takeIn(chosen, log, reports)}
                onTakeOut={(takenAt, entries) => void roster.takeOut(chosen, takenAt, entries)}
                onNoteMinority={(minority, said) => void roster.noteMinority(chosen, minority, said)}
                onSetCoach={(setting) => void roster.setCoach(chosen, setting)}
                onRemove={() => void roster.remove(chosen)}
                onErase={() => void roster.erase(chosen)}
              />
            )}
            <KeepSafe />
          </>
        )}
        {session?.state === 'in' && session.hasPasskeys !== undefined && <Passkeys />}
        {isHead && <TeachersList you={session?.school?.teacher?.id ?? ''} onHandOver={roster.part.refresh} />}
      </main>
      {erased && <ReceiptSheet erased={erased} onClose={() => setErased(null)} />}
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

/** The screen. */
export function StudentsScreen() {
  return (
    <StudentsWordsProvider>
      <Students />
    </StudentsWordsProvider>
  );
}
