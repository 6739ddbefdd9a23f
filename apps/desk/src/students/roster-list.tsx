/** Who is on the roster: everybody at once where they are few, else by parts and by name. */
import { ROSTER_PAGE } from '@shedbook/routes';
import { Button, classes, Field } from '@shedbook/stand';
import { useWords } from '../words/students-words.tsx';
import { awayWords, daysAway } from './days-away.ts';
import styles from './roster-list.module.css';
import type { RosterPart } from './use-roster-part.ts';

interface RosterListProps {
  readonly part: RosterPart;
  readonly today: number;
}

/** Looks for students by their names. */
function Search({ part: { view, find, seek } }: Pick<RosterListProps, 'part'>) {
  const words = useWords().students;
  return (
    <div className={styles.search}>
      <Field
        label={words.find}
        type="search"
        value={find}
        maxLength={200}
        onChange={({ target }) => void seek(target.value)}
      />
      <p className="quiet" role="status">
        {find !== '' && view && words.found({ n: view.of })}
      </p>
    </div>
  );
}

/** The list. */
export function RosterList({ part, today }: RosterListProps) {
  const words = useWords().students;
  const { view, find, chosen, choose, more } = part;
  if (!view) return null;
  const isLong = view.next !== null || view.students.length > ROSTER_PAGE || find !== '';
  const rest = view.of - view.students.length;
  return (
    <nav
      className={classes(styles.roster, isLong && styles.long)}
      aria-label={words.roster}
      data-part="roster"
    >
      {isLong && <Search part={part} />}
      <ul>
        {view.students.map((student) => {
          return (
            <li key={student.id}>
              <button
                type="button"
                aria-current={student.id === chosen?.id ? 'true' : undefined}
                onClick={() => void choose(student.id)}
              >
                <strong>{student.name}</strong>
                <span>{awayWords(words, daysAway(student, today))}</span>
              </button>
            </li>
          );
        })}
      </ul>
      {view.next !== null && (
        <div className={styles.rest}>
          <Button onClick={() => void more()}>{words.showMore({ n: Math.min(rest, ROSTER_PAGE) })}</Button>
        </div>
      )}
    </nav>
  );
}
