/** Students: list, create, save, remove and restore. */
import type { StudentStore } from '../store/students.ts';
import { answer, type Handlers, refuse } from './handlers.ts';

/** Answers the routes that change students and read them. */
export function studentHandlers(store: StudentStore) {
  const missing = () => refuse('no-such-student', {});
  return {
    listStudents: async () => answer(await store.list()),
    createStudent: async ({ body }) => answer(await store.create(body.name)),
    saveStudent: async ({ params, body }) => {
      const outcome = await store.save(params.id, body);
      if (outcome.kind === 'saved') return answer(outcome.student);
      return outcome.kind === 'missing' ? missing() : refuse('student-changed', { kept: outcome.kept });
    },
    removeStudent: async ({ params }) => ((await store.remove(params.id)) ? answer(null) : missing()),
    restoreStudent: async ({ params }) => {
      const student = await store.restore(params.id);
      return student ? answer(student) : missing();
    },
  } satisfies Partial<Handlers>;
}
