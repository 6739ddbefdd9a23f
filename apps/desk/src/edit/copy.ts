/** Copies of a lesson: they say what they come from, so that what is practised in one counts for the other. */
import { editLesson, type Lesson, lessonKey } from '@shedbook/core';
import { setTitle } from './heading.ts';

/** A lesson and its text. */
interface Written {
  readonly lesson: Lesson;
  readonly text: string;
}

/** The text of a copy under a title of its own: a copy of a copy comes from where that came from. */
export function copyOf({ lesson, text }: Written, title: string): string {
  const named = editLesson(setTitle(text, title), ['id'], undefined);
  return editLesson(named, ['from'], lesson.from ?? lessonKey(lesson));
}
