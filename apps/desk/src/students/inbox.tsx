/** What needs an ear first: takes that nobody has listened to, and who has not played for a while. */
import { useWords } from '../words/students-words.tsx';
import { daysAway } from './days-away.ts';
import styles from './inbox.module.css';
import { useSentWords, useTakeWords } from './take-words.ts';
import { useInbox } from './use-sent-takes.ts';

interface InboxProps {
  /** Counted as in a moment. */
  readonly today: number;
  readonly onChoose: (student: string) => void;
}

/** The list; nothing where nothing waits. */
export function Inbox({ today, onChoose }: InboxProps) {
  const words = useWords();
  const inbox = useInbox();
  const takeWords = useTakeWords();
  const sentWords = useSentWords();
  if (!inbox || inbox.takes.length + inbox.away.length === 0) return null;
  const { takes, takesOf, away, awayOf } = inbox;
  const rest = takesOf - takes.length + awayOf - away.length;
  return (
    <section className={styles.inbox} aria-label={words.inbox.title} data-part="inbox">
      <h2>{words.inbox.title}</h2>
      <ul>
        {takes.map(({ name, take }) => (
          <li key={`${take.student} ${take.facts.id}`}>
            <button type="button" onClick={() => onChoose(take.student)}>
              <strong>{name}</strong>
              <span>{takeWords(take.facts)}</span>
              <span className="quiet">{sentWords(take.sentAt)}</span>
              {take.asks && <em>{words.inbox.asks}</em>}
            </button>
          </li>
        ))}
        {away.map((student) => (
          <li key={student.id}>
            <button type="button" onClick={() => onChoose(student.id)}>
              <strong>{student.name}</strong>
              <span>{words.inbox.away({ days: daysAway(student, today) ?? 0 })}</span>
            </button>
          </li>
        ))}
      </ul>
      {rest > 0 && <p className="quiet">{words.students.more({ n: rest })}</p>}
    </section>
  );
}
