/** Who practises on this device, and adding somebody. */
import { Button, Choices, closeSheet, Field, Problem, SheetButton } from '@shedbook/stand';
import { type FormEvent, useState } from 'react';
import { deleteDatabase } from '../kept/database.ts';
import {
  addStudent,
  currentStudent,
  forgetStudent,
  letPractise,
  nameStudent,
  ownSettings,
  type Student,
  students,
} from '../kept/students.ts';
import { usePracticeWords } from '../page/words.tsx';
import styles from './students-pick.module.css';

function NameForm({ label, first, onName }: NameFormProps) {
  const words = usePracticeWords().student;
  const [name, setName] = useState(first);
  const keep = (event: FormEvent) => {
    event.preventDefault();
    if (name.trim() === '') return;
    onName(name.trim());
    closeSheet(event);
  };
  return (
    <form className={styles.form} onSubmit={keep}>
      <Field label={label} value={name} maxLength={40} onChange={(event) => setName(event.target.value)} />
      <Button type="submit">{words.keep}</Button>
    </form>
  );
}

interface NameFormProps {
  readonly label: string;
  readonly first: string;
  readonly onName: (name: string) => void;
}

/** Takes the student who practises now, and everything of theirs, off the device. */
async function takeOff({ id }: Student): Promise<void> {
  for (const name of Object.keys(ownSettings())) localStorage.removeItem(`shedbook.${name} ${id}`);
  forgetStudent(id);
  await deleteDatabase(id).catch(() => undefined);
  letPractise('');
}

function TakeOff({ student }: { readonly student: Student }) {
  const words = usePracticeWords().student;
  return (
    <details>
      <summary>{words.takeOff({ name: student.name })}</summary>
      <Problem>{words.takeOffLead({ name: student.name })}</Problem>
      <Button onClick={() => void takeOff(student)}>{words.takeOffNow}</Button>
    </details>
  );
}

/** The choice, and a sheet to name and add. */
export function StudentsPick() {
  const words = usePracticeWords();
  const [all, setAll] = useState(students);
  const id = currentStudent();
  const now = all.find((each) => each.id === id);
  const sayName = ({ name }: Student) => name || words.student.first;
  return (
    <div className={styles.students} data-part="students">
      {all.length > 1 && (
        <Choices
          label={words.student.who}
          value={id}
          choices={all.map((each) => [each.id, sayName(each)] as const)}
          onChange={letPractise}
        />
      )}
      <SheetButton title={words.student.title} opens={words.student.title} done={words.setting.done}>
        <div className={styles.form}>
          <p>{words.student.lead}</p>
          <NameForm
            label={words.student.own}
            first={now?.name ?? ''}
            onName={(name) => {
              nameStudent(id, name);
              setAll(students());
            }}
          />
          <NameForm label={words.student.add} first="" onName={(name) => letPractise(addStudent(name))} />
          {now && id !== '' && <TakeOff student={now} />}
        </div>
      </SheetButton>
    </div>
  );
}
