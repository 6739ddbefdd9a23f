/** What tells lessons apart that are called the same: how much there is in them, and when they were last changed. */
import type { LessonSummary } from '@shedbook/routes';
import type { BooksWords } from '@shedbook/words';
import { useWhen } from '../shared/use-when.ts';
import { useWords } from '../words/words.tsx';

/** A way to say it of a lesson by its id; null where there is none. */
export function useFacts(
  lessons: readonly LessonSummary[],
  words: BooksWords,
): (lesson: string) => string | null {
  const { desk } = useWords();
  const when = useWhen();
  const byId = new Map(lessons.map((lesson) => [lesson.id, lesson]));
  return (id) => {
    const lesson = byId.get(id);
    if (!lesson) return null;
    const exercises = desk.exercises({ n: lesson.exercises });
    return words.facts({ exercises, when: when(lesson.updatedAt) });
  };
}
