/** Talking to the server about students. */
import type { StoredStudent, StudentConflict, StudentContent } from '@shedbook/server';
import { answer, ask } from '../document/api.ts';

/** Everybody on the roster. */
export async function listStudents(): Promise<readonly StoredStudent[]> {
  return answer(await ask('GET', '/api/students'));
}

/** A new student. */
export async function createStudent(name: string): Promise<StoredStudent> {
  return answer(await ask('POST', '/api/students', { name }));
}

/** Takes a student off the roster; they can be brought back. */
export async function removeStudent(id: string): Promise<void> {
  return answer(await ask('DELETE', `/api/students/${id}`));
}

/** Brings a student back. */
export async function restoreStudent(id: string): Promise<StoredStudent> {
  return answer(await ask('POST', `/api/students/${id}/restore`));
}

/** Changes a student; where they were changed elsewhere meanwhile, what is kept there is changed instead. */
export async function changeStudent(
  student: StoredStudent,
  change: (content: StudentContent) => StudentContent,
): Promise<StoredStudent> {
  const { name, log, assignments } = change(student);
  const { revision } = student;
  const response = await ask('PUT', `/api/students/${student.id}`, { name, log, assignments, revision });
  if (response.status !== 409) return answer(response);
  const { kept } = (await response.json()) as StudentConflict;
  return changeStudent(kept, change);
}
