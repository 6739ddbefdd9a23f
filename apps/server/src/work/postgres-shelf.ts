/**
 * Work in the database of the store, where all its servers find it: a queue of pg-boss, in a schema of its own.
 *
 * Conventions: pg-boss gives each piece of work to one server, and again where that failed; beside it stands who holds a
 * piece of work and until when, so that one whose server was killed is given to the next after seconds and not after the
 * hours that a film may take. The schema is made with the first piece of work.
 * Source: pg-boss 10, the last line for Node 20; PostgreSQL 15 documentation, 9.27.10 "Advisory Lock Functions".
 */
import { CompiledQuery, type Kysely, sql } from 'kysely';
import PgBoss from 'pg-boss';
import type { Tables } from '../store/tables.ts';
import { HELD_MS, MOST_TRIES, type NewWork, type Work, type WorkAt, type WorkShelf } from './work-shelf.ts';

/** What every name of a schema ends with. */
const SCHEMA_ENDING = '_work';

/** Longer than any work takes; pg-boss takes less than a day. */
const LONGEST_SECONDS = 23 * 3600;

/** What pg-boss calls how a piece of work is. */
const AT: Readonly<Record<string, WorkAt>> = {
  created: 'waiting',
  retry: 'waiting',
  active: 'begun',
  completed: 'done',
};

interface Row {
  readonly id: string;
  readonly kind: string;
  readonly of_what: string;
  readonly told: string | null;
  readonly is_failed: boolean;
  readonly state: string | null;
  readonly idle_ms: number;
}

function workOf({ id, kind, of_what: of, told, is_failed, state, idle_ms }: Row): Work {
  const at = is_failed ? 'failed' : (AT[state ?? ''] ?? 'failed');
  return { id, kind, of, at, told, idleMs: Math.round(idle_ms) };
}

