import { readdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Pack } from '@shedbook/pack';
import type { FilmPlan, FilmState } from '@shedbook/routes';
import { strFromU8, unzipSync } from 'fflate';
import { expect, it, onTestFinished } from 'vitest';
import { recordingOf } from '../test/recording.ts';
import { createLesson, send, startTestServer, temporaryFolder } from '../test/temporary.ts';

/** One bar at four beats a second: the shortest film that there is. */
const LESSON =
  'title: Short one\ntempo: 240\nexercises: [x x x x]\nforms: {One: {sections: [{pattern: 1}]}}\n';
const WISH = {
  ...{ exercises: [1], form: 'One', bpm: null, shape: 'landscape', scheme: 'light' },
  ...{ buildUp: false, language: 'en' },
};
const LOOK_MS = 100;
const PATIENCE_MS = 300_000;

/** The films that lie beside a store. */
function folders(dataDir: string): readonly string[] {
  return readdirSync(join(dataDir, 'films'));
}

it(
  '[SE2000] [SE5400] [SE5404] [SE7302] plans a film, makes it although its server ends meanwhile, gives it out with what lies beside it, and keeps nothing of one that is left off',
  async () => {
    const dataDir = temporaryFolder();
    let server = await startTestServer({ dataDir });
    const { id } = await createLesson(server, LESSON);
    const plan = await send(server, 'POST', `/api/lessons/${id}/film-plan`, WISH);
    // definition: 3 s of title, 1 s, two bars of a second, 2 s of ringing
    expect(plan).toMatchObject({ status: 200, body: { seconds: 8, widthPx: 1920, heightPx: 1080 } });
    const begin = async () =>
      (await send(server, 'POST', `/api/lessons/${id}/films`, { ...WISH, countAloud: true }))
        .body as FilmState;
    const [first, second] = [await begin(), await begin()];
    expect(folders(dataDir).toSorted()).toEqual([first.id, second.id].toSorted());
    // The second waits for the first, and is left off.
    expect((await send(server, 'GET', `/api/films/${second.id}`)).body).toMatchObject({ at: 'waiting' });
    expect((await send(server, 'DELETE', `/api/films/${second.id}`)).status).toBe(204);
    expect((await send(server, 'GET', `/api/films/${second.id}`)).status).toBe(404);
    expect(folders(dataDir)).toEqual([first.id]);
    const stateNow = async () => (await send(server, 'GET', `/api/films/${first.id}`)).body as FilmState;
    await expect.poll(async () => (await stateNow()).at, { timeout: PATIENCE_MS }).not.toBe('waiting');
    await server.close();
    server = await startTestServer({ dataDir });
    const seen = new Set<string>();
    let state = first;
    while (state.at !== 'made' && state.at !== 'failed') {
      seen.add(state.at);
      await new Promise((resolve) => setTimeout(resolve, LOOK_MS));
      state = await stateNow();
    }
    expect(state.at).toBe('made');
    expect([...seen]).toContain('picture');
    // definition: what was said before it was made is right within a third
    const said = (plan.body as FilmPlan).bytes;
    expect(Math.abs((state.files[0]?.bytes ?? 0) / said - 1)).toBeLessThan(1 / 3);
    expect(state.files.map(({ part, name }) => [part, name])).toEqual([
      ['film', 'short-one.mp4'],
      ['captions-en', 'short-one.en.vtt'],
      ['captions-de', 'short-one.de.vtt'],
      ['chapters', 'short-one.chapters.txt'],
      ['cover', 'short-one.png'],
    ]);
    for (const { part, bytes } of state.files) {
      const response = await fetch(new URL(`/api/films/${first.id}/${part}`, server.url));
      const content = Buffer.from(await response.arrayBuffer());
      expect(content.length, part).toBe(bytes);
      // standard: ISO/IEC 14496-12, 4.3: a file begins with its type
      if (part === 'captions-en') expect(content.toString()).toContain('\nA voice counts: 1, 2, 3, 4.\n');
      if (part === 'film') expect(content.toString('latin1', 4, 8)).toBe('ftyp');
    }
    const pack = async (lesson: string, film: string) =>
      fetch(new URL(`/api/lessons/${lesson}/practice.zip?films=${film}`, server.url));
    const zip = unzipSync(new Uint8Array(await (await pack(id, first.id)).arrayBuffer()));
    const content = zip['practice/files/films/01.mp4'] ?? new Uint8Array();
    expect(content.length).toBe(state.files.find(({ part }) => part === 'film')?.bytes);
    const other = await createLesson(server, LESSON);
    for (const [lesson, film] of [[other.id, first.id] as const, [id, second.id] as const])
      expect([await (await pack(lesson, film)).json()]).toEqual([{ code: 'no-such-film', values: {} }]);
    const third = await begin();
    expect((await send(server, 'DELETE', `/api/films/${third.id}`)).status).toBe(204);
    // with its lesson go its films, and all that they were made of
    expect((await send(server, 'DELETE', `/api/lessons/${id}/for-good`)).status).toBe(204);
    expect(folders(dataDir)).toEqual([]);
  },
  PATIENCE_MS,
);

