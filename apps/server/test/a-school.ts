/**
 * For tests: a desk that others reach, with teachers who signed in, and a student of the first of whom all is kept that
 * can be kept of one.
 */
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type {
  LessonSummary,
  LogPage,
  MadeLink,
  StoredBook,
  StoredLesson,
  StoredStudent,
} from '@shedbook/routes';
import { isOpen, ROUTE_NAMES, ROUTES, type Route, type RouteName } from '@shedbook/routes';
import { strToU8, zipSync } from 'fflate';
import { expect } from 'vitest';
import { sharedMakers } from '../../../internal/testing/makers.ts';
import { inviteTeacher } from '../src/teachers-by-command.ts';
import type { TestStore } from './stores.ts';
import { temporaryFolder } from './temporary.ts';

const HEADS = 'brushes on a coated head';
const OUTSIDE = 'https://lessons.example';
const OWN = { host: 'lessons.example' };
const JSON_TYPE = { 'content-type': 'application/json' };

/** Name of the take and day of the dated lesson that are kept of the student. */
export const TAKE = 'phone 1';
export const DAY = '2026-11-29';

/** Stands in all that is kept of the student, and nowhere else. */
export const SECRET = 'zither-of-bram';

/** What came back. */
export interface Told {
  readonly status: number;
  readonly text: string;
  readonly cookie: string;
}

/** Asks as plainly as a program can. */
function askPlainly(
  url: string,
  { method, path, headers, body }: Asking & { readonly headers: Readonly<Record<string, string>> },
): Promise<Told> {
  const bytes = body === undefined || body instanceof Uint8Array ? body : strToU8(JSON.stringify(body));
  const type = body instanceof Uint8Array ? { 'content-type': 'application/octet-stream' } : JSON_TYPE;
  return new Promise((resolve, reject) => {
    const sent = { ...OWN, ...headers, ...(body === undefined ? {} : type) };
    const asked = request(new URL(path, url), { method, headers: sent }, (response) => {
      const pieces: Buffer[] = [];
      const answer = () => ({
        status: response.statusCode ?? 0,
        text: Buffer.concat(pieces).toString('latin1'),
        cookie: (response.headers['set-cookie']?.[0] ?? '').split(';')[0] ?? '',
      });
      response.on('data', (piece: Buffer) => {
        pieces.push(piece);
        // a stream of events has no end
        if (response.headers['content-type'] !== 'text/event-stream') return;
        resolve(answer());
        asked.destroy();
      });
      response.on('end', () => resolve(answer()));
    });
    asked.on('error', reject);
    asked.end(bytes);
  });
}

interface Asking {
  readonly method: string;
  readonly path: string;
  readonly body?: unknown;
}

/** A teacher who signed in, or whoever has a cookie. */
export type Asker = (method: string, path: string, body?: unknown) => Promise<Told>;

function takeFile(sound: string, id = TAKE): Uint8Array {
  const facts = {
    ...{ id, startedAt: `${DAY}T09:00:00+01:00`, lesson: 'x', lessonTitle: sound, exercise: null },
    ...{ number: null, form: 'loop', durationSeconds: 1, verdicts: [] },
  };
  return zipSync({ 'take.json': strToU8(JSON.stringify(facts)), 'take.flac': strToU8(sound) }, { level: 0 });
}

/** JSON that somebody who has to be answered reads. */
export async function read<Kept>(asker: Asker, method: string, path: string, body?: unknown): Promise<Kept> {
  const told = await asker(method, path, body);
  expect([method, path, told.status < 300]).toEqual([method, path, true]);
  return (told.text === '' ? null : JSON.parse(told.text)) as Kept;
}

/** Asks as a student's page does. @param token of the private link */
function pageOf(url: string, token: string): Asker {
  return (method, path, body) =>
    askPlainly(url, { method, path: `/practice/${token}/${path}`, headers: {}, body });
}

