/** Lessons that are there and cannot be read: told, since they are not in the list. */
import type { DamagedLesson } from '@shedbook/routes';
import { Problem } from '@shedbook/stand';
import { useWords } from '../words/words.tsx';

/** What is told. */
export function DamagedLessons({ lessons }: { readonly lessons: readonly DamagedLesson[] }) {
  const words = useWords().desk;
  const titles = lessons.map(({ title }) => title ?? words.untitled);
  return <Problem data-part="damaged">{words.damaged({ n: lessons.length, titles })}</Problem>;
}
