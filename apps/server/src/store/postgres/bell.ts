/**
 * A bell that servers which share a database ring for each other: something of a teacher's students
 * changed, and nothing of what.
 *
 * Conventions: whoever rings does not hear it; a ring that comes while there is no connection is lost, as a desk that
 * was asleep has missed it, and whoever was cut off hears one once they are back.
 * Source: PostgreSQL 15 documentation, "LISTEN" and "NOTIFY".
 */
import { randomUUID } from 'node:crypto';
import pg from 'pg';

/** The bell of one server. */
export interface Bell {
  /** Rings for the others. @param teacher of whose students something changed; null for everybody's */
  ring(teacher: string | null): void;
  close(): Promise<void>;
}

/** Milliseconds before a connection is tried again. */
const AGAIN_MS = 1000;

/** A connection that hears. */
async function connect(
  address: string,
  heard: (ringer: string) => void,
  gone: () => void,
): Promise<pg.Client> {
  const client = new pg.Client({
    connectionString: address,
    keepAlive: true,
    application_name: 'shedbook bell',
  });
  client.on('notification', ({ payload }) => heard(payload ?? ''));
  client.on('error', () => undefined);
  client.on('end', gone);
  await client.connect();
  const { rows } = await client.query<{ channel: string }>(
    "select 'shedbook ' || current_schema() as channel",
  );
  await client.query(`listen ${client.escapeIdentifier(rows[0]?.channel ?? '')}`);
  return client;
}

/** Hangs up a bell. @param onRing another server rang for a teacher; for everybody where it may have */
export async function hangBell(address: string, onRing: (teacher: string | null) => void): Promise<Bell> {
  const own = randomUUID();
  let client: pg.Client | null = null;
  let isClosed = false;
  let timer: NodeJS.Timeout | null = null;
  let isRinging = false;
  const due = new Set<string>();
  const heard = (payload: string) => {
    const [ringer, teacher] = payload.split(' ');
    if (ringer !== own) onRing(teacher ?? null);
  };
  const gone = () => {
    client = null;
    if (isClosed) return;
    timer = setTimeout(() => void begin().then(() => onRing(null), gone), AGAIN_MS);
    timer.unref();
  };
  const begin = async () => {
    client = await connect(address, heard, gone);
  };
  /** Rings until nothing has changed since: one ring tells of all that came before it to one teacher. */
  const ring = async () => {
    for (const told of due) {
      due.delete(told);
      const rung = client?.query("select pg_notify('shedbook ' || current_schema(), $1)", [told]);
      await rung?.catch(() => undefined);
    }
    isRinging = false;
  };
  await begin();
  return {
    ring: (teacher) => {
      due.add(teacher === null ? own : `${own} ${teacher}`);
      if (isRinging) return;
      isRinging = true;
      void ring();
    },
    close: async () => {
      isClosed = true;
      if (timer) clearTimeout(timer);
      await client?.end();
    },
  };
}
