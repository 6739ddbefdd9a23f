/** `shedbook teacher`: lets another teacher come to the desk, or lists who comes. */
import type { Speaker } from '../terminal.ts';
import type { LoadDesk, SchoolTeacher } from './serve.ts';

/** What the command line asks for. */
export interface TeacherRequest {
  /** What the teacher is called; everybody is listed where it is left out. */
  readonly name?: string;
  /** Address by which teachers reach the desk. */
  readonly address?: string;
  /** Folder that lessons are kept in. */
  readonly data?: string;
}

/** A line about a teacher. */
function lineOf({ name, role, students, hasJoined }: SchoolTeacher, { catalogue }: Speaker): string {
  const words = catalogue.words.teacher;
  const facts = {
    name: name === '' ? words.unnamed : name,
    role: words.roles[role],
    students: words.students({ n: students }),
  };
  return hasJoined ? words.here(facts) : words.invited(facts);
}

/** Does it. @throws InputError where the name is none, or the desk has no passphrase yet */
export async function teacher(
  { name, address, data }: TeacherRequest,
  terminal: Speaker,
  loadDesk: LoadDesk,
): Promise<void> {
  const { inviteTeacher, listTeachers } = await loadDesk();
  const words = terminal.catalogue.words.teacher;
  const place = { address, dataDir: data };
  if (name === undefined) {
    for (const each of await listTeachers(place)) terminal.say(lineOf(each, terminal));
    return;
  }
  const letter = await inviteTeacher(name, place);
  terminal.say(words.letter({ name: name.trim() }));
  terminal.say(letter);
  const [first] = await listTeachers(place);
  if (first?.name === '') terminal.say(words.first);
}