/** Sends a file in two parts, the second of them first. @returns its name on the server */
async function sentInParts(
  server: Awaited<ReturnType<typeof startTestServer>>,
  content: Uint8Array<ArrayBuffer>,
) {
  const { body } = await send(server, 'POST', '/api/performances', {});
  const { performance } = body as { readonly performance: string };
  const half = Math.floor(content.length / 2);
  for (const [at, part] of [
    [half, content.subarray(half)] as const,
    [0, content.subarray(0, half)] as const,
  ]) {
    const to = new URL(`/api/performances/${performance}/parts/${at}`, server.url);
    const headers = { 'content-type': 'application/octet-stream' };
    expect((await fetch(to, { method: 'PUT', body: part, headers })).status).toBe(204);
  }
  return performance;
}

it('[SE7200] takes a film that a browser made into the pack of its lesson, and none that came in part', async () => {
  const server = await startTestServer();
  const { id } = await createLesson(server, LESSON);
  const content = Uint8Array.from({ length: 1000 }, (_, i) => i % 251);
  const performance = await sentInParts(server, content);
  const take = (lesson: string, change: object) =>
    send(server, 'POST', `/api/lessons/${lesson}/sent-films`, {
      ...{ performance, bytes: content.length, exercise: 1, ending: '.webm', ...change },
    });
  const gone = { status: 404, body: { code: 'no-such-performance' } };
  expect(await take(id, { bytes: content.length + 1 })).toMatchObject(gone);
  expect(await take(id, { performance: 'gone' })).toMatchObject(gone);
  expect(await take('gone', {})).toMatchObject({ status: 404, body: { code: 'no-such-lesson' } });
  expect(await take(id, { ending: '.exe' })).toMatchObject({ status: 400 });
  const taken = await take(id, {});
  expect(taken).toMatchObject({ status: 201, body: { at: 'made', files: [{ part: 'film', bytes: 1000 }] } });
  const { id: film } = taken.body as FilmState;
  const pack = await fetch(new URL(`/api/lessons/${id}/practice.zip?films=${film}`, server.url));
  const zip = unzipSync(new Uint8Array(await pack.arrayBuffer()));
  expect(zip['practice/files/films/01.webm']).toEqual(content);
  // it is a film now, and no performance any more
  expect(await take(id, {})).toMatchObject(gone);
});

