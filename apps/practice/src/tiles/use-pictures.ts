/** The bars that are drawn on the stand, for components. */
import type { Form } from '@shedbook/core';
import { useMemo } from 'react';
import { usePracticeSession } from '../session/practice-session.tsx';
import { type Pictures, picturesOf } from './pictures.ts';

/**
 * What is drawn now; the same object while nothing of it has changed.
 * @param heard the form that is heard, where it is another one than what is chosen
 */
export function usePictures(heard?: Form): Pictures {
  const { pack, exercise, choice, form: chosen } = usePracticeSession();
  const form = heard ?? chosen;
  return useMemo(() => picturesOf({ pack, exercise, choice, form }), [pack, exercise, choice.staff, form]);
}
