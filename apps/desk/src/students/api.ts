/** What the desk asks of the server about students. */
import type { StoredStudent, StudentContent } from '@shedbook/routes';
import { ask, RefusedError } from '../document/client.ts';

/** Everybody on the roster. */
export function listStudents(): Promise<readonly StoredStudent[]> {
  return ask('listStudents', {});
}

/** A new student. */
export function createStudent(name: string): Promise<StoredStudent> {
  return ask('createStudent', { body: { name } });
}

/** Takes a student off the roster; they can be brought back. */
export async function removeStudent(id: string): Promise<void> {
  await ask('removeStudent', { params: { id } });
}

/** Brings a student back. */
export function restoreStudent(id: string): Promise<StoredStudent> {
  return ask('restoreStudent', { params: { id } });
}

/** Changes a student; where they were changed elsewhere meanwhile, what is kept there is changed instead. */
export async function changeStudent(
  student: StoredStudent,
  change: (content: StudentContent) => StudentContent,
): Promise<StoredStudent> {
  const { id, revision } = student;
  const { name, log, assignments, level } = change(student);
  try {
    return await ask('saveStudent', { params: { id }, body: { name, log, assignments, level, revision } });
  } catch (error) {
    if (!(error instanceof RefusedError) || error.refusal.code !== 'student-changed') throw error;
    return changeStudent(error.refusal.values.kept, change);
  }
}
