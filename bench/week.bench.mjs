/**
 * The week between two lessons under attack and under the axe, in a file of SQLite and in PostgreSQL: private links and
 * sign-ins that are nearly right, every route as whoever has no business there, and servers that are killed while a student
 * sends and a teacher writes and listens, and while they do work.
 *
 * `SHEDBOOK_TOKENS`, `SHEDBOOK_KILLS` and `SHEDBOOK_SEED` set how much; `SHEDBOOK_WEEK_IN` names one of the databases,
 * `sqlite` or `postgresql`. In PostgreSQL two servers share the database, and both are killed.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setPassphrase, startServer } from '@shedbook/server';
import { killAgainAndAgain } from '../internal/testing/kills.mjs';
import { startPostgres } from '../internal/testing/postgres.mjs';
import { OUTSIDE, PASSPHRASE, tryAsStrangers } from '../internal/testing/strangers.mjs';
import { killWorkers } from '../internal/testing/work-kills.mjs';

export const name = 'week: strangers, and kill -9';

const TOKENS = Number(process.env.SHEDBOOK_TOKENS ?? 10_000);
const KILLS = Number(process.env.SHEDBOOK_KILLS ?? 200);
const SEED = Number(process.env.SHEDBOOK_SEED ?? 20_261_129);

/** What strangers got out of a desk. @param {string} dataDir @param {string} address of the database; empty for a file */
async function strangerRows(dataDir, address) {
  await setPassphrase(PASSPHRASE, dataDir, address);
  const server = await startServer({ port: 0, dataDir, storeAddress: address, address: OUTSIDE });
  try {
    const { asked, leaks, tokenMs } = await tryAsStrangers(server.url, TOKENS);
    for (const leak of leaks.slice(0, 20)) console.log(`  ${leak}`);
    return [
      {
        what: `${asked} questions on every route, ${TOKENS} links and ${TOKENS} sign-ins: let in`,
        value: leaks.length,
        unit: 'times',
      },
      { what: 'each link or sign-in was answered after', value: tokenMs, unit: 'ms' },
    ];
  } finally {
    await server.close();
  }
}

/** What servers lost that were killed. @param {string} dataDir @param {string} address @param {number} servers */
async function killRows(dataDir, address, servers) {
  const killed = await killAgainAndAgain(dataDir, KILLS, SEED, { address, servers });
  for (const broken of killed.broken.slice(0, 20)) console.log(`  ${broken}`);
  return [
    { what: `kill -9 (${KILLS}): lost, doubled or damaged`, value: killed.broken.length, unit: 'times' },
    { what: 'rows of practice acknowledged', value: killed.rows, unit: 'rows' },
    { what: 'takes acknowledged and there', value: killed.takes, unit: 'takes' },
    { what: 'answers of the teacher acknowledged', value: killed.heard, unit: 'answers' },
    { what: 'questions that the kill left unanswered', value: killed.unanswered, unit: 'questions' },
  ];
}

/** What servers lost of work, or did again, that were killed. @param {string} dataDir @param {string} address */
async function workRows(dataDir, address) {
  const { broken, done, again } = await killWorkers(dataDir, KILLS, SEED, { address });
  for (const each of broken.slice(0, 20)) console.log(`  ${each}`);
  return [
    {
      what: `two servers at work, kill -9 (${KILLS}): lost or done again`,
      value: broken.length,
      unit: 'pieces',
    },
    { what: 'work acknowledged and done', value: done, unit: 'pieces' },
    { what: 'of it begun anew, since a server was killed over it', value: again, unit: 'pieces' },
  ];
}

/** Does something with a folder that is gone afterwards. @template Told @param {(folder: string) => Promise<Told>} work */
async function inFolder(work) {
  const folder = mkdtempSync(join(tmpdir(), 'shedbook-week-'));
  try {
    return await work(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Both in one kind of database. @param {() => Promise<string>} newAddress @param {number} servers that are killed at once */
async function inStore(newAddress, servers) {
  const strangers = await inFolder(async (folder) => strangerRows(folder, await newAddress()));
  const kills = await inFolder(async (folder) => killRows(folder, await newAddress(), servers));
  return [
    ...strangers,
    ...kills,
    ...(await inFolder(async (folder) => workRows(folder, await newAddress()))),
  ];
}

/** In a PostgreSQL server of its own, which syncs as it is installed. */
async function inDatabase() {
  const postgres = await startPostgres();
  let made = 0;
  const newAddress = async () => {
    made += 1;
    await postgres.ask(`create schema week_${made}`);
    return `${postgres.address}&options=${encodeURIComponent(`-c search_path=week_${made}`)}`;
  };
  try {
    return await inStore(newAddress, 2);
  } finally {
    await postgres.stop();
  }
}

export async function run() {
  const only = process.env.SHEDBOOK_WEEK_IN ?? 'both';
  const rows = only === 'postgresql' ? [] : await inStore(async () => '', 1);
  const others = only === 'sqlite' ? [] : await inDatabase();
  return [...rows, ...others.map((each) => ({ ...each, what: `PostgreSQL: ${each.what}` }))];
}
