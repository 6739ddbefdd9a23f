import { DESK_DIR, InputError } from '@shedbook/host';
import { LONGEST_PASSPHRASE, SHORTEST_PASSPHRASE } from '@shedbook/routes';
import type { Kysely } from 'kysely';
import { eraseInKept } from './backup/restore.ts';
import { createFilmMaker } from './films/film-maker.ts';
import { createApp } from './http/app.ts';
import { isLoopback } from './http/guard.ts';
import { createMakers, type Makers } from './makers.ts';
import { seedLessons } from './seed.ts';
import type { SheetMaker } from './sheet/sheet-maker.ts';
import { type BookStore, createBookStore } from './store/books.ts';
import { createDemonstrationStore, type DemonstrationStore } from './store/demonstrations.ts';
import { alone } from './store/engine.ts';
import { overwriteErased } from './store/erase.ts';
import { createHourStore, type HourStore } from './store/hours.ts';
import { type Journal, openJournal } from './store/journal.ts';
import { createLessonStore, type LessonStore } from './store/lessons.ts';
import { createLinkStore, type LinkStore } from './store/links.ts';
import { type MediaStore, openMedia } from './store/media-files.ts';
import { openFault } from './store/open.ts';
import { hasStore, openStore } from './store/open-store.ts';
import { openTakesOf, settleTakes } from './store/open-takes.ts';
import { createOwners, type Owners } from './store/owners.ts';
import { createPasskeyStore, type PasskeyStore } from './store/passkeys.ts';
import { placeOf, type StorePlace } from './store/place.ts';
import { createSignInStore, type SignInStore } from './store/sign-in.ts';
import { openSteadyClock, type SteadyClock } from './store/steady-clock.ts';
import { createStudentStore, type StudentStore } from './store/students.ts';
import { type SumUp, sumUpAtOnce } from './store/summary.ts';
import type { Tables } from './store/tables.ts';
import type { TakeFiles } from './store/take-files.ts';
import { createTakeStore, type TakeStore } from './store/takes.ts';
import { createTeacherStore, type TeacherStore } from './store/teachers.ts';
import { shareChanges } from './week/shared-changes.ts';
import { openQueue } from './work/open-queue.ts';

