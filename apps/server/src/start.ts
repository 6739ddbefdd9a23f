/** Starting the desk's server. */
import { DESK_DIR, InputError } from '@shedbook/host';
import { defaultDataDir } from './data-dir.ts';
import { createApp } from './http/app.ts';
import { seedLessons } from './seed.ts';
import { createSheetMaker, type SheetMaker } from './sheet/sheet-maker.ts';
import { createLessonStore, type LessonStore } from './store/lessons.ts';
import { openDatabase } from './store/open.ts';
import { createStudentStore, type StudentStore } from './store/students.ts';

/** How the server is started; everything has a default. */
export interface StartOptions {
  /** Number of the TCP port; 0 takes any free one. */
  readonly port?: number;
  /** Loopback only when left out. */
  readonly host?: string;
  /** Folder of the store; the user's data folder when left out. */
  readonly dataDir?: string;
  /** Folder of the built desk. */
  readonly staticDir?: string;
  /** Folder with demo lessons for the first visit; none when left out. */
  readonly seedLessonsDir?: string;
  /** Engraves the lesson that was changed last while nobody waits, so that the first print is as quick as any. */
  readonly warmsUp?: boolean;
}

/** A running server. */
export interface RunningServer {
  /** Address for a browser, with a slash at the end. */
  readonly url: string;
  close(): Promise<void>;
}

/** Port of the desk when nobody asks for another. */
export const DEFAULT_PORT = 4747;

const DEFAULT_HOST = '127.0.0.1';
const KEEP_REMOVED_DAYS = 30;

async function prepare(
  store: LessonStore,
  students: StudentStore,
  seedLessonsDir: string | undefined,
): Promise<void> {
  const kept = new Date(Date.now() - KEEP_REMOVED_DAYS * 24 * 3_600_000);
  await store.forgetRemovedBefore(kept);
  await students.forgetRemovedBefore(kept);
  if (seedLessonsDir) await seedLessons(store, seedLessonsDir);
}

/** Milliseconds after the start that are left to the first page. */
const WARM_UP_AFTER_MS = 1000;

/** Gets the engraver ready beside everything else; a lesson that cannot be engraved is no fault of the start. */
function warmUp(store: LessonStore, sheets: SheetMaker): void {
  const engrave = async () => {
    const [latest] = await store.list();
    if (latest) await sheets.pages(latest.text, 'en');
  };
  setTimeout(() => void engrave().catch(() => undefined), WARM_UP_AFTER_MS).unref();
}

/** What is wrong with the port that was asked for, where it is that. */
function portFault(error: unknown, host: string, port: number): unknown {
  switch ((error as { readonly code?: string }).code) {
    case 'EADDRINUSE':
      return new InputError(({ words }) => words.serve.portTaken({ host, port: `${port}` }));
    case 'EACCES':
      return new InputError(({ words }) => words.serve.portForbidden({ port: `${port}` }));
    case 'EADDRNOTAVAIL':
      return new InputError(({ words }) => words.serve.noSuchHost({ host }));
    default:
      return error;
  }
}

/**
 * Starts the desk's server.
 * @throws InputError when the port is taken, another error when the store cannot be opened.
 */
export async function startServer(options: StartOptions = {}): Promise<RunningServer> {
  const host = options.host ?? DEFAULT_HOST;
  const port = options.port ?? DEFAULT_PORT;
  const dataDir = options.dataDir ?? defaultDataDir(process.env, process.platform);
  const database = openDatabase(dataDir);
  const store = createLessonStore(database, () => new Date());
  const students = createStudentStore(database, () => new Date());
  const sheets = createSheetMaker();
  const packs = createSheetMaker();
  const app = createApp({
    store,
    students,
    sheets,
    packs,
    staticDir: options.staticDir ?? DESK_DIR,
    host,
  });
  try {
    await prepare(store, students, options.seedLessonsDir);
    const url = await app.listen({ host, port });
    if (options.warmsUp) warmUp(store, sheets);
    return {
      url: `${url}/`,
      close: async () => {
        await app.close();
        await sheets.close();
        await packs.close();
        await store.close();
      },
    };
  } catch (error) {
    await store.close();
    throw portFault(error, host, port);
  }
}
