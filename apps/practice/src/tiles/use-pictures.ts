/** The bars that are drawn on the stand, for components. */
import { useMemo } from 'react';
import { usePracticeSession } from '../session/practice-session.tsx';
import { type Pictures, picturesOf } from './pictures.ts';

/** What is drawn now; the same object while nothing of it has changed. */
export function usePictures(): Pictures {
  const { pack, exercise, choice, form } = usePracticeSession();
  return useMemo(() => picturesOf({ pack, exercise, choice, form }), [pack, exercise, choice.staff, form]);
}
