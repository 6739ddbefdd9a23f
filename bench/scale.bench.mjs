/**
 * How many students one server carries: pages of the desk and of a student with ten thousand students and a million rows
 * of practice in the store, what a take and a row cost, and a backup of it all.
 *
 * Conventions: one process, asked by itself over HTTP; processor time of both ends, since other programs share the
 * computer, and wall time beside it; the 95th of 100 in order. A take is of half a megabyte, some 40 seconds of FLAC.
 */
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { backUp, startServer } from '@shedbook/server';
import { nearestQuantile } from '@shedbook/signal';
import { strToU8, zipSync } from 'fflate';
import SQLite from 'libsql';
import { startPostgres } from '../internal/testing/postgres.mjs';

export const name = 'scale: one server, one SQLite file or one PostgreSQL database';

const STUDENTS = Number(process.env.SHEDBOOK_STUDENTS ?? 10_000);
const ROWS = Number(process.env.SHEDBOOK_ROWS ?? 100);
const TAKES = 100;
const SOUND_BYTES = 500_000;

/** Asks, and reads the answer whole. */
async function ask(url, method, path, body, type = 'application/json') {
  const response = await fetch(new URL(path, url), {
    method,
    ...(body === undefined ? {} : { body, headers: { 'content-type': type } }),
  });
  const bytes = await response.arrayBuffer();
  if (!response.ok) throw new Error(`${method} ${path}: ${response.status}`);
  return { bytes: bytes.byteLength, text: () => Buffer.from(bytes).toString('utf8') };
}

/** Puts students and rows into a store as it was made. */
function fill(dataDir, lesson) {
  const database = new SQLite(join(dataDir, 'lessons.sqlite'));
  database.pragma('synchronous = OFF');
  const student = database.prepare(
    "insert into students (id, name, finds, assignments, level, revision, created_at, updated_at) values (?, ?, ?, ?, 'intermediate', 1, ?, ?)",
  );
  const row = database.prepare(
    'insert into log_rows (student_id, version, entry_id, played_at, text, taken_at) values (?, 1, ?, ?, ?, ?)',
  );
  const at = '2026-11-25T10:00:00.000Z';
  const set = JSON.stringify([{ lesson, exercise: 'snare x...', pinned: false, note: null }]);
  const loops = Array.from({ length: 10 }, () => ({ bpm: 90, verdict: 'clean', faults: [] }));
  database.exec('begin');
  for (let n = 0; n < STUDENTS; n += 1) {
    const id = `student-${n}`;
    student.run(id, `Student ${n}`, `student ${n}`, set, new Date(Date.parse(at) + n).toISOString(), at);
    for (let k = 0; k < ROWS; k += 1) {
      const startedAt = new Date(Date.UTC(2026, 0, 1 + 3 * k, 18)).toISOString();
      const entry = { id: `phone ${k}`, device: 'phone', startedAt, durationSeconds: 126, lesson };
      const text = JSON.stringify({ ...entry, exercise: 'snare x...', form: 'loop', heardBy: 'ear', loops });
      row.run(id, entry.id, Math.floor(Date.parse(startedAt) / 1000), text, at);
    }
  }
  database.exec('commit');
  database.close();
}

