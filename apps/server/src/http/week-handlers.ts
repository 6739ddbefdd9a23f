/** What a student's page asks for and sends, by their private link. */
import type { LessonStore } from '../store/lessons.ts';
import type { StudentStore } from '../store/students.ts';
import type { Door } from '../week/door.ts';
import { weekOf } from '../week/students-week.ts';
import { answer, type Handlers, refuse } from './handlers.ts';

/** Answers the routes of a private link. */
export function weekHandlers(door: Door, store: LessonStore, students: StudentStore) {
  return {
    readWeek: async ({ params }, _signal, { ip }) => {
      const opening = await door(params.token, ip);
      return opening.kind === 'refused' ? opening : answer(await weekOf(opening.student, store));
    },
    sendPractice: async ({ params, body }, _signal, { ip }) => {
      const opening = await door(params.token, ip);
      if (opening.kind === 'refused') return opening;
      const added = await students.takeIn(opening.student.id, body);
      return added === null ? refuse('no-such-link', {}) : answer({ added });
    },
  } satisfies Partial<Handlers>;
}