/** Puts a student on a teacher's roster, with everything that can be kept of one. */
async function enrol(url: string, teacher: Asker, lesson: string, name: string) {
  const { id, revision } = await read<StoredStudent>(teacher, 'POST', '/api/students', { name });
  const assignment = { lesson, exercise: 'snare x x x x', pinned: false, note: name, toBpm: null, by: null };
  await read(teacher, 'PUT', `/api/students/${id}`, { name, assignments: [assignment], revision });
  const { address, link } = await read<MadeLink>(teacher, 'POST', `/api/students/${id}/links`);
  const token = /practice\/([\w-]+)/.exec(address)?.[1] ?? '';
  const take = `takes/${encodeURIComponent(TAKE)}`;
  const page = pageOf(url, token);
  expect((await page('PUT', take, takeFile(name))).status).toBe(201);
  const row = JSON.stringify({ id: `${name} 1`, startedAt: `${DAY}T09:00:00+01:00`, note: name });
  expect((await page('POST', 'log', { version: 1, rows: [row] })).status).toBe(200);
  const opinion = { isHeard: false, answer: name, marks: [{ bar: 1, text: name }] };
  await read(teacher, 'PUT', `/api/students/${id}/${take}`, opinion);
  const spoken = Uint8Array.of(0xff, 0xfb, 0x90, 0x64, ...strToU8(name));
  await read(teacher, 'PUT', `/api/students/${id}/${take}/voice`, spoken);
  // one that waits to be heard
  expect((await page('PUT', 'takes/waiting', takeFile(name, 'waiting'))).status).toBe(201);
  const hour = { attendance: 'came', done: name, notes: name, revision: 0 };
  await read(teacher, 'PUT', `/api/students/${id}/hours/${DAY}`, hour);
  return { id, link: link.id, token };
}

/** Whoever has a cookie; nobody without one. */
function as(url: string, cookie: string): Asker {
  return (method, path, body) =>
    askPlainly(url, { method, path, headers: cookie === '' ? {} : { cookie }, body });
}

/** Founds a school in an empty folder. @returns what it is known by, and what its people hold */
async function foundSchool(store: TestStore, dataDir: string) {
  const storeAddress = (await store.addressOf(dataDir)) ?? undefined;
  await store.setPassphrase(HEADS, dataDir);
  const server = await store.start({ port: 0, dataDir, address: OUTSIDE, makers: sharedMakers });
  const { url } = server;
  const enter = async (path: string, body: unknown) => (await as(url, '')('POST', path, body)).cookie;
  const invited = async (name: string) => {
    const letter = await inviteTeacher(name, { address: OUTSIDE, dataDir, storeAddress });
    const token = letter.split('=')[1] ?? '';
    return enter('/api/invitation', { token, passphrase: `${name} has brushes, too` });
  };
  const ofHead = await enter('/api/session', { passphrase: HEADS });
  const head = as(url, ofHead);
  const lesson = await read<StoredLesson>(head, 'POST', '/api/lessons', {
    text: 'title: First swing\nexercises: [x x x x]\n',
  });
  const bram = await enrol(url, head, lesson.id, SECRET);
  // something of his lies in the bin
  const rows = [JSON.stringify({ id: 'put away', note: SECRET })];
  await read(head, 'POST', `/api/students/${bram.id}/log`, { version: 1, rows });
  const log = await read<LogPage>(head, 'GET', `/api/students/${bram.id}/log`);
  const takenAt = encodeURIComponent(log.rows.at(-1)?.takenAt ?? '');
  await read(head, 'DELETE', `/api/students/${bram.id}/log/${takenAt}`);
  const book = await read<StoredBook>(head, 'POST', '/api/books', {
    ...{ title: 'The first year', by: null, text: null, chapters: [], paper: null },
    ...{ twoSided: false, contents: true, key: true, index: true },
  });
  const cookies = { head: ofHead, ana: await invited('Ana'), noor: await invited('Noor') };
  await server.close();
  return { lesson: lesson.id, book: book.id, bram, cookies };
}

/** A school that lies in a folder. */
type Founded = Awaited<ReturnType<typeof foundSchool>>;

let kept: Promise<{ readonly folder: string; readonly founded: Founded }> | null = null;

/** One in a folder of its own, which goes with the process: dear hashes and a hundred requests are done once. */
async function keepSchool(store: TestStore) {
  const folder = mkdtempSync(join(tmpdir(), 'shedbook-school-'));
  process.once('exit', () => rmSync(folder, { recursive: true, force: true }));
  return { folder, founded: await foundSchool(store, folder) };
}

/** Founds a school in a folder, or copies there what was founded before, where all of a store lies in its folder. */
async function schoolIn(store: TestStore, dataDir: string): Promise<Founded> {
  if ((await store.addressOf(dataDir)) !== null) return foundSchool(store, dataDir);
  kept ??= keepSchool(store);
  const { folder, founded } = await kept;
  cpSync(folder, dataDir, { recursive: true });
  return founded;
}

