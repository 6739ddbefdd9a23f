/**
 * A server that is killed at random moments while a student sends and a teacher writes and listens, round after round:
 * what it acknowledged has to be there when it is back, and nothing twice.
 *
 * Conventions: `kill -9` of a process of its own, so nothing is closed or flushed; what was asked and not answered may
 * be there or not. The recordings are of the length of a short take.
 */
import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { strToU8, zipSync } from 'fflate';
import { numbersFrom } from './mutated-tokens.mjs';

const SERVER = fileURLToPath(new URL('../../apps/server/dist/main.js', import.meta.url));

/** Rows of practice that were acknowledged before the first kill. */
const LEAST_ROWS = 3;

/** Bytes of the sound of a take. */
const SOUND_BYTES = 200_000;

/**
 * What was promised, and what was asked and not answered.
 * @typedef {object} Promised
 * @property {string} student
 * @property {string} path path of the private link
 * @property {string} lesson
 * @property {Set<string>} rows rows of practice that were acknowledged
 * @property {Map<string, string | null>} takes sum of each take that was acknowledged; null where it was taken back
 * @property {Map<string, Set<string | null>>} asked what each take may have become since
 * @property {readonly string[]} texts texts of the lesson: the one that was acknowledged, and one that was asked since
 * @property {number} revision
 * @property {readonly number[]} sets tempi that the student may be set for: the one that was acknowledged, and one that was asked since
 * @property {number} studentRevision
 * @property {readonly string[]} answers what the teacher said of the one take that is listened to again and again: what was acknowledged, and what was asked since
 * @property {number} heard answers that were acknowledged
 * @property {Map<string, readonly number[]>} spoken what the teacher said of each bar of it: the number that was acknowledged, and one that was asked since
 * @property {Set<string>} said bars of which something that was said was acknowledged
 * @property {number} count counts everything that was ever asked
 */

/** @param {string} url @param {string} method @param {string} path @param {unknown} [body] */
async function send(url, method, path, body) {
  const isBytes = body instanceof Uint8Array;
  const type = isBytes ? 'application/octet-stream' : 'application/json';
  const response = await fetch(new URL(path, url), {
    method,
    ...(body === undefined ? {} : { headers: { 'content-type': type } }),
    ...(body === undefined
      ? {}
      : { body: isBytes ? new Blob([new Uint8Array(body)]) : JSON.stringify(body) }),
  });
  const bytes = new Uint8Array(await response.arrayBuffer());
  return { status: response.status, bytes, json: () => JSON.parse(Buffer.from(bytes).toString('utf8')) };
}

/** @param {string} data @param {string} address of a database; empty for the folder's own file */
async function start(data, address) {
  const child = spawn(process.execPath, [SERVER, '--port', '0', '--data', data, '--no-open'], {
    stdio: ['ignore', 'pipe', 'inherit'],
    env: { ...process.env, SHEDBOOK_STORE: address },
  });
  const [line] = await once(child.stdout, 'data');
  return { child, url: `${line}`.trim().replace('The desk is at ', '') };
}

/** @param {Uint8Array} bytes */
const sumOf = (bytes) => createHash('sha256').update(bytes).digest('hex');

/** A take whose sound differs each time. @param {string} id @param {number} count @param {string} lesson */
function takeFile(id, count, lesson) {
  const facts = {
    ...{ id, startedAt: '2026-11-25T18:30:00+01:00', lesson, lessonTitle: 'First swing', exercise: null },
    ...{ number: null, form: 'loop', durationSeconds: 10, verdicts: [] },
  };
  const sound = new Uint8Array(SOUND_BYTES).fill(count % 251);
  return zipSync(
    { 'take.json': strToU8(JSON.stringify(facts)), 'take.flac': sound },
    { level: 0, mtime: '2026-11-25T18:30:00+01:00' },
  );
}

/** @param {string} url @returns {Promise<Promised>} */
async function begin(url) {
  const text = 'title: First swing\n# 0\n';
  const lesson = (await send(url, 'POST', '/api/lessons', { text })).json();
  const { id } = (await send(url, 'POST', '/api/students', { name: 'Sunniva' })).json();
  const { address } = (await send(url, 'POST', `/api/students/${id}/links`)).json();
  return {
    ...{ student: id, path: new URL(address).pathname, lesson: lesson.id, rows: new Set(), takes: new Map() },
    ...{ asked: new Map(), texts: [text], revision: 1, count: 0 },
    ...{ sets: [], studentRevision: 1, answers: [], heard: 0, spoken: new Map(), said: new Set() },
  };
}

/** The take that the teacher listens to. */
const LISTENED = 'listened to';

