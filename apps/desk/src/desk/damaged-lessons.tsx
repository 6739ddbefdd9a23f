/** Lessons that are there and cannot be read: told, since they are not in the list. */
import type { DamagedLesson } from '@shedbook/routes';
import { Problem } from '@shedbook/stand';
import { useEffect, useState } from 'react';
import { ask } from '../document/client.ts';
import { useWords } from '../words/words.tsx';

/** What is told; nothing where every lesson can be read, or where nobody answers, which is told elsewhere. */
export function DamagedLessons() {
  const words = useWords().desk;
  const [lessons, setLessons] = useState<readonly DamagedLesson[]>([]);
  useEffect(() => {
    ask('listDamaged', {}).then(setLessons, () => undefined);
  }, []);
  if (lessons.length === 0) return null;
  const titles = lessons.map(({ title }) => title ?? words.untitled);
  return <Problem data-part="damaged">{words.damaged({ n: lessons.length, titles })}</Problem>;
}
