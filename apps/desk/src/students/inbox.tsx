/** What needs an ear first: takes that nobody has listened to, and who has not played for a while. */
import type { SentTake, StoredStudent } from '@shedbook/routes';
import { useWords } from '../words/words.tsx';
import { daysAway } from './days-away.ts';
import styles from './inbox.module.css';
import { useSentWords, useTakeWords } from './take-words.ts';
import { useSentTakes } from './use-sent-takes.ts';

/** Days without practice after which somebody is asked after: longer than the week between two lessons. */
const AWAY_DAYS = 10;

/** Takes in the order in which they are heard: who asked first, then who has waited longest. */
function inOrder(takes: readonly SentTake[]): readonly SentTake[] {
  return takes.toSorted(
    (a, b) => Number(b.asks) - Number(a.asks) || (a.sentAt < b.sentAt ? -1 : a.sentAt > b.sentAt ? 1 : 0),
  );
}

interface InboxProps {
  readonly students: readonly StoredStudent[];
  /** Counted as in a moment. */
  readonly today: number;
  readonly onChoose: (student: string) => void;
}

/** The list; nothing where nothing waits. */
export function Inbox({ students, today, onChoose }: InboxProps) {
  const words = useWords().inbox;
  const { takes } = useSentTakes(null);
  const takeWords = useTakeWords();
  const sentWords = useSentWords();
  const names = new Map(students.map(({ id, name }) => [id, name]));
  const away = students.flatMap((student) => {
    const days = daysAway(student, today);
    return days !== null && days >= AWAY_DAYS ? [{ student, days }] : [];
  });
  if (takes.length + away.length === 0) return null;
  return (
    <section className={styles.inbox} aria-label={words.title} data-part="inbox">
      <h2>{words.title}</h2>
      <ul>
        {inOrder(takes).map((take) => (
          <li key={`${take.student} ${take.facts.id}`}>
            <button type="button" onClick={() => onChoose(take.student)}>
              <strong>{names.get(take.student)}</strong>
              <span>{takeWords(take.facts)}</span>
              <span className="quiet">{sentWords(take.sentAt)}</span>
              {take.asks && <em>{words.asks}</em>}
            </button>
          </li>
        ))}
        {away.map(({ student, days }) => (
          <li key={student.id}>
            <button type="button" onClick={() => onChoose(student.id)}>
              <strong>{student.name}</strong>
              <span>{words.away({ days })}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