/** What is spoken of: two bars, and all of it. */
const BARS = ['', '1', '2'];

/** Hears a take, all of it, and says something of it. @param {string} url @param {Promised} promised */
async function listen(url, promised) {
  const path = `/api/students/${promised.student}/takes/${encodeURIComponent(LISTENED)}`;
  if ((await send(url, 'GET', path)).status === 404)
    await send(
      url,
      'PUT',
      `${promised.path}takes/${encodeURIComponent(LISTENED)}`,
      takeFile(LISTENED, 0, promised.lesson),
    );
  promised.count += 1;
  const answer = `Heard ${promised.count}`;
  promised.answers = [...promised.answers, answer];
  const marks = [{ bar: 1, text: answer }];
  const { status } = await send(url, 'PUT', path, { isHeard: true, answer, marks });
  if (status !== 200) throw new Error(`answer: ${status}`);
  promised.answers = [answer];
  promised.heard += 1;
}

/** What is not as it was promised of what the teacher said. @param {string} url @param {Promised} promised @returns {Promise<readonly string[]>} */
async function brokenAnswers(url, promised) {
  const takes = (await send(url, 'GET', `/api/students/${promised.student}/takes`)).json();
  const take = takes.find((/** @type {{ facts: { id: string } }} */ { facts }) => facts.id === LISTENED);
  const may = promised.answers;
  const now = take?.answer;
  // what was never acknowledged may be nothing at all, though a spoken note has made it heard
  if (promised.heard === 0 && !now) return [];
  promised.answers = now ? [now] : [];
  if (!take?.isHeard || !may.includes(now)) return [`answer is ${now}, expected ${may}`];
  return take.marks[0]?.text === now ? [] : [`answer is ${now}, its mark ${take.marks[0]?.text}`];
}

/** Where a spoken note of a bar is; none: of the whole. @param {Promised} promised @param {string} bar */
function noteOf({ student }, bar) {
  const take = `/api/students/${student}/takes/${encodeURIComponent(LISTENED)}`;
  return `${take}/voice${bar === '' ? '' : `?bar=${bar}`}`;
}

/** Speaks of the take, or of one of its bars. @param {string} url @param {Promised} promised */
async function speak(url, promised) {
  promised.count += 1;
  const bar = BARS[promised.count % BARS.length] ?? '';
  const number = promised.count % 200;
  promised.spoken.set(bar, [...(promised.spoken.get(bar) ?? []), number]);
  // ISO/IEC 11172-3: the header of a frame of MPEG-1 layer III
  const note = Uint8Array.of(0xff, 0xfb, 0x90, 0x64, number);
  const { status } = await send(url, 'PUT', noteOf(promised, bar), note);
  // nobody can speak of a take that has not come yet
  if (status !== 200 && status !== 404) throw new Error(`note: ${status}`);
  if (status !== 200) return;
  promised.spoken.set(bar, [number]);
  promised.said.add(bar);
}

/** What is not as it was promised of what was spoken. @param {string} url @param {Promised} promised @returns {Promise<readonly string[]>} */
async function brokenNotes(url, promised) {
  const broken = [];
  for (const [bar, may] of promised.spoken) {
    const { status, bytes } = await send(url, 'GET', noteOf(promised, bar));
    const now = status === 200 ? bytes.at(-1) : undefined;
    promised.spoken.set(bar, now === undefined ? [] : [now]);
    // what was never acknowledged may be nothing at all
    const isKept = now === undefined ? !promised.said.has(bar) : may.includes(now);
    if (!isKept) broken.push(`note of bar ${bar} is ${now}, expected ${may}`);
  }
  return broken;
}

/** Whether the desk knows when the student played last. @param {string} url @param {readonly string[]} rows @returns {Promise<readonly string[]>} */
async function brokenLast(url, rows) {
  const inbox = (await send(url, 'GET', '/api/inbox?playedBefore=2100-01-01T00:00:00Z')).json();
  const last = rows
    .map((row) => JSON.parse(row).startedAt)
    .toSorted()
    .at(-1);
  const told = inbox.away[0]?.lastPlayedAt;
  return told === last ? [] : [`played last ${told}, expected ${last}`];
}

/** Sends practice, again where nobody answered. @param {string} url @param {Promised} promised @param {string[]} waiting */
async function sendRows(url, promised, waiting) {
  promised.count += 1;
  const startedAt = new Date(Date.UTC(2026, 10, 25) + promised.count * 1000).toISOString();
  waiting.push(JSON.stringify({ id: `phone ${promised.count}`, startedAt }));
  const rows = [...waiting];
  const { status } = await send(url, 'POST', `${promised.path}log`, { version: 1, rows });
  if (status !== 200) throw new Error(`practice: ${status}`);
  for (const row of rows) promised.rows.add(row);
  waiting.splice(0, rows.length);
}

