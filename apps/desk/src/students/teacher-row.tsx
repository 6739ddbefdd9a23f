/** One teacher in the head's list, and whose students are theirs. */
import { FIRST_TEACHER, type ListedTeacher, ROLES, type SchoolStudent } from '@shedbook/routes';
import { Button } from '@shedbook/stand';
import type { SchoolWords } from '@shedbook/words';
import { nameOf } from './teacher-name.ts';
import styles from './teachers-list.module.css';

interface TeacherRowProps {
  readonly teacher: ListedTeacher;
  readonly isYou: boolean;
  /** Everybody a student may be handed over to. */
  readonly teachers: readonly ListedTeacher[];
  readonly students: readonly SchoolStudent[];
  readonly words: SchoolWords['teachers'];
  readonly onRename: () => void;
  readonly onRole: (role: ListedTeacher['role']) => void;
  readonly onInvite: () => void;
  readonly onRemove: () => void;
  readonly onHandOver: (student: SchoolStudent, to: ListedTeacher) => void;
}

/** The row. */
export function TeacherRow({ teacher, isYou, words, ...props }: TeacherRowProps) {
  const name = nameOf(teacher, words);
  const isFirst = teacher.id === FIRST_TEACHER;
  return (
    <li>
      <div className={styles.who}>
        <p>
          <strong>{isYou ? words.you({ name }) : name}</strong>
          {!teacher.hasJoined && <span className="quiet"> {words.notHere}</span>}
        </p>
        {isFirst ? (
          <span>{words.roles[teacher.role]}</span>
        ) : (
          <select
            aria-label={words.roleOf({ name })}
            value={teacher.role}
            onChange={(event) => props.onRole(event.target.value as ListedTeacher['role'])}
          >
            {ROLES.map((role) => (
              <option key={role} value={role}>
                {words.roles[role]}
              </option>
            ))}
          </select>
        )}
        <Button onClick={props.onRename} aria-label={words.renameThis({ name })}>
          {words.rename}
        </Button>
        {!isYou && (
          <Button onClick={props.onInvite} aria-label={words.againThis({ name })}>
            {words.again}
          </Button>
        )}
        {!isYou && !isFirst && (
          <Button onClick={props.onRemove} aria-label={words.removeThis({ name })}>
            {words.remove}
          </Button>
        )}
      </div>
      <Roster {...props} {...{ teacher, words, name }} />
    </li>
  );
}

interface RosterProps
  extends Pick<TeacherRowProps, 'teacher' | 'teachers' | 'students' | 'words' | 'onHandOver'> {
  readonly name: string;
}

/** Names of a teacher's students, and to whom each may go. */
function Roster({ teacher, teachers, students, words, name, onHandOver }: RosterProps) {
  const count = words.students({ n: students.length });
  if (students.length === 0) return <p className="quiet">{count}</p>;
  return (
    <details className={styles.roster}>
      <summary>{count}</summary>
      <ul aria-label={words.roster({ name })}>
        {students.map((student) => (
          <li key={student.id}>
            <span>{student.name}</span>
            <select
              aria-label={words.handTo({ student: student.name })}
              value={teacher.id}
              onChange={(event) => {
                const to = teachers.find(({ id }) => id === event.target.value);
                if (to) onHandOver(student, to);
              }}
            >
              {teachers.map((each) => (
                <option key={each.id} value={each.id}>
                  {nameOf(each, words)}
                </option>
              ))}
            </select>
          </li>
        ))}
      </ul>
    </details>
  );
}
