/** Which bars are drawn on the stand. */
import type { PackBar } from '@shedbook/pack';
import type { PracticeSession } from '../session/practice-session.tsx';

/** The bars that are drawn: the exercise's, and the groove's where the form has time alone. */
export interface Pictures {
  readonly exercise: readonly PackBar[];
  readonly groove: readonly PackBar[];
}

/** What of a session its pictures depend on. */
export type Pictured = Pick<PracticeSession, 'pack' | 'exercise' | 'choice' | 'form'>;

/** What is drawn of the exercise on the stand, and of the groove. */
export function picturesOf({ pack, exercise, choice, form }: Pictured): Pictures {
  const found = pack.exercises.find((each) => each.number === exercise);
  const hasTime = form.sections.some((section) => section.play === 'time');
  return { exercise: found?.[choice.staff] ?? [], groove: found && !hasTime ? [] : pack.groove };
}