/** Sends the last practice through another server too, as a page whose answer got lost does. @param {string} url @param {Promised} promised @param {string[]} waiting */
async function sendRowsAgain(url, promised, waiting) {
  const rows = [...[...promised.rows].slice(-20), ...waiting];
  const { status } = await send(url, 'POST', `${promised.path}log`, { version: 1, rows });
  if (status !== 200) throw new Error(`practice again: ${status}`);
  for (const row of rows) promised.rows.add(row);
}

/** Sends a take, a new one or an old one recorded anew, or takes one back. @param {string} url @param {Promised} promised @param {() => number} random */
async function sendTake(url, promised, random) {
  promised.count += 1;
  const names = [...promised.takes.keys()].slice(-5);
  const isOld = names.length > 0 && random() < 0.4;
  const id = isOld ? (names[Math.floor(random() * names.length)] ?? '') : `phone ${promised.count}`;
  const others = [...promised.takes].filter(([name, sum]) => name !== id && sum !== null);
  // one stays, to be looked for afterwards
  const isBack = isOld && random() < 0.3 && others.length > 0;
  const bytes = takeFile(id, promised.count, promised.lesson);
  const next = isBack ? null : sumOf(bytes);
  const may = promised.asked.get(id) ?? new Set();
  promised.asked.set(id, may.add(next));
  const path = `${promised.path}takes/${encodeURIComponent(id)}`;
  const { status } = await (isBack ? send(url, 'DELETE', path) : send(url, 'PUT', path, bytes));
  if (![201, 204, 404].includes(status)) throw new Error(`take: ${status}`);
  promised.takes.set(id, next);
  promised.asked.delete(id);
}

/** Writes on the lesson. @param {string} url @param {Promised} promised */
async function edit(url, promised) {
  promised.count += 1;
  const text = `title: First swing\n# ${promised.count}\n`;
  promised.texts = [...promised.texts, text];
  const body = { text, revision: promised.revision, cause: 'edit' };
  const { status } = await send(url, 'PUT', `/api/lessons/${promised.lesson}`, body);
  if (status !== 200) throw new Error(`lesson: ${status}`);
  promised.texts = [text];
  promised.revision += 1;
}

const DAY = '2026-11-29';

/** Sets the student something in a dated lesson: it stands in both or in neither. @param {string} url @param {Promised} promised */
async function setInHour(url, promised) {
  promised.count += 1;
  const toBpm = 40 + (promised.count % 200);
  promised.sets = [...promised.sets, toBpm];
  const set = { lesson: promised.lesson, exercise: 'x', pinned: false, note: null, toBpm, by: DAY };
  const body = { assignments: [set], revision: promised.studentRevision };
  const { status } = await send(url, 'PUT', `/api/students/${promised.student}/hours/${DAY}/set`, body);
  if (status !== 200) throw new Error(`set: ${status}`);
  promised.sets = [toBpm];
  promised.studentRevision += 1;
}

/** What is not as it was promised of what was set. @param {string} url @param {Promised} promised @returns {Promise<readonly string[]>} */
async function brokenSets(url, promised) {
  const student = (await send(url, 'GET', `/api/students/${promised.student}`)).json();
  const { hours } = (await send(url, 'GET', `/api/students/${promised.student}/hours`)).json();
  const [now, noted] = [student.assignments[0]?.toBpm, hours[0]?.set[0]?.toBpm];
  promised.studentRevision = student.revision;
  const may = promised.sets;
  promised.sets = now === undefined ? [] : [now];
  if (now !== noted) return [`set up to ${now}, noted up to ${noted}`];
  // what was never acknowledged may be nothing at all
  const isFirst = may.length > 0 && now === undefined && student.revision === 1;
  return may.length === 0 || isFirst || may.includes(now) ? [] : [`set up to ${now}, expected ${may}`];
}

/** Does one thing after the other until the server is gone. @param {() => Promise<void>} work @param {() => void} [answered] */
async function untilGone(work, answered) {
  for (;;) {
    try {
      await work();
      answered?.();
    } catch (error) {
      if (error instanceof TypeError) return;
      throw error;
    }
  }
}

/** Every row of practice. @param {string} url @param {Promised} promised @returns {Promise<string[]>} */
async function rowsOf(url, { student }) {
  /** @type {string[]} */
  const rows = [];
  for (let after = 0; ; ) {
    const page = (await send(url, 'GET', `/api/students/${student}/log?after=${after}`)).json();
    for (const row of page.rows) rows.push(row.isSound ? row.text : 'damaged');
    if (page.next === null) return rows;
    after = page.next;
  }
}

