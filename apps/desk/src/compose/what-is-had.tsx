/** What the student has of the exercises before a goal: those that stand before it, none, or what a student is known to play. */
import type { StoredStudent } from '@shedbook/routes';
import { Choices, Field, Select, useSay as useNotice } from '@shedbook/stand';
import { useEffect, useState } from 'react';
import { wordsFor } from '../document/error-words.ts';
import { listStudents } from '../students/api.ts';
import { masteredBy } from '../students/mastered.ts';
import type { DeskShelf } from '../students/take-in.ts';
import { useWords } from '../words/words.tsx';

/** What the page that leads to a goal is told of. */
export type Has = 'nothing' | 'before' | 'student';

/** Who is on the roster, as far as they are in view, and whether there are more. */
interface Known {
  readonly students: readonly StoredStudent[];
  readonly isMore: boolean;
}

/** What a student plays of a lesson. */
interface Played {
  readonly student: string;
  readonly numbers: readonly number[];
}

function useKnown(find: string): Known {
  const notice = useNotice();
  const words = useWords();
  const [known, setKnown] = useState<Known>({ students: [], isMore: false });
  useEffect(() => {
    let isWanted = true;
    listStudents(find, null).then(
      ({ students, next }) => isWanted && setKnown({ students, isMore: next !== null }),
      (error: unknown) => isWanted && notice(wordsFor(error, words)),
    );
    return () => {
      isWanted = false;
    };
  }, [find, notice, words]);
  return known;
}

interface StudentChoiceProps {
  readonly shelf: DeskShelf;
  readonly onHas: (numbers: readonly number[] | null) => void;
}

/** Whom the page is for; what they play at the goal is looked up and said. */
function StudentChoice({ shelf, onHas }: StudentChoiceProps) {
  const notice = useNotice();
  const words = useWords();
  const [find, setFind] = useState('');
  const { students, isMore } = useKnown(find);
  const [wanted, setWanted] = useState('');
  const student = students.find(({ id }) => id === wanted) ?? students[0];
  const [played, setPlayed] = useState<Played | null>(null);
  const { id, lesson } = shelf;
  useEffect(() => {
    if (!student) return undefined;
    let isWanted = true;
    onHas(null);
    masteredBy(student, { id, lesson }).then(
      (numbers) => {
        if (!isWanted) return;
        setPlayed({ student: student.id, numbers });
        onHas(numbers);
      },
      (error: unknown) => isWanted && notice(wordsFor(error, words)),
    );
    return () => {
      isWanted = false;
    };
  }, [student, id, lesson, onHas, notice, words]);
  const said = words.compose;
  const isKnown = student !== undefined && played?.student === student.id;
  return (
    <>
      {(isMore || find !== '') && (
        <Field label={said.findStudent} value={find} onChange={({ target }) => setFind(target.value)} />
      )}
      <Select
        label={said.student}
        value={student?.id ?? ''}
        onChange={({ target }) => setWanted(target.value)}
      >
        {students.map((each) => (
          <option key={each.id} value={each.id}>
            {each.name}
          </option>
        ))}
      </Select>
      <p role="status">
        {students.length === 0 && said.noStudent}
        {isKnown && said.plays({ n: played.numbers.length, of: lesson.exercises.length })}
      </p>
    </>
  );
}

interface WhatIsHadProps extends StudentChoiceProps {
  readonly has: Has;
  readonly onChange: (has: Has) => void;
}

/** The choice. */
export function WhatIsHad({ has, onChange, shelf, onHas }: WhatIsHadProps) {
  const said = useWords().compose;
  return (
    <>
      <Choices
        label={said.has}
        value={has}
        choices={[
          ['before', said.hasBefore],
          ['nothing', said.hasNothing],
          ['student', said.hasStudent],
        ]}
        onChange={onChange}
      />
      {has === 'student' && <StudentChoice shelf={shelf} onHas={onHas} />}
    </>
  );
}
