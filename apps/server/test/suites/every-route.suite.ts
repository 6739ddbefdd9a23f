/**
 * Every route of the table, asked by everybody who has no business there: nobody, another student, a page of another
 * site. Nothing of a student is told, and nothing of theirs changes.
 */
import { request } from 'node:http';
import type { MadeLink, StoredLesson, StoredStudent } from '@shedbook/routes';
import { isOpen, ROUTE_NAMES, ROUTES, type Route } from '@shedbook/routes';
import { strToU8, zipSync } from 'fflate';
import { expect, it } from 'vitest';
import { OUTSIDE, PASSPHRASE as RIGHT, tryAsStrangers } from '../../../../internal/testing/strangers.mjs';
import type { TestStore } from '../stores.ts';
import { temporaryFolder } from '../temporary.ts';

const TAKE = 'phone 1';
const DAY = '2026-11-29';
/** Stands in all that is kept of Bram, and nowhere else. */
const SECRET = 'zither-of-bram';

function takeFile(sound: string): Uint8Array {
  const facts = {
    ...{ id: TAKE, startedAt: `${DAY}T09:00:00+01:00`, lesson: 'x', lessonTitle: sound, exercise: null },
    ...{ number: null, form: 'loop', durationSeconds: 1, verdicts: [] },
  };
  return zipSync({ 'take.json': strToU8(JSON.stringify(facts)), 'take.flac': strToU8(sound) }, { level: 0 });
}

interface Told {
  readonly status: number;
  readonly text: string;
  readonly cookie: string;
}

/** Asks as plainly as a program can: no header that was not given. */
function askPlainly(
  url: string,
  method: string,
  path: string,
  headers: Readonly<Record<string, string>>,
  body?: Uint8Array,
): Promise<Told> {
  return new Promise((resolve, reject) => {
    const asked = request(new URL(path, url), { method, headers }, (response) => {
      const pieces: Buffer[] = [];
      response.on('data', (piece: Buffer) => pieces.push(piece));
      response.on('end', () =>
        resolve({
          status: response.statusCode ?? 0,
          text: Buffer.concat(pieces).toString('latin1'),
          cookie: (response.headers['set-cookie']?.[0] ?? '').split(';')[0] ?? '',
        }),
      );
    });
    asked.on('error', reject);
    asked.end(body);
  });
}

/** A desk that others reach, Bram with all that can be kept of a student, and Kaito with a link of his own. */
async function aSchool({ setPassphrase, startTestServer }: TestStore) {
  const dataDir = temporaryFolder();
  await setPassphrase(RIGHT, dataDir);
  const { url } = await startTestServer({ dataDir, address: OUTSIDE });
  const own = { host: 'lessons.example' };
  const json = { 'content-type': 'application/json' };
  const { cookie } = await askPlainly(
    ...([
      url,
      'POST',
      '/api/session',
      { ...own, ...json },
      strToU8(JSON.stringify({ passphrase: RIGHT })),
    ] as const),
  );
  const teacher = { ...own, cookie };
  const desk = async <Kept>(method: string, path: string, body?: unknown) => {
    const bytes = body instanceof Uint8Array ? body : strToU8(JSON.stringify(body ?? null));
    const type = body instanceof Uint8Array ? { 'content-type': 'application/octet-stream' } : json;
    const sends = body === undefined ? {} : type;
    const told = await askPlainly(
      url,
      method,
      path,
      { ...teacher, ...sends },
      body === undefined ? undefined : bytes,
    );
    expect([method, path, told.status < 300]).toEqual([method, path, true]);
    return (told.text === '' ? null : JSON.parse(told.text)) as Kept;
  };
  const student = async (name: string) => {
    const lesson = await desk<StoredLesson>('POST', '/api/lessons', {
      text: `title: ${name}\nexercises: [x x x x]\n`,
    });
    const made = await desk<StoredStudent>('POST', '/api/students', { name });
    const assignments = [
      { lesson: lesson.id, exercise: 'snare x x x x', pinned: false, note: name, toBpm: null, by: null },
    ];
    await desk('PUT', `/api/students/${made.id}`, { name, assignments, revision: made.revision });
    const { address } = await desk<MadeLink>('POST', `/api/students/${made.id}/links`);
    const token = /practice\/([\w-]+)/.exec(address)?.[1] ?? '';
    const sent = await askPlainly(
      ...([url, 'PUT', `/practice/${token}/takes/${encodeURIComponent(TAKE)}`] as const),
      { ...own, 'content-type': 'application/octet-stream' },
      takeFile(name),
    );
    expect(sent.status).toBe(201);
    return { id: made.id, lesson: lesson.id, token };
  };
  const bram = await student(SECRET);
  const take = `/api/students/${bram.id}/takes/${encodeURIComponent(TAKE)}`;
  await desk('PUT', take, { isHeard: true, answer: SECRET, marks: [{ bar: 1, text: SECRET }] });
  await desk('PUT', `${take}/voice`, Uint8Array.of(0xff, 0xfb, 0x90, 0x64, ...strToU8(SECRET)));
  const hour = { attendance: 'came', done: SECRET, notes: SECRET, revision: 0 };
  await desk('PUT', `/api/students/${bram.id}/hours/${DAY}`, hour);
  return { url, own, teacher, desk, bram, kaito: await student('Kaito') };
}

