/** What the items of today's list are called. */
import type { PlanItem, PracticePart, ShelfLesson } from '@shedbook/coach';
import type { HearingWords } from '@shedbook/words';
import { exerciseName } from '../page/exercise-name.ts';

/** What an item is called. */
export function nameOf(item: PlanItem, shelf: readonly ShelfLesson[], words: HearingWords['plan']): string {
  if (item.kind === 'break') return words.rest;
  if (item.kind === 'free') return words.free;
  const lesson = shelf.find((each) => each.id === item.lesson)?.lesson;
  const exercise = lesson?.exercises.find((each) => each.number === item.number);
  const name = exerciseName({ number: item.number, name: exercise?.name ?? null }, words);
  return lesson && shelf.length > 1 ? `${lesson.title}, ${name}` : name;
}

/** What of an exercise is played. */
export function sayPart({ kind, beat }: PracticePart, words: HearingWords['plan']): string {
  const { parts } = words;
  return kind === 'cell alone' || kind === 'move alone' ? parts[kind]({ beat }) : parts[kind];
}
