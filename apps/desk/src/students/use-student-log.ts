/** The practice of the student who is looked at: read once, and from there on only what was added. */
import type { StoredStudent } from '@shedbook/routes';
import { useSay } from '@shedbook/stand';
import { useEffect, useMemo, useState } from 'react';
import { wordsFor } from '../document/error-words.ts';
import { useWords } from '../words/words.tsx';
import { readRowsAfter } from './api.ts';
import { joinRows, type KeptLog, type LogRow } from './kept-log.ts';

interface Read {
  readonly id: string;
  readonly rows: readonly LogRow[];
}

/** What is kept of a student; null while it is read. */
export function useStudentLog({ id, lastRow }: StoredStudent): KeptLog | null {
  const words = useWords();
  const say = useSay();
  const [read, setRead] = useState<Read | null>(null);
  const rows = read?.id === id ? read.rows : null;
  const known = rows?.at(-1)?.row ?? 0;
  useEffect(() => {
    if (rows && known >= lastRow) return undefined;
    let isWanted = true;
    readRowsAfter(id, known).then(
      (more) => isWanted && setRead({ id, rows: [...(rows ?? []), ...more] }),
      (error: unknown) => isWanted && say(wordsFor(error, words)),
    );
    return () => {
      isWanted = false;
    };
  }, [id, rows, known, lastRow, say, words]);
  return useMemo(() => rows && joinRows(rows), [rows]);
}
