/** The practice of the student who is looked at: read once, and from there on only what was added. */
import type { StoredStudent } from '@shedbook/routes';
import { useSay } from '@shedbook/stand';
import { useEffect, useMemo, useState } from 'react';
import { wordsFor } from '../document/error-words.ts';
import { useWords } from '../words/students-words.tsx';
import { readRowsAfter } from './api.ts';
import { joinRows, type KeptLog, type LogRow, type Taking, takingsOf } from './kept-log.ts';

interface Read {
  readonly id: string;
  readonly rows: readonly LogRow[];
}

/** What is kept of a student's practice, and when it was taken in. */
export interface StudentLog extends KeptLog {
  /** Last first. */
  readonly takings: readonly Taking[];
}

/** What is kept of a student; null while it is read. */
export function useStudentLog({ id, lastRow, rows: count }: StoredStudent): StudentLog | null {
  const words = useWords();
  const say = useSay();
  const [read, setRead] = useState<Read | null>(null);
  const rows = read?.id === id ? read.rows : null;
  const known = rows?.at(-1)?.row ?? 0;
  useEffect(() => {
    if (rows?.length === count) return undefined;
    // Something was taken out, or came back among what was read: all of it is read again.
    const isMore = rows !== null && rows.length < count && known < lastRow;
    let isWanted = true;
    readRowsAfter(id, isMore ? known : 0).then(
      (more) => isWanted && setRead({ id, rows: isMore ? [...rows, ...more] : more }),
      (error: unknown) => isWanted && say(wordsFor(error, words)),
    );
    return () => {
      isWanted = false;
    };
  }, [id, rows, known, lastRow, count, say, words]);
  return useMemo(() => rows && { ...joinRows(rows), takings: takingsOf(rows) }, [rows]);
}
