/** Says at once that nothing is kept here, and offers to save what was done. */
import { Button, Problem } from '@shedbook/stand';
import { useEffect } from 'react';
import { read } from '../kept/database.ts';
import { useKeeping } from '../kept/keeping.ts';
import { usePracticeWords } from '../page/words.tsx';
import { usePracticeSession } from '../session/practice-session.tsx';
import inRow from '../ui/row.module.css';

/** The line; nothing while things are kept. */
export function KeepingLine() {
  const words = usePracticeWords().keeping;
  const { pack } = usePracticeSession();
  const keeping = useKeeping();
  // Looked at once, so that it is said before anybody has played.
  useEffect(() => void read('notes', 'log').catch(() => undefined), []);
  const save = async () => {
    const { saveEverything } = await import('./save.ts');
    await saveEverything(pack.id);
  };
  if (keeping === 'kept') return null;
  return (
    <div className={inRow.row} role="alert" data-part="keeping" data-keeping={keeping}>
      <Problem>{words[keeping]}</Problem>
      <Button onClick={() => void save()}>{words.save}</Button>
    </div>
  );
}