type School = Awaited<ReturnType<typeof aSchool>>;

/** All that the desk tells of Bram, as his teacher reads it. */
async function allOfBram({ desk, bram }: School): Promise<string> {
  const paths = ['', '/log', '/takes', `/hours`, '/links'].map((path) => `/api/students/${bram.id}${path}`);
  const told = await Promise.all([...paths, `/api/lessons/${bram.lesson}`].map((path) => desk('GET', path)));
  return JSON.stringify(told);
}

/** The address of a route with what is Bram's in its places, and the link of whoever asks. */
function addressOf(route: Route, { bram }: School, token: string): string {
  const places: Readonly<Record<string, string>> = {
    ...{ token, take: TAKE, day: DAY, step: '0', format: 'midi', film: 'x', takenAt: `${DAY}T09:00:00Z` },
    id: route.path.startsWith('/api/lessons') ? bram.lesson : bram.id,
  };
  return route.path.replace(/:(\w+)/g, (_place, name: string) => encodeURIComponent(places[name] ?? 'x'));
}

/** What whoever asks would send: a take, or practice. */
function sentWith({ body }: Route) {
  if (body === null) return { type: {}, bytes: undefined };
  if (body === 'bytes')
    return { type: { 'content-type': 'application/octet-stream' }, bytes: takeFile('foreign') };
  const type = { 'content-type': 'application/json' };
  return { type, bytes: strToU8(JSON.stringify({ version: 1, rows: ['{"id":"phone 1"}'] })) };
}

async function tellsNobody(store: TestStore): Promise<void> {
  const school = await aSchool(store);
  const { url, own, teacher, bram, kaito } = school;
  const before = await allOfBram(school);
  expect(before.split(SECRET).length).toBeGreaterThan(5);
  const wrong = bram.token.replace(/^./, (first) => (first === 'A' ? 'B' : 'A'));
  /** Who asks, with which headers and which link; what every guarded and every open route says at most. */
  const askers = [
    { who: 'nobody', headers: own, token: wrong, guarded: 401 },
    {
      who: 'another student',
      headers: { ...own, cookie: `shedbook=${kaito.token}` },
      token: kaito.token,
      guarded: 401,
    },
    {
      who: 'a page elsewhere',
      headers: { ...teacher, origin: 'https://elsewhere.example' },
      token: bram.token,
      guarded: 403,
    },
    {
      who: 'a name elsewhere',
      headers: { ...teacher, host: 'elsewhere.example' },
      token: bram.token,
      guarded: 403,
    },
  ];
  for (const { who, headers, token, guarded } of askers)
    for (const name of ROUTE_NAMES) {
      const route: Route = ROUTES[name];
      const { type, bytes } = sentWith(route);
      const address = addressOf(route, school, token);
      const told = await askPlainly(url, route.method, address, { ...headers, ...type }, bytes);
      expect([who, name, told.text.includes(SECRET)]).toEqual([who, name, false]);
      if (!isOpen(route) || guarded === 403) expect([who, name, told.status]).toEqual([who, name, guarded]);
      else if (who === 'nobody' && route.path.startsWith('/practice'))
        expect([name, told.status]).toEqual([name, 404]);
    }
  // a link opens its own student's lessons and no other's
  for (const path of ['', 'index.html', 'lesson.json']) {
    const told = await askPlainly(url, 'GET', `/practice/${kaito.token}/${bram.lesson}/${path}`, own);
    expect([path, told.status === 200, told.text.includes(SECRET)]).toEqual([path, false, false]);
  }
  // nothing was changed, taken back or erased by any of them
  expect(await allOfBram(school)).toBe(before);
}

async function tellsNoPicture(store: TestStore): Promise<void> {
  const { url, teacher } = await aSchool(store);
  const ask = async (site: string, path = '/api/students') =>
    (await askPlainly(url, 'GET', path, { ...teacher, 'sec-fetch-site': site })).status;
  // W3C, Fetch Metadata Request Headers: cross-site and same-site are other pages; none is the address bar
  expect(
    await Promise.all(['cross-site', 'same-site', 'same-origin', 'none'].map((site) => ask(site))),
  ).toEqual([403, 403, 200, 200]);
  // a link in a message leads here from anywhere
  expect(await ask('cross-site', '/practice/none/week.json')).toBe(404);
}

/** Secrets of each kind that are nearly right; `npm run bench week` tries ten thousand. */
const NEARLY_RIGHT = 100;

/** Every route as everybody who has no business there. */
export function everyRouteSuite(store: TestStore): void {
  it('[SE3801] every route tells nobody, no other student and no page of another site anything of a student', () =>
    tellsNobody(store));

  it('[SE3802] a picture, a script or a form of another site gets nothing either, though its browser names no origin', () =>
    tellsNoPicture(store));

  it('[SE7300] no route opens for secrets that are nearly right, over HTTP, nor under another name or for another site', async () => {
    const dataDir = temporaryFolder();
    await store.setPassphrase(RIGHT, dataDir);
    const { url } = await store.startTestServer({ dataDir, address: OUTSIDE });
    const { asked, leaks } = await tryAsStrangers(url, NEARLY_RIGHT);
    expect(leaks).toEqual([]);
    // definition: from elsewhere and by another name every route was asked, and the desk's by nobody and a student, too
    expect(asked).toBeGreaterThan(5 * ROUTE_NAMES.length);
  });
}
