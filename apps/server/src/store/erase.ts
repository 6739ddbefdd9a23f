/** Erasing for good: what was deleted is overwritten in the file, in its log and in every copy that was made of it. */
import { readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { type Kysely, sql } from 'kysely';
import { isPostgres } from './engine.ts';
import type { Tables } from './tables.ts';

/** Names of copies of the store; see `copyName`. */
export const COPY = /^lessons\.before-\d+\.sqlite(?:\.\d+)?$/;

/**
 * Leaves nothing of what was deleted: SQLite has overwritten it with zeros as it deleted; here that is carried from the
 * log into the file, the log is emptied, and copies from before are deleted.
 * PostgreSQL frees the room of what was deleted by itself, and what it has written of it goes with its own log.
 * Source: SQLite documentation, "PRAGMA wal_checkpoint": TRUNCATE leaves a log of zero bytes.
 */
export async function overwriteErased(database: Kysely<Tables>, dataDir: string): Promise<void> {
  if (isPostgres(database)) return;
  await sql.raw('pragma wal_checkpoint(truncate)').execute(database);
  for (const name of readdirSync(dataDir)) if (COPY.test(name)) rmSync(join(dataDir, name));
}
