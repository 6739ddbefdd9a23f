/** The takes that are kept: hear them, send them, delete them, and what room they take. */

import { Button } from '@shedbook/stand';
import { sizeWords } from '@shedbook/words';
import { lazy, Suspense, useCallback, useEffect, useState } from 'react';
import { useHearingWords } from '../page/hearing-words.ts';
import { usePracticeSession } from '../session/practice-session.tsx';
import { Folded } from '../ui/folded.tsx';
import type { Take, WholeTake } from './take.ts';
import { keepTake, listTakes, removeTake, spaceOf } from './take-store.ts';
import styles from './takes-view.module.css';

/** A take brings the judge and its drawing with it, so it comes only where there is one. */
const TakeRow = lazy(() => import('./take-row.tsx'));

interface Shelf {
  readonly takes: readonly Take[];
  readonly used: number;
  readonly left: number | null;
}

function useShelf(lesson: string) {
  const [shelf, setShelf] = useState<Shelf | null>(null);
  const refresh = useCallback(async () => {
    const all = await listTakes().catch(() => []);
    setShelf({ takes: all.filter((take) => take.lesson === lesson), ...(await spaceOf(all)) });
  }, [lesson]);
  useEffect(() => void refresh(), [refresh]);
  return { shelf, refresh };
}

interface SpaceProps {
  /** Bytes. */
  readonly used: number;
  /** Bytes; null where the browser does not tell. */
  readonly left: number | null;
}

/** How much room takes need, and how much there is. */
function Space({ used, left }: SpaceProps) {
  const { sizes, takes } = useHearingWords();
  const usedWords = sizeWords(sizes, used);
  return left === null
    ? takes.space({ used: usedWords })
    : takes.spaceLeft({ used: usedWords, left: sizeWords(sizes, left) });
}

/** The list. */
export function TakesView() {
  const words = useHearingWords().takes;
  const { pack } = usePracticeSession();
  const { shelf, refresh } = useShelf(pack.id);
  const [removed, setRemoved] = useState<WholeTake | null>(null);
  if (!shelf) return null;
  const remove = async (take: Take) => {
    setRemoved(await removeTake(take));
    await refresh();
  };
  const undo = async (whole: WholeTake) => {
    setRemoved(null);
    await keepTake(whole).catch(() => undefined);
    await refresh();
  };
  return (
    <Folded title={words.title} part="takes-view">
      <p className="quiet">{words.lead}</p>
      <p className="quiet">
        <Space used={shelf.used} left={shelf.left} />
      </p>
      <div role="status" className={styles.removed}>
        {removed && (
          <>
            <span>{words.removed}</span>
            <Button onClick={() => void undo(removed)}>{words.undo}</Button>
          </>
        )}
      </div>
      {shelf.takes.length === 0 && <p>{words.empty}</p>}
      <ul className={styles.rows}>
        <Suspense fallback={null}>
          {shelf.takes.map((take) => (
            <TakeRow key={take.id} take={take} onRemove={() => void remove(take)} />
          ))}
        </Suspense>
      </ul>
    </Folded>
  );
}