/** A school: its head with Bram, of whom everything is secret; Ana and Noor, who teach there, too. */
export async function aSchool(store: TestStore) {
  const dataDir = temporaryFolder();
  const { lesson, book, bram, cookies } = await schoolIn(store, dataDir);
  const server = await store.startTestServer({ dataDir, address: OUTSIDE });
  const { url } = server;
  return {
    ...{ dataDir, url, server, lesson, book, bram, cookies, nobody: as(url, '') },
    ...{ head: as(url, cookies.head), ana: as(url, cookies.ana), noor: as(url, cookies.noor) },
    enrol: async (teacher: Asker, name: string) => {
      const student = await enrol(url, teacher, lesson, name);
      return { ...student, page: pageOf(url, student.token) };
    },
  };
}

/** A school. */
export type School = Awaited<ReturnType<typeof aSchool>>;

/** What stands in the place of a path, where somebody asks for what is the head's. */
function placesOf({ whose, path }: Route, { bram, lesson, book }: School): Readonly<Record<string, string>> {
  const id = {
    ...{ student: bram.id, 'student-of-link': bram.link, lesson, book },
    school: path.startsWith('/api/books') ? book : lesson,
    head: bram.id,
  }[whose as string];
  return {
    ...{
      id: id ?? bram.id,
      take: TAKE,
      day: DAY,
      step: '0',
      format: 'midi',
      film: 'x',
      part: 'film',
      at: '0',
    },
    ...{ takenAt: `${DAY}T09:00:00Z`, demonstration: 'x', performance: 'x', name: 'x.png', token: 'x' },
  };
}

/** What is sent with each route: enough to be understood, so that nothing but the guard stands in the way. */
const BODIES: Readonly<Partial<Record<RouteName, unknown>>> = {
  createLesson: { text: 'title: Another\n' },
  saveLesson: { text: 'title: Stolen\n', revision: 1, cause: 'edit' },
  fileLesson: { level: 'beginner', shelves: ['stolen'], isArchived: true },
  createStudent: { name: 'Another' },
  saveStudent: { name: 'Stolen', assignments: [], revision: 2 },
  noteMinority: { isMinor: true, consentBy: null },
  setCoach: { state: 'off', until: null },
  takeInLog: { version: 1, rows: ['{"id":"stolen"}'] },
  saveHour: { attendance: 'came', done: 'stolen', notes: 'stolen', revision: 1 },
  setInHour: { assignments: [], revision: 2 },
  answerTake: { isHeard: true, answer: 'stolen', marks: [] },
  keepTake: { isKept: true },
  saveKeeping: { takeWeeks: 4 },
  saveBook: {
    ...{ title: 'Stolen', by: null, text: null, chapters: [], paper: null, revision: 1 },
    ...{ twoSided: false, contents: true, key: true, index: true },
  },
  addTeacher: { name: 'Another' },
  saveTeacher: { name: 'Stolen', role: 'head' },
  handOver: { teacher: 'first' },
  keepDemonstration: { performance: 'x' },
};

/** The query of each route that asks for one. */
const QUERIES: Readonly<Partial<Record<RouteName, string>>> = {
  printProgress: `?now=${DAY}T12:00:00Z`,
  readInbox: '?playedBefore=2027-01-01T00:00:00Z',
  keepMedium: '?name=x.png',
};

/** How a route is asked for what is the head's. @param unknown stands for ids, where what there is none of is asked for */
export function askingFor(name: RouteName, school: School, unknown?: string): Asking {
  const route: Route = ROUTES[name];
  const places = placesOf(route, school);
  const path = route.path.replace(/:(\w+)/g, (_place, place: string) =>
    encodeURIComponent(place === 'id' && unknown !== undefined ? unknown : (places[place] ?? 'x')),
  );
  const given = BODIES[name] ?? (route.body === 'bytes' ? Uint8Array.of(0xff, 0xfb, 0x90, 0x64) : {});
  const query = `${path}${QUERIES[name] ?? ''}`;
  return { method: route.method, path: query, ...(route.body === null ? {} : { body: given }) };
}

/** Every route that asks who comes. */
export const GUARDED: readonly RouteName[] = ROUTE_NAMES.filter((name) => !isOpen(ROUTES[name]));

/** All that the desk tells its head of Bram. */
export async function allOfBram({ head, bram, lesson }: School): Promise<string> {
  const of = ['', '/log', '/takes', '/hours', '/links'].map((path) => `/api/students/${bram.id}${path}`);
  const inbox = '/api/inbox?playedBefore=2027-01-01T00:00:00Z';
  const all = [...of, `/api/lessons/${lesson}`, '/api/books', '/api/keeping', '/api/bin', inbox];
  const shelf = await read<readonly LessonSummary[]>(head, 'GET', '/api/shelf');
  const told = await Promise.all(all.map((path) => read(head, 'GET', path)));
  return JSON.stringify([...told, shelf.find(({ id }) => id === lesson)]);
}
