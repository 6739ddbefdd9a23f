/** Students: list, create, save, their practice, remove, erase and restore, and the bin. */
import type { StudentStore } from '../store/students.ts';
import { answer, type Handlers, refuse, teacherOf } from './handlers.ts';

/** Answers the routes that change students and read them. */
export function studentHandlers(store: StudentStore) {
  const missing = () => refuse('no-such-student', {});
  const of = (done: boolean) => (done ? answer(null) : missing());
  return {
    listStudents: async ({ query }, _signal, caller) => answer(await store.page(query, teacherOf(caller).id)),
    listNames: async (_asked, _signal, caller) => answer(await store.names(teacherOf(caller).id)),
    readStudent: async ({ params }) => {
      const student = await store.read(params.id);
      return student ? answer(student) : missing();
    },
    createStudent: async ({ body }, _signal, caller) =>
      answer(await store.create(body.name, teacherOf(caller).id)),
    saveStudent: async ({ params, body }) => {
      const outcome = await store.save(params.id, body);
      if (outcome.kind === 'saved') return answer(outcome.student);
      return outcome.kind === 'missing' ? missing() : refuse('student-changed', { kept: outcome.kept });
    },
    noteMinority: async ({ params, body }) => {
      const student = await store.noteMinority(params.id, body);
      return student ? answer(student) : missing();
    },
    setCoach: async ({ params, body }) => {
      const student = await store.setCoach(params.id, body);
      return student ? answer(student) : missing();
    },
    readLog: async ({ params, query }) => {
      const page = await store.readLog(params.id, query.after);
      return page ? answer(page) : missing();
    },
    takeInLog: async ({ params, body }) => {
      const added = await store.takeIn(params.id, body);
      return added === null ? missing() : answer({ added });
    },
    listBin: async (_asked, _signal, caller) => answer(await store.bin(teacherOf(caller))),
    takeOutLog: async ({ params }) => of(await store.takeOut(params.id, params.takenAt)),
    putBackLog: async ({ params }) => of(await store.putBack(params.id, params.takenAt)),
    eraseLog: async ({ params }) => of(await store.eraseTakenIn(params.id, params.takenAt)),
    eraseStudent: async ({ params }) => {
      const receipt = await store.erase(params.id);
      return receipt ? answer(receipt) : missing();
    },
    removeStudent: async ({ params }) => of(await store.remove(params.id)),
    restoreStudent: async ({ params }) => {
      const student = await store.restore(params.id);
      return student ? answer(student) : missing();
    },
  } satisfies Partial<Handlers>;
}
