/** Teachers of a school: list, add, invite, change, let go; and handing students over. */
import { FIRST_TEACHER, type Teacher } from '@shedbook/routes';
import type { SignInStore } from '../store/sign-in.ts';
import type { TeacherStore } from '../store/teachers.ts';
import type { Changes } from '../week/changes.ts';
import { answer, type Handlers, refuse, teacherOf } from './handlers.ts';

/** What the answers are made with. */
export interface TeacherParts {
  readonly teachers: TeacherStore;
  readonly signIn: SignInStore;
  readonly changes: Changes;
  /** Where others reach the server, with a slash at the end. */
  readonly address: () => string;
}

/** The part of an address behind which a letter's secret stands: no server and no referrer is told it. */
export const LETTER = '#invitation=';

/** Answers the routes of teachers. */
export function teacherHandlers({ teachers, signIn, changes, address }: TeacherParts) {
  const missing = () => refuse('no-such-teacher', {});
  const letter = async (teacher: Teacher) => {
    const token = await teachers.invite(teacher.id);
    return token === null ? missing() : answer({ teacher, address: `${address()}${LETTER}${token}` });
  };
  return {
    listTeachers: async () => answer(await teachers.list()),
    addTeacher: async ({ body }) => {
      if (!(await signIn.isSet())) return refuse('no-passphrase', {});
      const teacher = await teachers.add(body.name);
      if (!teacher) return refuse('name-taken', {});
      const sent = await letter(teacher);
      return sent.kind === 'refused' ? refuse('name-taken', {}) : sent;
    },
    inviteTeacher: async ({ params }) => {
      const teacher = await teachers.read(params.id);
      return teacher ? letter(teacher) : missing();
    },
    saveTeacher: async ({ params, body }) => {
      const outcome = await teachers.save(params.id, body);
      if (outcome === 'saved') return answer(null);
      return outcome === 'missing' ? missing() : refuse(outcome, {});
    },
    removeTeacher: async ({ params }, _signal, caller) => {
      const heir = teacherOf(caller).id;
      const outcome = await teachers.remove(params.id, heir);
      if (outcome !== 'saved') return outcome === 'missing' ? missing() : refuse(outcome, {});
      changes.tell(heir);
      return answer(null);
    },
    listSchool: async () => answer(await teachers.roster()),
    handOver: async ({ params, body }, _signal, caller) => {
      const before = (await teachers.roster()).find(({ id }) => id === params.id)?.teacher;
      if (!(await teachers.handOver(params.id, body.teacher))) return refuse('no-such-student', {});
      for (const each of new Set([before ?? FIRST_TEACHER, body.teacher, teacherOf(caller).id]))
        changes.tell(each);
      return { ...answer(null), about: params.id };
    },
  } satisfies Partial<Handlers>;
}