/** The same in PostgreSQL. */
async function fillDatabase({ ask }, lesson) {
  const at = '2026-11-25T10:00:00.000Z';
  const set = JSON.stringify([{ lesson, exercise: 'snare x...', pinned: false, note: null }]);
  const loops = JSON.stringify(Array.from({ length: 10 }, () => ({ bpm: 90, verdict: 'clean', faults: [] })));
  const iso = (time) => `to_char(${time}, 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"')`;
  await ask(`insert into students (id, name, finds, assignments, revision, created_at, updated_at)
    select 'student-' || n, 'Student ' || n, 'student ' || n, '${set}', 1,
      ${iso(`timestamp '2026-11-25 10:00' + n * interval '1 ms'`)}, '${at}' from generate_series(0, ${STUDENTS - 1}) as n`);
  const begun = "timestamp '2026-01-01 18:00' + 3 * k * interval '1 day'";
  await ask(`insert into log_rows (student_id, version, entry_id, played_at, text, taken_at)
    select 'student-' || n, 1, 'phone ' || k, extract(epoch from ${begun}),
      '{"id":"phone ' || k || '","device":"phone","startedAt":"' || ${iso(begun)}
        || '","durationSeconds":126,"lesson":"${lesson}","exercise":"snare x...","form":"loop","heardBy":"ear","loops":'
        || '${loops}' || '}', '${at}'
    from generate_series(0, ${STUDENTS - 1}) as n, generate_series(0, ${ROWS - 1}) as k order by n, k`);
  await ask('vacuum analyze');
}

/** Seconds of the processor that a process and those that it started have had. @param {number} pid */
function secondsOf(pid) {
  const ticks = readdirSync('/proc').map((id) => {
    try {
      const stat = readFileSync(`/proc/${Number(id)}/stat`, 'utf8')
        .replace(/^.*\) /, '')
        .split(' ')
        .map(Number);
      // Linux, proc(5): after the name come the state, the parent, and as 12th to 15th the times of it and of its children
      const [, parent = 0] = stat;
      const [own = 0, system = 0, ofThose = 0, systemOfThose = 0] = stat.slice(11, 15);
      if (Number(id) === pid) return own + system + ofThose + systemOfThose;
      return parent === pid ? own + system : 0;
    } catch {
      return 0;
    }
  });
  return ticks.reduce((sum, each) => sum + each, 0) / 100;
}

/** Process of the database; 0 where there is none. */
let databasePid = 0;

/** Does something often. @returns rows of figures */
async function often(what, times, work) {
  /** @type {number[]} */
  const cpu = [];
  /** @type {number[]} */
  const wall = [];
  const beside = databasePid === 0 ? 0 : secondsOf(databasePid);
  for (let n = 0; n < times; n += 1) {
    const before = process.cpuUsage();
    const begun = performance.now();
    await work(n);
    wall.push(performance.now() - begun);
    const { user, system } = process.cpuUsage(before);
    cpu.push((user + system) / 1000);
  }
  return [
    { what: `${what}: processor`, value: nearestQuantile(cpu, 0.95), unit: 'ms' },
    { what: `${what}: wall`, value: nearestQuantile(wall, 0.95), unit: 'ms' },
    ...(databasePid === 0
      ? []
      : [
          {
            what: `${what}: processor of the database, on average`,
            value: ((secondsOf(databasePid) - beside) / times) * 1000,
            unit: 'ms',
          },
        ]),
  ];
}

function takeFile(n, lesson) {
  const facts = {
    ...{
      id: `phone ${n}`,
      startedAt: '2026-11-25T18:30:00+01:00',
      lesson,
      lessonTitle: 'First swing',
      exercise: null,
    },
    ...{ number: null, form: 'loop', durationSeconds: 40, verdicts: [] },
  };
  const sound = new Uint8Array(SOUND_BYTES).fill(n);
  return zipSync(
    { 'take.json': strToU8(JSON.stringify(facts)), 'take.flac': sound },
    { level: 0, mtime: '2026-11-25T18:30:00+01:00' },
  );
}