it('[SE2001] says that FFmpeg is missing, that there is no such lesson or film, and what is wrong with a wish', async () => {
  const { PATH } = process.env;
  process.env['PATH'] = tmpdir();
  onTestFinished(() => {
    process.env['PATH'] = PATH;
  });
  const server = await startTestServer();
  const { id } = await createLesson(server, LESSON);
  const planned = (lesson: string, wish: object) =>
    send(server, 'POST', `/api/lessons/${lesson}/film-plan`, wish);
  expect(await planned(id, WISH)).toMatchObject({ status: 501, body: { code: 'no-ffmpeg' } });
  expect(await planned('gone', WISH)).toMatchObject({ status: 404, body: { code: 'no-such-lesson' } });
  expect(await planned(id, { ...WISH, exercises: [9] })).toMatchObject({
    ...{ status: 422, body: { code: 'lesson-has-errors' } },
  });
  expect(await planned(id, { ...WISH, shape: 'round' })).toMatchObject({ status: 400 });
  expect(await send(server, 'GET', '/api/films/gone')).toMatchObject({
    ...{ status: 404, body: { code: 'no-such-film' } },
  });
});

it(
  '[SE3601] films follow performances that are sent in parts and listened to; what cannot be followed is refused',
  async () => {
    const text = LESSON.replace('{pattern: 1}', '{pattern: 4}').replace('[x x x x]', '[x . x ., . x x x]');
    const server = await startTestServer();
    const { id } = await createLesson(server, text);
    const sent = (content: Uint8Array<ArrayBuffer>) => sentInParts(server, content);
    const hear = (performance: string, exercise: number) =>
      send(server, 'POST', `/api/lessons/${id}/performances`, { performance, exercise, form: 'One' });
    const plan = (performance: string, more: object) =>
      send(server, 'POST', `/api/lessons/${id}/film-plan`, {
        ...{ ...WISH, framesPerSecond: 60 },
        over: { performances: [performance], picture: null, heard: 'both', speeds: [1], ...more },
      });
    const played = await sent(await recordingOf(text));
    expect(await plan(played, {})).toMatchObject({ status: 404, body: { code: 'no-such-performance' } });
    expect(await hear(played, 2)).toMatchObject({
      ...{ status: 422, body: { code: 'performance-of-another', values: { exercise: 1 } } },
    });
    const heard = await hear(played, 1);
    expect(heard).toMatchObject({ status: 200, body: { exercise: 1, faults: 0, hasPicture: false } });
    const { seconds } = heard.body as { readonly seconds: number };
    // definition: half as fast is twice as long; the title and what stands still before are the same
    const [once, slower] = [await plan(played, {}), await plan(played, { speeds: [0.5] })].map(
      ({ body }) => (body as FilmPlan).seconds,
    );
    expect((slower ?? 0) - (once ?? 0)).toBeCloseTo(seconds, 0);
    const pack = (performances: string) =>
      fetch(new URL(`/api/lessons/${id}/practice.zip?performances=${performances}`, server.url));
    const zip = unzipSync(new Uint8Array(await (await pack(played)).arrayBuffer()));
    const told = JSON.parse(strFromU8(zip['practice/pack.json'] ?? new Uint8Array())) as Pack;
    expect(told.demonstrations?.map(({ exercise, path }) => [exercise, path])).toEqual([
      [1, 'demonstrations/01.flac'],
    ]);
    // standard: RFC 9639, 6: a FLAC stream begins with "fLaC"
    expect(strFromU8(zip['practice/demonstrations/01.flac']?.subarray(0, 4) ?? new Uint8Array())).toBe(
      'fLaC',
    );
    expect((await pack('gone')).status).toBe(404);
    const noise = await sent(new Uint8Array(1000));
    expect(await hear(noise, 1)).toMatchObject({ status: 422, body: { code: 'performance-unreadable' } });
    expect((await send(server, 'DELETE', `/api/performances/${played}`)).status).toBe(204);
    expect(await plan(played, {})).toMatchObject({ status: 404 });
    expect(await hear('gone', 1)).toMatchObject({ status: 404, body: { code: 'no-such-performance' } });
  },
  PATIENCE_MS,
);
