/** Lessons: list, read, create, save, history, remove, erase and restore. */
import type { SheetMaker } from '../sheet/sheet-maker.ts';
import type { LessonStore } from '../store/lessons.ts';
import { namesInUse } from '../store/names-in-use.ts';
import type { StudentStore } from '../store/students.ts';
import { answer, type Handlers, refuse, teacherOf } from './handlers.ts';

/** Answers the routes that change lessons and read them. */
export function lessonHandlers(store: LessonStore, students: StudentStore, sheets: SheetMaker) {
  const missing = () => refuse('no-such-lesson', {});
  return {
    listLessons: async () => answer(await store.list()),
    listShelf: async () => answer((await store.shelf()).map(({ summary }) => summary)),
    fileLesson: async ({ params, body }) => ((await store.file(params.id, body)) ? answer(null) : missing()),
    listDamaged: async () => answer(await store.damaged()),
    createLesson: async ({ body }, _signal, caller) =>
      answer(await store.create(body.text, teacherOf(caller).id)),
    readLesson: async ({ params }) => {
      sheets.warm();
      const lesson = await store.read(params.id);
      return lesson ? answer(lesson) : missing();
    },
    saveLesson: async ({ params, body }) => {
      const outcome = await store.save(params.id, body);
      if (outcome.kind === 'saved') return answer(outcome.lesson);
      return outcome.kind === 'missing' ? missing() : refuse('lesson-changed', { kept: outcome.kept });
    },
    readStep: async ({ params }) => {
      const step = await store.readStep(params.id, params.step);
      return step ? answer(step) : refuse('no-such-step', {});
    },
    namesInUse: async ({ params }) => {
      const names = await namesInUse(store, students, params.id);
      return names ? answer(names) : missing();
    },
    removeLesson: async ({ params }) => ((await store.remove(params.id)) ? answer(null) : missing()),
    eraseLesson: async ({ params }) => ((await store.erase(params.id)) ? answer(null) : missing()),
    restoreLesson: async ({ params }) => {
      const lesson = await store.restore(params.id);
      return lesson ? answer(lesson) : missing();
    },
  } satisfies Partial<Handlers>;
}
