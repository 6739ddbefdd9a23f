/** How limbs play, drawn and written, loaded only where a lesson says it. */
import type { Exercise, Lesson } from '@shedbook/core';
import { lazy, Suspense } from 'react';
import { usePracticeWords } from '../page/words.tsx';

const Said = lazy(() => import('@shedbook/stand/how-list').then(({ HowList }) => ({ default: HowList })));

interface HowListProps {
  readonly section: Lesson;
  /** Null for the groove alone. */
  readonly exercise: Exercise | null;
}

/** The list; nothing where nothing is said. */
export function HowList({ section, exercise }: HowListProps) {
  const words = usePracticeWords();
  if (Object.keys({ ...section.how, ...exercise?.how }).length === 0) return null;
  return (
    <Suspense>
      <Said section={section} exercise={exercise} words={words} />
    </Suspense>
  );
}