/** The pages, and what comes in. */
async function measure(url, dataDir, lesson, address) {
  const paths = [];
  for (let n = 0; n < 20; n += 1) {
    const made = JSON.parse(
      (await ask(url, 'POST', `/api/students/student-${(n * 37) % STUDENTS}/links`)).text(),
    );
    paths.push(new URL(made.address).pathname);
  }
  const to = (n) => paths[n % paths.length] ?? '';
  const takes = Array.from({ length: TAKES }, (_, n) => takeFile(n, lesson));
  const sent = await often('a take comes', TAKES, (n) =>
    ask(url, 'PUT', `${to(n)}takes/phone%20${n}`, takes[n], 'application/octet-stream'),
  );
  const rows = await often('a row of practice comes', 100, (n) =>
    ask(url, 'POST', `${to(n)}log`, JSON.stringify({ version: 1, rows: [`{"id":"tablet ${n}"}`] })),
  );
  const student = await often("a student's practice, on the desk", 100, (n) =>
    ask(url, 'GET', `/api/students/student-${(n * 91) % STUDENTS}/log`),
  );
  const week = await often("a student's week, on their page", 100, (n) =>
    ask(url, 'GET', `${to(n)}week.json`),
  );
  const inbox = await often(`the inbox, ${TAKES} takes, ${STUDENTS} not played`, 100, () =>
    ask(url, 'GET', '/api/inbox?playedBefore=2027-01-01T00:00:00Z'),
  );
  const { next } = JSON.parse((await ask(url, 'GET', '/api/students')).text());
  const roster = [
    ...(await often('the roster, its first part', 100, () => ask(url, 'GET', '/api/students'))),
    ...(await often('the roster, another part', 100, () =>
      ask(url, 'GET', `/api/students?after=${encodeURIComponent(next)}`),
    )),
    ...(await often('the roster, looked for', 100, (n) => ask(url, 'GET', `/api/students?find=${n}`))),
    ...(await often('names for the list of lessons', 20, () => ask(url, 'GET', '/api/students/names'))),
  ];
  const begun = process.cpuUsage();
  const file = join(dataDir, 'all.tar');
  await backUp(dataDir, file, address);
  const { user, system } = process.cpuUsage(begun);
  return [
    ...[sent, rows, student, week, inbox, roster].flat(),
    { what: 'a backup, read again: processor', value: (user + system) / 1e6, unit: 's' },
    { what: 'its size', value: statSync(file).size / 1e6, unit: 'MB' },
  ];
}

const LESSON = 'title: First swing\nexercises:\n  - x... x... x... x...\n';

/** Makes a lesson, fills the store, measures. */
async function inStore({ address, fillIn, sizeOf }) {
  const dataDir = mkdtempSync(join(tmpdir(), 'shedbook-scale-'));
  const server = await startServer({ port: 0, dataDir, storeAddress: address });
  try {
    const made = await ask(server.url, 'POST', '/api/lessons', JSON.stringify({ text: LESSON }));
    const { id } = JSON.parse(made.text());
    await fillIn(dataDir, id);
    const size = { what: `${STUDENTS} students, ${STUDENTS * ROWS} rows: the store`, value: 0, unit: 'MB' };
    const figures = await measure(server.url, dataDir, id, address);
    return [{ ...size, value: (await sizeOf(dataDir)) / 1e6 }, ...figures];
  } finally {
    await server.close();
    rmSync(dataDir, { recursive: true, force: true });
  }
}

/** The same in a PostgreSQL server of its own, which syncs as it is installed. */
async function inDatabase() {
  const postgres = await startPostgres();
  databasePid = postgres.pid;
  try {
    const sizeOf = async () =>
      Number((await postgres.ask('select pg_database_size(current_database()) as n'))[0]?.n);
    const { address } = postgres;
    return await inStore({ address, fillIn: (_, lesson) => fillDatabase(postgres, lesson), sizeOf });
  } finally {
    databasePid = 0;
    await postgres.stop();
  }
}

export async function run() {
  const only = process.env.SHEDBOOK_SCALE_IN ?? 'both';
  const figures = [];
  const sizeOf = async (dataDir) => statSync(join(dataDir, 'lessons.sqlite')).size;
  if (only !== 'postgresql') figures.push(...(await inStore({ address: '', fillIn: fill, sizeOf })));
  const others = only === 'sqlite' ? [] : await inDatabase();
  return [...figures, ...others.map((each) => ({ ...each, what: `PostgreSQL: ${each.what}` }))];
}
