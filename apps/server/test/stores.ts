/** The databases that the store's tests are run in. */
import type { Kysely } from 'kysely';
import { backUp, restore } from '../src/backup/by-command.ts';
import { type RunningServer, type StartOptions, setPassphrase, startServer } from '../src/start.ts';
import { openDatabase } from '../src/store/open.ts';
import { openStore } from '../src/store/open-store.ts';
import type { Tables } from '../src/store/tables.ts';
import { startTestServer, temporaryFolder } from './temporary.ts';

/** A kind of database, and what is done with the stores in it. */
export interface TestStore {
  /** Address of the database that goes with a folder; null where the store is a file in it. */
  readonly addressOf: (folder: string) => Promise<string | null>;
  /** Opens the store of a folder, an empty one at first. */
  readonly open: (folder: string) => Promise<Kysely<Tables>>;
  /** A server in a folder, closed when the test ends. */
  readonly startTestServer: (options?: StartOptions) => Promise<RunningServer>;
  /** A server in a folder, which the test closes. */
  readonly start: (options: StartOptions & { readonly dataDir: string }) => Promise<RunningServer>;
  readonly backUp: (folder: string, file: string) => ReturnType<typeof backUp>;
  readonly restore: (folder: string, file: string) => ReturnType<typeof restore>;
  readonly setPassphrase: (passphrase: string, folder: string) => Promise<void>;
}

/** The teacher's own computer: a file of SQLite in the folder. */
export const IN_A_FILE: TestStore = {
  ...{ startTestServer, start: startServer, backUp, restore, setPassphrase },
  addressOf: async () => null,
  open: async (folder) => openDatabase(folder),
};

/** A database beside the folder. @param addressOf gives an empty one for every folder */
export function inDatabase(addressOf: (folder: string) => Promise<string>): TestStore {
  const placed = async (options: StartOptions) => {
    const dataDir = options.dataDir ?? temporaryFolder();
    return { ...options, dataDir, storeAddress: await addressOf(dataDir) };
  };
  return {
    addressOf,
    open: async (folder) => openStore({ dataDir: folder, address: await addressOf(folder) }),
    startTestServer: async (options = {}) => startTestServer(await placed(options)),
    start: async (options) => startServer(await placed(options)),
    backUp: async (folder, file) => backUp(folder, file, await addressOf(folder)),
    restore: async (folder, file) => restore(folder, file, await addressOf(folder)),
    setPassphrase: async (passphrase, folder) => setPassphrase(passphrase, folder, await addressOf(folder)),
  };
}
