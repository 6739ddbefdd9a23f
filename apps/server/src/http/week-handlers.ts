/** What a student's page asks for and sends, by their private link. */
import type { LessonStore } from '../store/lessons.ts';
import { isTeachersWord } from '../store/log-rows.ts';
import type { StudentStore } from '../store/students.ts';
import type { TakeStore } from '../store/takes.ts';
import type { Door } from '../week/door.ts';
import { type Intake, PRACTICE_BYTES } from '../week/intake.ts';
import { weekOf } from '../week/students-week.ts';
import { answer, type Handlers, refuse } from './handlers.ts';

/** What the answers are made with. */
export interface WeekParts {
  readonly door: Door;
  readonly store: LessonStore;
  readonly students: StudentStore;
  readonly takes: TakeStore;
  readonly intake: Intake;
}

/** Answers the routes of a private link. */
export function weekHandlers({ door, store, students, takes, intake }: WeekParts) {
  return {
    readWeek: async ({ params }, _signal, { ip }) => {
      const opening = await door(params.token, ip);
      if (opening.kind === 'refused') return opening;
      const { student } = opening;
      const told = { passes: await students.passes(student.id), takes: await takes.of(student.id) };
      return answer(await weekOf(student, store, told));
    },
    sendPractice: async ({ params, body }, _signal, { ip }) => {
      const opening = await door(params.token, ip);
      if (opening.kind === 'refused') return opening;
      // Nobody passes themselves: the teacher's word comes from the desk alone.
      const rows = body.rows.filter((row) => !isTeachersWord(row));
      const { id } = opening.student;
      const sent = { rows: rows.length, bytes: rows.reduce((sum, row) => sum + Buffer.byteLength(row), 0) };
      const waitSeconds = intake.waitSeconds(id, sent);
      if (waitSeconds > 0) return refuse('too-often', { waitSeconds });
      if ((await students.practiceBytes(id)) + sent.bytes > PRACTICE_BYTES)
        return refuse('no-room', { mostBytes: PRACTICE_BYTES });
      const added = await students.takeIn(id, { ...body, rows });
      if (added === null) return refuse('no-such-link', {});
      intake.came(id, sent, rows.length === 0 ? 0 : added / rows.length);
      return { ...answer({ added }), about: id };
    },
  } satisfies Partial<Handlers>;
}