/** What a take is now. @param {string} url @param {Promised} promised @param {string} id */
async function takeNow(url, { student }, id) {
  const { status, bytes } = await send(
    url,
    'GET',
    `/api/students/${student}/takes/${encodeURIComponent(id)}`,
  );
  return status === 200 ? sumOf(bytes) : status === 404 ? null : `status ${status}`;
}

/**
 * What is not as it was promised, in words; what may have become of an unanswered question is taken as the answer.
 * @param {string} url @param {Promised} promised @param {number} last takes that are looked at: the last ones
 * @returns {Promise<readonly string[]>}
 */
async function brokenPromises(url, promised, last) {
  const broken = [];
  const rows = await rowsOf(url, promised);
  const there = new Set(rows);
  if (rows.length !== there.size) broken.push(`${rows.length - there.size} rows twice`);
  for (const row of promised.rows) if (!there.has(row)) broken.push(`row lost: ${row}`);
  const names = [...new Set([...[...promised.takes.keys()].slice(-last), ...promised.asked.keys()])];
  for (const id of names) {
    const now = await takeNow(url, promised, id);
    const before = promised.takes.get(id) ?? null;
    const may = promised.asked.get(id) ?? new Set();
    if (now !== before && !may.has(now)) broken.push(`take ${id} is ${now}, expected ${before}`);
    promised.takes.set(id, now);
    promised.asked.delete(id);
  }
  const lesson = (await send(url, 'GET', `/api/lessons/${promised.lesson}`)).json();
  if (!promised.texts.includes(lesson.text)) broken.push(`lesson is ${lesson.text}`);
  promised.texts = [lesson.text];
  promised.revision = lesson.revision;
  return [
    ...broken,
    ...(await brokenSets(url, promised)),
    ...(await brokenAnswers(url, promised)),
    ...(await brokenNotes(url, promised)),
    ...(await brokenLast(url, rows)),
  ];
}

/**
 * Kills a server again and again, or several that share one database.
 * @param {string} data an empty folder
 * @param {number} rounds
 * @param {number} seed
 * @param {{ readonly address?: string, readonly servers?: number }} [store] address of a database, and how many share it
 * @returns {Promise<{ readonly broken: readonly string[], readonly rows: number, readonly takes: number, readonly heard: number, readonly unanswered: number }>}
 */
export async function killAgainAndAgain(data, rounds, seed, { address = '', servers = 1 } = {}) {
  const random = numbersFrom(seed);
  const broken = [];
  /** @type {Promised | null} */
  let promised = null;
  /** @type {string[]} */
  const waiting = [];
  let unanswered = 0;
  for (let round = 0; round <= rounds; round += 1) {
    const running = await Promise.all(Array.from({ length: servers }, () => start(data, address)));
    const [url = '', other = url] = running.map((each) => each.url);
    try {
      if (promised) broken.push(...(await brokenPromises(url, promised, round === rounds ? 10_000 : 20)));
      if (round === rounds) break;
      const now = promised ?? (await begin(url));
      promised = now;
      const gone = running.map(({ child }) => once(child, 'exit'));
      // after so many takes, however busy the computer is, and some milliseconds of what comes next; not before something
      // of each kind was acknowledged that is looked for afterwards
      let left = 1 + Math.floor(random() * 6);
      let isEnough = false;
      const killWhenEnough = () => {
        if (isEnough || left > 0 || now.rows.size < LEAST_ROWS || now.heard === 0) return;
        isEnough = true;
        for (const { child } of running) setTimeout(() => child.kill('SIGKILL'), random() * 25);
      };
      const tookOne = () => {
        left -= 1;
        killWhenEnough();
      };
      await Promise.all([
        untilGone(() => sendRows(url, now, waiting), killWhenEnough),
        untilGone(() => sendTake(url, now, random), tookOne),
        untilGone(() => edit(other, now)),
        untilGone(() => setInHour(url, now)),
        untilGone(() => listen(url, now), killWhenEnough),
        untilGone(() => speak(other, now)),
        ...(servers > 1 ? [untilGone(() => sendRowsAgain(other, now, waiting))] : []),
        ...gone,
      ]);
      unanswered += now.asked.size + (now.texts.length - 1) + Math.min(1, waiting.length);
    } finally {
      for (const { child } of running) child.kill('SIGKILL');
    }
  }
  const kept = [...(promised?.takes.values() ?? [])].filter((sum) => sum !== null);
  return {
    broken,
    rows: promised?.rows.size ?? 0,
    takes: kept.length,
    heard: promised?.heard ?? 0,
    unanswered,
  };
}
