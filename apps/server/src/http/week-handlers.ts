/** What a student's page asks for and sends, by their private link. */
import type { LessonStore } from '../store/lessons.ts';
import type { StudentStore } from '../store/students.ts';
import type { TakeStore } from '../store/takes.ts';
import type { Door } from '../week/door.ts';
import { weekOf } from '../week/students-week.ts';
import { answer, type Handlers, refuse } from './handlers.ts';

/** What the answers are made with. */
export interface WeekParts {
  readonly door: Door;
  readonly store: LessonStore;
  readonly students: StudentStore;
  readonly takes: TakeStore;
}

/** Answers the routes of a private link. */
export function weekHandlers({ door, store, students, takes }: WeekParts) {
  return {
    readWeek: async ({ params }, _signal, { ip }) => {
      const opening = await door(params.token, ip);
      if (opening.kind === 'refused') return opening;
      return answer(await weekOf(opening.student, store, await takes.of(opening.student.id)));
    },
    sendPractice: async ({ params, body }, _signal, { ip }) => {
      const opening = await door(params.token, ip);
      if (opening.kind === 'refused') return opening;
      const added = await students.takeIn(opening.student.id, body);
      return added === null ? refuse('no-such-link', {}) : answer({ added });
    },
  } satisfies Partial<Handlers>;
}
