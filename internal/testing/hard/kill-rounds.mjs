/** A server that is killed again and again under several writers: what it said it kept, it has kept. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';

const MAIN = fileURLToPath(new URL('../../../apps/server/dist/main.js', import.meta.url));

async function start(dataDir) {
  const args = [MAIN, '--port', '0', '--data', dataDir, '--no-open'];
  const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'inherit'] });
  const [line] = await once(child.stdout, 'data');
  return { child, url: line.toString().trim().replace('The desk is at ', '') };
}

async function send(url, method, path, body) {
  const headers = { 'content-type': 'application/json' };
  const sent = body === undefined ? { method } : { method, headers, body: JSON.stringify(body) };
  const response = await fetch(new URL(path, url), sent);
  if (!response.ok) throw new Error(`${method} ${path}: ${response.status}`);
  return response.json();
}

/** Writes one lesson's text again and again until the server is gone; counts what was acknowledged. */
async function writeLesson(url, of) {
  for (;;) {
    const text = `${of.acknowledged + 1}`;
    await send(url, 'PUT', `/api/lessons/${of.id}`, { text, revision: of.revision, cause: 'edit' });
    of.acknowledged += 1;
    of.revision += 1;
  }
}

/** Adds entries to one student's practice until the server is gone. */
async function writeLog(url, of) {
  for (;;) {
    const rows = [JSON.stringify({ id: `phone ${of.acknowledged + 1}`, startedAt: '2026-11-25T18:30:00Z' })];
    await send(url, 'POST', `/api/students/${of.id}/log`, { version: 1, rows });
    of.acknowledged += 1;
  }
}

/** What of a lesson or a student is not there although it was acknowledged. */
async function lostOf(url, lessons, students) {
  const lost = [];
  for (const of of lessons) {
    const kept = await send(url, 'GET', `/api/lessons/${of.id}`);
    const last = Number(kept.text);
    // What was being written when the server died may be there or not.
    if (last < of.acknowledged || last > of.acknowledged + 1)
      lost.push(`lesson ${of.id}: ${last} of ${of.acknowledged}`);
    for (const step of [0, Math.floor(kept.lastStep / 2), kept.lastStep])
      if ((await send(url, 'GET', `/api/lessons/${of.id}/steps/${step}`)).text !== `${step}`)
        lost.push(`step ${step} of lesson ${of.id}`);
    of.acknowledged = last;
    of.revision = kept.revision;
  }
  for (const of of students) {
    const there = new Set();
    for (let after = 0; after !== null; ) {
      const page = await send(url, 'GET', `/api/students/${of.id}/log?after=${after}`);
      for (const { text, isSound } of page.rows) if (isSound) there.add(JSON.parse(text).id);
      after = page.next;
    }
    for (let n = 1; n <= of.acknowledged; n += 1)
      if (!there.has(`phone ${n}`)) lost.push(`entry ${n} of ${of.id}`);
    of.acknowledged = Math.max(of.acknowledged, there.size);
  }
  return lost;
}

/**
 * Kills a server `rounds` times, each time in the middle of writing.
 * @param {{ dataDir: string, rounds: number, writers: number, next: () => number, until?: number }} how `next` gives
 * chance from 0 to 1; `until` is a moment of `performance.now()` after which no round begins
 * @returns {Promise<{ rounds: number, acknowledged: number, lost: readonly string[] }>}
 */
export async function killRounds({ dataDir, rounds, writers, next, until = Number.POSITIVE_INFINITY }) {
  const lost = [];
  let acknowledged = 0;
  let done = 0;
  let server = await start(dataDir);
  const lessons = [];
  const students = [];
  for (let n = 0; n < writers; n += 1) {
    const { id } = await send(server.url, 'POST', '/api/lessons', { text: '0' });
    lessons.push({ id, acknowledged: 0, revision: 1 });
    students.push({
      ...(await send(server.url, 'POST', '/api/students', { name: `Student ${n}` })),
      acknowledged: 0,
    });
  }
  try {
    for (; done < rounds && performance.now() < until; done += 1) {
      const { child, url } = server;
      const before = [...lessons, ...students].reduce((sum, of) => sum + of.acknowledged, 0);
      const count = () => [...lessons, ...students].reduce((sum, of) => sum + of.acknowledged, 0) - before;
      const writing = [
        ...lessons.map((of) => writeLesson(url, of)),
        ...students.map((of) => writeLog(url, of)),
      ].map((each) => each.catch(() => undefined));
      const wanted = 3 + Math.floor(next() * 30);
      while (count() < wanted) await new Promise((resolve) => setTimeout(resolve, 1));
      child.kill('SIGKILL');
      await Promise.all([...writing, once(child, 'exit')]);
      acknowledged += count();
      server = await start(dataDir);
      lost.push(...(await lostOf(server.url, lessons, students)));
    }
  } finally {
    server.child.kill('SIGKILL');
  }
  return { rounds: done, acknowledged, lost };
}
