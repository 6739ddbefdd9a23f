/** What a take is, in a line. */
import type { TakeFacts } from '@shedbook/routes';
import { useLanguage, useWords } from '../words/students-words.tsx';

/** Says when a take was sent. */
export function useSentWords(): (sentAt: string) => string {
  const { words, tag } = useLanguage();
  return (sentAt) =>
    words.inbox.sent({
      when: new Date(sentAt).toLocaleString(tag, { dateStyle: 'medium', timeStyle: 'short' }),
    });
}

/** Says which lesson and exercise a take is of, and how many rounds of it were clean as it was played. */
export function useTakeWords(): (facts: TakeFacts) => string {
  const words = useWords().inbox;
  return ({ lessonTitle, number, verdicts }) => {
    const clean = verdicts.filter(({ verdict }) => verdict === 'clean').length;
    const what = number === null ? words.groove : words.exercise({ n: number });
    return words.of({ lesson: lessonTitle, what, clean, rounds: verdicts.length });
  };
}
