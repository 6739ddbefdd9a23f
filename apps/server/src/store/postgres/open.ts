/**
 * Opening the store in PostgreSQL: one pool of connections, the schema brought up to date by one server alone, and what
 * stands in the way told in words.
 *
 * Conventions: what was acknowledged is on the disk, whatever the database does by default.
 * Source: PostgreSQL 15 documentation, 20.5.1 "synchronous_commit" and 9.27.10 "Advisory Lock Functions".
 */
import { InputError } from '@shedbook/host';
import { Kysely, PostgresDialect, sql, type Transaction } from 'kysely';
import pg from 'pg';
import { alone } from '../engine.ts';
import { refuseNewer, STORE_VERSION } from '../open.ts';
import type { Tables } from '../tables.ts';
import { checkedAddress, postgresFault } from './faults.ts';
import { POSTGRES_MIGRATIONS } from './schema.ts';

/** Connections of one server at most. */
const MOST_CONNECTIONS = 10;

/** Milliseconds that a connection is waited for. */
const WAIT_MS = 10_000;

/** PostgreSQL's own numbers of its types `int8` and `numeric`, as sums and counts are. */
const WHOLE_NUMBERS: ReadonlySet<number> = new Set([20, 1700]);

/** Numbers come as numbers, as they do from SQLite; nothing that is kept is beyond 2⁵³. */
const types: pg.CustomTypesConfig = {
  getTypeParser: (id, format) =>
    WHOLE_NUMBERS.has(id)
      ? Number
      : (pg.types.getTypeParser(id, format as 'text') as (text: string) => unknown),
};

const ON_DISK =
  "select set_config('synchronous_commit', 'on', false) where current_setting('synchronous_commit') = 'off'";

function poolOf(address: string): pg.Pool {
  const pool = new pg.Pool({
    ...{ connectionString: checkedAddress(address), types, application_name: 'shedbook' },
    ...{ max: MOST_CONNECTIONS, connectionTimeoutMillis: WAIT_MS, keepAlive: true },
  });
  // a database that goes away is told to whoever asks next
  pool.on('error', () => undefined);
  pool.on('connect', (client) => {
    client.on('error', () => undefined);
    client.query(ON_DISK).catch(() => undefined);
  });
  return pool;
}

/** Version of the store in a database; 0 where there is none yet. */
async function postgresVersion(database: Kysely<Tables>): Promise<number> {
  const there = await sql<{ name: string | null }>`select to_regclass('store_version')::text as name`.execute(
    database,
  );
  if (!there.rows[0]?.name) return 0;
  const found = await sql<{ version: number }>`select version::bigint as version from store_version`.execute(
    database,
  );
  return found.rows[0]?.version ?? 0;
}

/** Refuses a database whose texts are in another encoding, since it could not keep every text. */
async function refuseEncoding(database: Kysely<Tables>): Promise<void> {
  const { rows } = await sql<{ server_encoding: string }>`show server_encoding`.execute(database);
  const found = rows[0]?.server_encoding ?? '';
  if (found !== 'UTF8') throw new InputError(({ words }) => words.store.postgres.encoding({ found }));
}

async function bringUpToDate(inside: Transaction<Tables>): Promise<void> {
  const before = await postgresVersion(inside);
  const steps = POSTGRES_MIGRATIONS.filter(({ version }) => version > before);
  if (steps.length === 0) return;
  await sql`create table if not exists store_version (version integer not null)`.execute(inside);
  for (const { statements } of steps) await sql.raw(statements).execute(inside);
  await sql`delete from store_version`.execute(inside);
  await sql`insert into store_version values (${STORE_VERSION})`.execute(inside);
}

/** Brings the store up to date: one server does so, and another that starts at the same time waits and finds it done. */
async function migrate(database: Kysely<Tables>): Promise<void> {
  await refuseEncoding(database);
  const version = await postgresVersion(database);
  refuseNewer(version);
  if (version === STORE_VERSION) return;
  // a transaction that was begun before its turn would not see which tables another server has made meanwhile
  await alone(database, 'migrations', () => database.transaction().execute(bringUpToDate));
}

function connect(address: string): Kysely<Tables> {
  return new Kysely<Tables>({ dialect: new PostgresDialect({ pool: poolOf(address) }) });
}

/** What comes of a database; it is closed again where that fails. @throws InputError where it stands in the way */
async function first<Result>(
  address: string,
  work: (database: Kysely<Tables>) => Promise<Result>,
): Promise<Result> {
  const database = connect(address);
  try {
    return await work(database);
  } catch (error) {
    await database.destroy();
    throw postgresFault(error, address);
  }
}

/** A store that is only looked at, with its version. @throws InputError as {@link openPostgres}, but for one that is newer */
export function lookInto(
  address: string,
): Promise<{ readonly database: Kysely<Tables>; readonly version: number }> {
  return first(address, async (database) => ({ database, version: await postgresVersion(database) }));
}

/**
 * Opens (and creates or brings up to date) the store in a database.
 * @throws InputError where it does not answer, lets nobody in, cannot be written, or is newer than this
 */
export function openPostgres(address: string): Promise<Kysely<Tables>> {
  return first(address, async (database) => {
    await migrate(database);
    return database;
  });
}
