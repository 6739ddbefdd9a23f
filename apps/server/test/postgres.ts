/** PostgreSQL for the store's tests: one server for a file of tests, and a schema of its own for every store. */
import { afterAll, beforeAll } from 'vitest';
import { type RunningPostgres, startPostgres } from '../../../internal/testing/postgres.mjs';
import { inDatabase, type TestStore } from './stores.ts';

/** Stores in a server that runs while the tests of a file do. */
export interface PostgresForTests extends TestStore {
  /** Address of a store of its own, an empty one. */
  readonly newAddress: () => Promise<string>;
  /** Asks the server itself. */
  readonly ask: RunningPostgres['ask'];
}

/** A server for every test of a file. */
export function sharedPostgres(): PostgresForTests {
  let running: RunningPostgres | null = null;
  let count = 0;
  const known = new Map<string, Promise<string>>();
  beforeAll(async () => {
    // nobody takes the power away in these tests
    running = await startPostgres(['fsync=off', 'full_page_writes=off']);
  });
  afterAll(async () => running?.stop());
  const ask: RunningPostgres['ask'] = async (statement) => (await running?.ask(statement)) ?? [];
  const newAddress = async () => {
    count += 1;
    const schema = `store_${count}`;
    await ask(`create schema ${schema}`);
    return `${running?.address}&options=${encodeURIComponent(`-c search_path=${schema}`)}`;
  };
  const addressOf = (folder: string) => {
    const address = known.get(folder) ?? newAddress();
    known.set(folder, address);
    return address;
  };
  return { ...inDatabase(addressOf), newAddress, ask };
}