/** A shelf over an open database. @param kinds of work that there are @param heldMs milliseconds for which work is held after it was last said to be */
export function openPostgresShelf(
  database: Kysely<Tables>,
  kinds: readonly string[],
  heldMs = HELD_MS,
): WorkShelf {
  let opening: Promise<{ readonly boss: PgBoss; readonly schema: string }> | null = null;
  let named: string | null = null;
  const nameOfSchema = async (): Promise<string> => {
    if (named !== null) return named;
    const { rows } = await sql<{ name: string }>`select current_schema() || ${SCHEMA_ENDING} as name`.execute(
      database,
    );
    named = rows[0]?.name ?? `public${SCHEMA_ENDING}`;
    return named;
  };
  const begin = async () => {
    const schema = await nameOfSchema();
    const db = {
      executeSql: async (text: string, values: unknown[] = []) => ({
        rows: [...(await database.executeQuery(CompiledQuery.raw(text, values))).rows],
      }),
    };
    const boss = new PgBoss({ db, schema, schedule: false });
    // what goes wrong beside everything else goes wrong again for whoever asks
    boss.on('error', () => undefined);
    await boss.start();
    for (const kind of kinds) await boss.createQueue(kind);
    await sql`create table if not exists ${sql.table(`${schema}.held`)} (id uuid primary key, kind text not null,
      of_what text not null, told text, is_failed boolean not null default false, holder text,
      held_until timestamptz not null default '-infinity', asked_at timestamptz not null default now())`.execute(
      database,
    );
    return { boss, schema };
  };
  const open = () => {
    opening ??= begin().catch((error: unknown) => {
      opening = null;
      throw error;
    });
    return opening;
  };
  /** Opens it where any server has made it; null where there never was any work. */
  const openIfThere = async () => {
    if (opening) return opening;
    const name = `${await nameOfSchema()}.held`;
    const there = await sql<{ name: string | null }>`select to_regclass(${name})::text as name`.execute(
      database,
    );
    return there.rows[0]?.name ? open() : null;
  };
  const find = async (where = sql`true`): Promise<readonly Row[]> => {
    const opened = await openIfThere();
    if (!opened) return [];
    const { rows } = await sql<Row>`select h.*, j.state::text as state,
        (extract(epoch from now() - h.asked_at) * 1000)::float8 as idle_ms
      from ${sql.table(`${opened.schema}.held`)} h left join ${sql.table(`${opened.schema}.job`)} j on j.id = h.id
      where ${where} order by j.created_on`.execute(database);
    return rows;
  };
  /** Changes what stands beside work. @returns of how many pieces of work */
  const change = async (rest: ReturnType<typeof sql>): Promise<number> => {
    const opened = await openIfThere();
    if (!opened) return 0;
    const done = await sql`update ${sql.table(`${opened.schema}.held`)} ${rest}`.execute(database);
    return Number(done.numAffectedRows ?? 0n);
  };
  const until = sql`now() + ${heldMs} * interval '1 millisecond'`;
  /** Gives back what nobody holds any more; one server at a time, so that none is given back twice. */
  const giveBackLapsed = async ({ boss, schema }: Awaited<ReturnType<typeof begin>>, kind: string) => {
    const held = sql`greatest(h.held_until, j.started_on + ${heldMs} * interval '1 millisecond')`;
    await database.transaction().execute(async (inside) => {
      const lock = sql<{
        isOurs: boolean;
      }>`select pg_try_advisory_xact_lock(hashtextextended(${schema}, 0)) as "isOurs"`;
      if (!(await lock.execute(inside)).rows[0]?.isOurs) return;
      const lapsed = await sql<{ id: string }>`select h.id from ${sql.table(`${schema}.held`)} h
        join ${sql.table(`${schema}.job`)} j on j.id = h.id
        where h.kind = ${kind} and j.state = 'active' and ${held} < now()`.execute(inside);
      for (const { id } of lapsed.rows) await boss.fail(kind, id);
    });
  };
  const take = async (kind: string, holder: string): Promise<NewWork | null> => {
    const opened = await openIfThere();
    if (!opened) return null;
    await giveBackLapsed(opened, kind);
    const [job] = await opened.boss.fetch<{ readonly of: string }>(kind);
    if (!job) return null;
    const isThere = await change(sql`set holder = ${holder}, held_until = ${until} where id = ${job.id}`);
    if (isThere > 0) return { id: job.id, kind, of: job.data.of };
    await opened.boss.deleteJob(kind, job.id);
    return null;
  };
  return {
    take,
    add: async ({ id, kind, of }) => {
      const { boss, schema } = await open();
      await sql`insert into ${sql.table(`${schema}.held`)} (id, kind, of_what) values (${id}, ${kind}, ${of})`.execute(
        database,
      );
      const terms = { id, retryLimit: MOST_TRIES - 1, retryDelay: 0, expireInSeconds: LONGEST_SECONDS };
      await boss.send(kind, { of }, terms);
    },
    find: async (id) => (await find(sql`h.id = ${id}`)).map(workOf)[0] ?? null,
    list: async () => (await find()).map(workOf),
    ask: async (id) => void (await change(sql`set asked_at = now() where id = ${id}`)),
    askAll: async () => void (await change(sql`set asked_at = now()`)),
    hold: async (id, holder, told) =>
      (await change(
        sql`set held_until = ${until}, told = coalesce(${told}, told) where id = ${id} and holder = ${holder}`,
      )) > 0,
    end: async (id, holder, { at, told }) => {
      const { boss } = await open();
      const isOurs = await change(
        sql`set told = coalesce(${told}, told), is_failed = ${at === 'failed'} where id = ${id} and holder = ${holder}`,
      );
      const [work] = isOurs > 0 ? await find(sql`h.id = ${id}`) : [];
      if (work) await boss.complete(work.kind, id);
    },
    letGo: async (id, holder) => {
      const { boss } = await open();
      const [work] = await find(sql`h.id = ${id} and h.holder = ${holder} and j.state = 'active'`);
      if (work) await boss.fail(work.kind, id);
    },
    remove: async (id) => {
      const opened = await openIfThere();
      if (!opened) return false;
      const { rows } = await sql<{ kind: string }>`delete from ${sql.table(`${opened.schema}.held`)}
        where id = ${id} returning kind`.execute(database);
      for (const { kind } of rows) await opened.boss.deleteJob(kind, id);
      return rows.length > 0;
    },
    close: async () => {
      const opened = await opening?.catch(() => null);
      await opened?.boss.stop({ graceful: false });
    },
  };
}