/** How the server is started; everything has a default. */
export interface StartOptions {
  /** Number of the TCP port; 0 takes any free one. */
  readonly port?: number;
  /** Address that it listens on; one that others reach asks for a passphrase that was set before. */
  readonly host?: string;
  /** Address by which others reach it, e.g. through a program that stands before it; asks for a passphrase, too. */
  readonly address?: string;
  /** Milliseconds in which a request must have come whole. */
  readonly requestTimeoutMs?: number;
  /** Folder of the store; the user's data folder when left out. */
  readonly dataDir?: string;
  /** Address of a PostgreSQL database; the one that is set, or the folder's own file, when left out. */
  readonly storeAddress?: string;
  /** Folder of the built desk. */
  readonly staticDir?: string;
  /** Folder with demo lessons for the first visit; none when left out. */
  readonly seedLessonsDir?: string;
  /** Engraves the lesson that was changed last while nobody waits, so that the first print is as quick as any. */
  readonly warmsUp?: boolean;
  /** Shared with other servers, and closed by whoever made them; the server's own when left out. */
  readonly makers?: Makers;
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
const REQUEST_TIMEOUT_MS = 30_000;
const KEEP_REMOVED_DAYS = 30;

/** Milliseconds between two looks at the computer's clock. */
const LOOK_MS = 3_600_000;

/** Overwrites what was erased in the store and in all that was kept of it. */
async function overwriteEverywhere(database: Kysely<Tables>, dataDir: string): Promise<void> {
  await overwriteErased(database, dataDir);
  await eraseInKept(database, dataDir);
}

/** Empties the bin of what has lain in it long enough. */
async function emptyBin({
  store,
  books,
  students,
  takes,
  media,
  clock,
  dataDir,
  database,
}: OpenStore): Promise<void> {
  const kept = new Date(clock.now().getTime() - KEEP_REMOVED_DAYS * 24 * 3_600_000);
  const lessons = await store.forgetRemovedBefore(kept);
  const volumes = await books.forgetRemovedBefore(kept);
  const names = await takes.withFiles(() => students.forgetRemovedBefore(kept));
  if (lessons + volumes + names > 0) await overwriteEverywhere(database, dataDir);
  await takes.sweep();
  await media.sweep();
}

/** Erases takes that are too old, and writes it into the journal. */
async function ageTakes({ takes, journal, dataDir, database }: OpenStore): Promise<void> {
  const aged = await takes.age();
  for (const [student, n] of aged) await journal.write({ who: 'server', did: 'takes-aged', student, n });
  await journal.trim();
  if (aged.size > 0) await overwriteEverywhere(database, dataDir);
}

interface OpenStore {
  readonly dataDir: string;
  readonly database: Kysely<Tables>;
  readonly store: LessonStore;
  readonly students: StudentStore;
  readonly links: LinkStore;
  readonly signIn: SignInStore;
  readonly takeFiles: TakeFiles;
  readonly teachers: TeacherStore;
  readonly owners: Owners;
  readonly passkeys: PasskeyStore;
  readonly takes: TakeStore;
  readonly media: MediaStore;
  readonly demonstrations: DemonstrationStore;
  readonly hours: HourStore;
  readonly books: BookStore;
  readonly journal: Journal;
  readonly clock: SteadyClock;
}

/** The stores of a folder; what is erased in them is overwritten at once. */
async function openStores(place: StorePlace, sumUp: SumUp = sumUpAtOnce): Promise<OpenStore> {
  const { dataDir } = place;
  const database = await openStore(place);
  const wall = () => new Date();
  try {
    const clock = await openSteadyClock(createLessonStore(database, wall), wall);
    const store = createLessonStore(database, wall, clock.now, sumUp);
    const students = createStudentStore(database, wall, clock.now);
    const hours = createHourStore(database, wall);
    const books = createBookStore(database, wall, clock.now);
    const takeFiles = await openTakesOf(place);
    const takes = createTakeStore(database, takeFiles, wall, clock.now);
    const media = openMedia(database, dataDir);
    const demonstrations = createDemonstrationStore(database, wall);
    const eraseLesson = async (id: string) => {
      const named = await media.namedBy(id);
      const isErased = await store.erase(id);
      if (isErased) await media.eraseUnnamed(named);
      return isErased;
    };
    const overwritten =
      <Ids extends readonly unknown[], Erased>(erase: (...ids: Ids) => Promise<Erased>) =>
      async (...ids: Ids) => {
        const erased = await erase(...ids);
        if (erased) await overwriteEverywhere(database, dataDir);
        return erased;
      };
    return {
      ...{ dataDir, database, clock, takeFiles, takes, media },
      journal: openJournal(database, wall),
      hours: { ...hours, erase: overwritten(hours.erase) },
      books: { ...books, erase: overwritten(books.erase) },
      demonstrations: { ...demonstrations, erase: overwritten(demonstrations.erase) },
      links: createLinkStore(database, wall),
      signIn: createSignInStore(database, wall),
      teachers: createTeacherStore(database, wall),
      owners: createOwners(database),
      passkeys: createPasskeyStore(database, wall),
      store: { ...store, erase: overwritten(eraseLesson) },
      students: {
        ...students,
        erase: overwritten((id) => takes.withFiles(() => students.erase(id))),
        eraseTakenIn: overwritten(students.eraseTakenIn),
      },
    };
  } catch (error) {
    await database.destroy();
    throw error;
  }
}

/** Milliseconds after the start that are left to the first page. */
const WARM_UP_AFTER_MS = 1000;

/** Gets the list of lessons and the engraver ready beside everything else; a lesson that cannot be engraved is no fault of the start. */
function warmUp({ store, dataDir }: Pick<OpenStore, 'store' | 'dataDir'>, sheets: SheetMaker): void {
  const engrave = async () => {
    const [newest] = await store.shelf();
    const latest = newest && (await store.read(newest.summary.id));
    if (latest) await sheets.pages({ text: latest.text, language: 'en', dataDir }, { of: latest.id });
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

/** The origin of the address by which others reach the server. @throws InputError where it is none */
function outsideOf(address: string | undefined): string | null {
  if (address === undefined) return null;
  const url = URL.canParse(address) ? new URL(address) : null;
  const isWhole = url !== null && /^https?:$/.test(url.protocol) && url.pathname === '/' && url.search === '';
  if (!isWhole) throw new InputError(({ words }) => words.serve.noAddress({ address }));
  return url.origin;
}

/** Says that others may come only once there is a passphrase. */
function noPassphrase(host: string, outside: string | null): InputError {
  return new InputError(({ words }) => words.serve.noPassphrase({ address: outside ?? `--host ${host}` }));
}

/**
 * Starts the desk's server.
 * @throws InputError when the port is taken, others reach it and no passphrase was set, or the store cannot be opened.
 */
export async function startServer(options: StartOptions = {}): Promise<RunningServer> {
  const place = placeOf(options.dataDir, options.storeAddress);
  try {
    return await startIn(place, options);
  } catch (error) {
    throw openFault(error, place.dataDir);
  }
}

async function startIn(place: StorePlace, options: StartOptions): Promise<RunningServer> {
  const host = options.host ?? DEFAULT_HOST;
  const port = options.port ?? DEFAULT_PORT;
  const address = outsideOf(options.address);
  const isReached = !isLoopback(host) || address !== null;
  const { dataDir } = place;
  if (isReached && !(await hasStore(place))) throw noPassphrase(host, address);
  const makers = options.makers ?? createMakers();
  const { sheets, packs, imports } = makers;
  const open = await openStores(place, (text, of) => imports.sumUp(text, { of }));
  const { store, students, links, signIn, takes, media, demonstrations, hours, journal, clock } = open;
  if (isReached && !(await signIn.isSet())) {
    await store.close();
    throw noPassphrase(host, address);
  }
  const queue = await openQueue(place, open.database);
  const films = createFilmMaker({ queue, dataDir, now: () => performance.now() });
  const eraseLesson = async (id: string) => {
    await films.forget(id);
    return store.erase(id);
  };
  const shared = await shareChanges(place);
  const app = createApp({
    ...{
      store: { ...store, erase: eraseLesson },
      students,
      links,
      signIn,
      takes,
      media,
      demonstrations,
      hours,
      books: open.books,
      journal,
      changes: shared.changes,
      teachers: open.teachers,
      owners: open.owners,
      passkeys: open.passkeys,
      asksWho: async () => isReached || (await signIn.areSeveral()),
      sheets,
      packs,
      imports,
      films,
      ...{ place, dataDir },
    },
    staticDir: options.staticDir ?? DESK_DIR,
    where: { host, address },
    requestTimeoutMs: options.requestTimeoutMs ?? REQUEST_TIMEOUT_MS,
  });
  try {
    await alone(open.database, 'start', async () => {
      await settleTakes(open.database, place, open.takeFiles);
      await emptyBin(open);
      await ageTakes(open);
      if (options.seedLessonsDir) await seedLessons(store, options.seedLessonsDir);
    });
    const url = await app.listen({ host, port });
    if (options.warmsUp) warmUp(open, sheets);
    const tick = async () => {
      await clock.look();
      await ageTakes(open);
      // what could not be deleted while a bucket did not answer
      await takes.sweep();
    };
    const ticking = setInterval(() => void tick().catch(() => undefined), LOOK_MS);
    ticking.unref();
    return {
      url: `${url}/`,
      close: async () => {
        clearInterval(ticking);
        await app.close();
        if (!options.makers) await makers.close();
        await films.close();
        await shared.close();
        await store.close();
      },
    };
  } catch (error) {
    await films.close();
    await shared.close();
    await store.close();
    throw portFault(error, host, port);
  }
}

/**
 * Sets the passphrase of the desk in a folder; whoever had signed in has to do so again.
 * @throws InputError when it is too short or too long, or the store cannot be opened.
 */
export async function setPassphrase(
  passphrase: string,
  folder?: string,
  storeAddress?: string,
): Promise<void> {
  const length = [...passphrase].length;
  if (length < SHORTEST_PASSPHRASE || length > LONGEST_PASSPHRASE) {
    const bounds = { found: length, least: SHORTEST_PASSPHRASE, most: LONGEST_PASSPHRASE };
    throw new InputError(({ words }) => words.passphrase.length(bounds));
  }
  const { store, signIn, journal } = await openStores(placeOf(folder, storeAddress));
  try {
    await signIn.set(passphrase);
    await journal.write({ who: 'computer', did: 'passphrase-set' });
  } finally {
    await store.close();
  }
}
