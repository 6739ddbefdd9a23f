/** Teachers, as whoever works on the computer lets them in. */
import { InputError } from '@shedbook/host';
import { type ListedTeacher, LONGEST_NAME } from '@shedbook/routes';
import type { Kysely } from 'kysely';
import { LETTER } from './http/teacher-handlers.ts';
import { DEFAULT_PORT } from './start.ts';
import { openJournal } from './store/journal.ts';
import { openFault } from './store/open.ts';
import { openStore } from './store/open-store.ts';
import { placeOf } from './store/place.ts';
import { createSignInStore } from './store/sign-in.ts';
import type { Tables } from './store/tables.ts';
import { createTeacherStore } from './store/teachers.ts';

/** Where teachers are let in. */
export interface TeacherPlace {
  /** Address by which they reach the desk; that of this computer when left out. */
  readonly address?: string | undefined;
  /** Folder of the store; the user's data folder when left out. */
  readonly dataDir?: string | undefined;
  /** Address of a PostgreSQL database; the one that is set, or the folder's own file, when left out. */
  readonly storeAddress?: string | undefined;
}

async function within<Done>(
  { dataDir, storeAddress }: TeacherPlace,
  work: (database: Kysely<Tables>) => Promise<Done>,
): Promise<Done> {
  const place = placeOf(dataDir, storeAddress);
  try {
    const database = await openStore(place);
    try {
      return await work(database);
    } finally {
      await database.destroy();
    }
  } catch (error) {
    throw openFault(error, place.dataDir);
  }
}

const clock = () => new Date();

/**
 * Adds a teacher, or finds the one with this name, and makes a letter for them.
 * @returns the address that the letter opens
 * @throws InputError where the name is none, or there is no passphrase yet
 */
export async function inviteTeacher(name: string, place: TeacherPlace = {}): Promise<string> {
  const length = name.trim().length;
  if (length < 1 || length > LONGEST_NAME)
    throw new InputError(({ words }) => words.teacher.noName({ name, most: LONGEST_NAME }));
  return within(place, async (database) => {
    if (!(await createSignInStore(database, clock).isSet()))
      throw new InputError(({ words }) => words.teacher.noPassphrase);
    const teachers = createTeacherStore(database, clock);
    const added = await teachers.add(name);
    const teacher = added ?? (await teachers.named(name));
    const token = teacher && (await teachers.invite(teacher.id));
    const did = added ? 'teacher-added' : 'teacher-invited';
    await openJournal(database, clock).write({ who: 'computer', did });
    const address = place.address ?? `http://127.0.0.1:${DEFAULT_PORT}`;
    return `${address.replace(/\/+$/, '')}/${LETTER}${token}`;
  });
}

/** The teachers who are let in, the first teacher first. */
export function listTeachers(place: TeacherPlace = {}): Promise<readonly ListedTeacher[]> {
  return within(place, (database) => createTeacherStore(database, clock).list());
}
