/** `shedbook serve`: the teacher's desk in the browser. */

import type { Examination, Restored, Saved, WrittenBackup } from '@shedbook/host';
import { DEMO_DIR } from '@shedbook/host';
import type { SaidEntry } from '@shedbook/words';
import type { Speaker } from '../terminal.ts';

/** What the command line asks for. */
export interface ServeRequest {
  /** Number of the TCP port. */
  readonly port?: number;
  readonly host?: string;
  /** Address by which others reach it. */
  readonly address?: string;
  /** Folder that lessons are kept in. */
  readonly data?: string;
  readonly open?: boolean;
}

/** How the desk is started; its own defaults hold where nothing is said. */
export interface DeskOptions {
  /** Number of the TCP port; 0 takes any free one. */
  readonly port?: number;
  readonly host?: string;
  /** Address by which others reach it, e.g. through a program that stands before it. */
  readonly address?: string;
  /** Folder that lessons are kept in. */
  readonly dataDir?: string;
  /** Folder with lessons for the first visit. */
  readonly seedLessonsDir?: string;
  /** Whether the engraver is got ready while nobody waits. */
  readonly warmsUp?: boolean;
}

/** A desk that answers. */
export interface RunningDesk {
  /** Address for a browser. */
  readonly url: string;
  close(): Promise<void>;
}

/** One entry of the journal. */
export interface JournalLine extends SaidEntry {
  /** ISO 8601, in UTC. */
  readonly at: string;
}

/** A teacher, as they are listed. */
export interface SchoolTeacher {
  /** Empty where the first teacher never said it. */
  readonly name: string;
  readonly role: 'head' | 'teacher';
  /** How many are on their roster. */
  readonly students: number;
  /** Whether they ever chose a passphrase. */
  readonly hasJoined: boolean;
}

/** Where teachers are let in. */
interface School {
  readonly address?: string | undefined;
  readonly dataDir?: string | undefined;
}

/** What `serve` needs of a server. */
export interface Desk {
  /** @throws InputError when it cannot start. */
  readonly startServer: (options: DeskOptions) => Promise<RunningDesk>;
  readonly openBrowser: (url: string) => void;
  /** @throws InputError when it cannot be set. */
  readonly setPassphrase: (passphrase: string, dataDir?: string) => Promise<void>;
  /** Lets a teacher in. @returns the address that their letter opens @throws InputError where the name is none, or there is no passphrase yet */
  readonly inviteTeacher: (name: string, school: School) => Promise<string>;
  /** The teachers, the first one first. */
  readonly listTeachers: (school: School) => Promise<readonly SchoolTeacher[]>;
  /** @throws InputError when it cannot be made; an old file of this name stays then. */
  readonly backUp: (dataDir: string | undefined, file: string) => Promise<WrittenBackup>;
  /** @throws InputError when the backup is not whole; nothing is changed then. */
  readonly restore: (dataDir: string | undefined, file: string) => Promise<Restored>;
  /** The last entries of the journal of a folder, the last first. @throws InputError where there is none */
  readonly readJournal: (dataDir: string | undefined, most: number) => Promise<readonly JournalLine[]>;
  /** Looks at a store and changes nothing. */
  readonly examineStore: (dataDir?: string) => Promise<Examination>;
  /** Saves what can be read of one as files. */
  readonly saveReadable: (dataDir: string | undefined, folder: string) => Promise<Saved>;
}

/** Loads the server when it is asked for, so that no other command waits for it. */
export type LoadDesk = () => Promise<Desk>;

/**
 * Starts the desk and says where it is.
 * @returns the running desk; it serves until it is closed.
 * @throws InputError when it cannot start, e.g. because its port is taken.
 */
export async function serve(
  request: ServeRequest,
  terminal: Speaker,
  loadDesk: LoadDesk,
): Promise<RunningDesk> {
  const { port, host, address, data } = request;
  const { startServer, openBrowser } = await loadDesk();
  const desk = await startServer({
    seedLessonsDir: DEMO_DIR,
    warmsUp: true,
    ...(port === undefined ? {} : { port }),
    ...(host === undefined ? {} : { host }),
    ...(address === undefined ? {} : { address }),
    ...(data === undefined ? {} : { dataDir: data }),
  });
  const { at, runs } = terminal.catalogue.words.serve;
  terminal.say(at({ url: desk.url }));
  terminal.say(runs);
  if (request.open ?? true) openBrowser(desk.url);
  return desk;
}

/** Serves until the process is told to stop (Ctrl+C), then closes what is open. @throws InputError as {@link serve} */
export async function serveUntilStopped(
  request: ServeRequest,
  terminal: Speaker,
  loadDesk: LoadDesk,
): Promise<void> {
  const stopped = new Promise<void>((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, () => resolve());
  });
  const desk = await serve(request, terminal, loadDesk);
  await stopped;
  await desk.close();
}
