/** Lessons that are there and cannot be read: told, since they are not in the list. */
import { Problem } from '@shedbook/stand';
import { useEffect, useState } from 'react';
import { ask } from '../document/client.ts';
import { useWords } from '../words/words.tsx';

/** What is told; nothing where every lesson can be read, or where nobody answers, which is told elsewhere. */
export function DamagedLessons() {
  const words = useWords().desk;
  const [ids, setIds] = useState<readonly string[]>([]);
  useEffect(() => {
    ask('listDamaged', {}).then(setIds, () => undefined);
  }, []);
  if (ids.length === 0) return null;
  return <Problem data-part="damaged">{words.damaged({ n: ids.length })}</Problem>;
}
