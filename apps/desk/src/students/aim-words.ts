/** What was set, in words: the exercise, up to which tempo, for which day. */
import { findExercise, nameOf } from '@shedbook/coach';
import { countedTempo } from '@shedbook/core';
import type { StoredAssignment } from '@shedbook/routes';
import { useWords } from '../words/students-words.tsx';
import type { DeskShelf } from './take-in.ts';
import { useDayName } from './use-day-name.ts';

/** Says what was set. */
export function useAimWords(shelf: readonly DeskShelf[]): (assignment: StoredAssignment) => string {
  const words = useWords();
  const dayName = useDayName();
  return ({ lesson, exercise: key, toBpm, by }) => {
    const found = findExercise(shelf, lesson, key);
    if (!found) return words.students.gone;
    const exercise = nameOf(found);
    const { meter, tempo } = found.lesson;
    const bpm = countedTempo(meter, toBpm ?? tempo.goalBpm);
    return by === null
      ? words.hours.setItem({ exercise, bpm })
      : words.hours.setUntil({ exercise, bpm, day: dayName(by) });
  };
}
