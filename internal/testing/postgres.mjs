/**
 * PostgreSQL for tests: a server of their own, on a socket in a folder of its own, gone when they end.
 *
 * Conventions: it starts once for all test files, as another user where tests run as root, which PostgreSQL refuses;
 * each store lies in a schema of its own. What is written is not synced to the disk: no test takes the power away.
 */
import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { chmodSync, chownSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { postgresPath } from './programs.mjs';

/** Another user where this is root: Debian's own for PostgreSQL, else nobody. @returns {{ uid?: number, gid?: number }} */
function otherUser() {
  if (process.getuid?.() !== 0) return {};
  const idOf = (/** @type {string} */ name, /** @type {string} */ flag) =>
    Number(spawnSync('id', [flag, name], { encoding: 'utf8' }).stdout.trim() || Number.NaN);
  for (const name of ['postgres', 'nobody']) {
    const [uid, gid] = [idOf(name, '-u'), idOf(name, '-g')];
    if (Number.isFinite(uid) && Number.isFinite(gid)) return { uid, gid };
  }
  return {};
}

/**
 * A server that runs.
 * @typedef {object} RunningPostgres
 * @property {string} address
 * @property {number} pid its process
 * @property {(statement: string) => Promise<readonly Readonly<Record<string, unknown>>[]>} ask asks it as its owner
 * @property {(meanwhile: () => Promise<void>) => Promise<void>} restart ends it, and starts it again after something
 * @property {() => Promise<void>} stop
 */

/** Waits until a server answers. @param {import('node:child_process').ChildProcess} child */
async function answers(child) {
  let said = '';
  await new Promise((resolve, reject) => {
    child.stderr?.on('data', (text) => {
      said += text;
      if (said.includes('ready to accept connections')) resolve(undefined);
    });
    child.once('exit', () => reject(new Error(`postgres: ${said}`)));
  });
}

/** Starts one. @param {readonly string[]} [settings] of its configuration @returns {Promise<RunningPostgres>} */
export async function startPostgres(settings = []) {
  const folder = mkdtempSync(join(tmpdir(), 'shedbook-pg-'));
  const who = otherUser();
  chmodSync(folder, 0o711);
  if (who.uid !== undefined && who.gid !== undefined) chownSync(folder, who.uid, who.gid);
  const [data, user] = [join(folder, 'data'), 'shedbook'];
  const options = { ...who, cwd: folder, env: { PATH: process.env.PATH, LC_ALL: 'C.UTF-8' } };
  const made = spawnSync(
    postgresPath('initdb'),
    ['-D', data, '-U', user, '-A', 'trust', '-E', 'UTF8', '--no-sync', '--no-instructions'],
    { ...options, encoding: 'utf8' },
  );
  if (made.status !== 0) throw new Error(`initdb: ${made.stderr}`);
  // whoever is called so has to give a password; nobody else has
  writeFileSync(join(data, 'pg_hba.conf'), 'local all walled scram-sha-256\nlocal all all trust\n');
  const all = ['listen_addresses=', `unix_socket_directories=${folder}`, 'max_connections=200', ...settings];
  const start = () =>
    spawn(postgresPath('postgres'), ['-D', data, ...all.flatMap((each) => ['-c', each])], {
      ...options,
      stdio: ['ignore', 'ignore', 'pipe'],
    });
  const address = `postgres:///postgres?host=${encodeURIComponent(folder)}&user=${user}`;
  let child = start();
  await answers(child);
  const end = async () => {
    // standard: PostgreSQL documentation, 19.5: SIGQUIT is an immediate shutdown
    if (child.exitCode === null && child.kill('SIGQUIT')) await once(child, 'exit');
  };
  return {
    address,
    get pid() {
      return child.pid ?? 0;
    },
    ask: async (statement) => {
      const client = new pg.Client(address);
      await client.connect();
      try {
        return (await client.query(statement)).rows;
      } finally {
        await client.end();
      }
    },
    restart: async (meanwhile) => {
      await end();
      await meanwhile();
      child = start();
      await answers(child);
    },
    stop: async () => {
      await end();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
