/** What was set for a student, lesson by lesson. */
import { mayRecord, type StoredLesson, type StoredStudent, type Week } from '@shedbook/routes';
import type { LessonStore } from '../store/lessons.ts';

/** A lesson that something is set of. */
export type SetLesson = StoredLesson & { readonly title: string };

/**
 * The lessons that something is set of, in the order in which the teacher set it; those that were thrown away or
 * cannot be read are left out.
 */
export async function lessonsSetFor(
  { assignments }: StoredStudent,
  store: LessonStore,
): Promise<readonly SetLesson[]> {
  const ids = [...new Set(assignments.map(({ lesson }) => lesson))];
  const setLesson = async (id: string): Promise<readonly SetLesson[]> => {
    const stored = await store.read(id).catch(() => null);
    const summary = stored && (await store.summary(stored).catch(() => null));
    if (!stored || !summary?.names || summary.title === null) return [];
    return [{ ...stored, title: summary.title }];
  };
  return (await Promise.all(ids.map(setLesson))).flat();
}

/** The week of a student as their page reads it. @param told what the teacher said of their playing */
export async function weekOf(
  student: StoredStudent,
  store: LessonStore,
  told: Pick<Week, 'passes' | 'takes'>,
): Promise<Week> {
  const lessons = await lessonsSetFor(student, store);
  const there = new Set(lessons.map(({ id }) => id));
  return {
    student: { id: student.id, name: student.name },
    level: student.level,
    setUp: student.setUp,
    coach: student.coach,
    lessons: lessons.map(({ id, title }) => ({ id, title })),
    assignments: student.assignments.filter(({ lesson }) => there.has(lesson)),
    mayRecord: mayRecord(student.minority),
    ...told,
  };
}
