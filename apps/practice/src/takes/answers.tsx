/** What the teacher said about takes, the newest first. */
import { useHearingWords } from '../page/hearing-words.ts';
import { usePracticeLanguage } from '../page/words.tsx';
import { useSentTakes } from './sent-takes.ts';

/** Answers that are shown. */
const MOST = 5;

/** The answers; nothing where there is none. */
export function Answers() {
  const words = useHearingWords();
  const { tag } = usePracticeLanguage();
  const { sent } = useSentTakes();
  const answered = [...sent.values()]
    .flatMap((take) => (take.answer === null ? [] : [{ ...take, answer: take.answer }]))
    .toSorted((a, b) => ((a.answeredAt ?? '') < (b.answeredAt ?? '') ? 1 : -1));
  if (answered.length === 0) return null;
  return (
    <section data-part="answers" aria-label={words.week.answers}>
      <h3>{words.week.answers}</h3>
      <ul>
        {answered.slice(0, MOST).map(({ facts, answer }) => (
          <li key={facts.id}>
            <span className="quiet">
              {words.week.onTake({
                what: `${facts.lessonTitle}, ${facts.number === null ? words.takes.timeAlone : words.takes.exercise({ n: facts.number })}`,
                day: new Date(facts.startedAt).toLocaleDateString(tag, { day: 'numeric', month: 'long' }),
              })}
            </span>{' '}
            {answer}
          </li>
        ))}
      </ul>
    </section>
  );
}
