import { readdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import type { FilmState } from '@shedbook/routes';
import { expect, it, onTestFinished } from 'vitest';
import { createLesson, send, startTestServer } from '../test/temporary.ts';

/** One bar at four beats a second: the shortest film that there is. */
const LESSON =
  'title: Short one\ntempo: 240\nexercises: [x x x x]\nforms: {One: {sections: [{pattern: 1}]}}\n';
const WISH = {
  ...{ exercises: [1], form: 'One', bpm: null, shape: 'landscape', scheme: 'light' },
  ...{ buildUp: false, language: 'en' },
};
const LOOK_MS = 100;
const PATIENCE_MS = 120_000;

function folders(): readonly string[] {
  return readdirSync(tmpdir()).filter((name) => name.startsWith('shedbook-films-'));
}

it(
  '[SE2000] plans a film, makes it, gives it out with what lies beside it, and keeps nothing of one that is left off',
  async () => {
    const before = folders();
    const server = await startTestServer();
    const { id } = await createLesson(server, LESSON);
    const plan = await send(server, 'POST', `/api/lessons/${id}/film-plan`, WISH);
    // definition: 3 s of title, 1 s, two bars of a second, 2 s of ringing
    expect(plan).toMatchObject({ status: 200, body: { seconds: 8, widthPx: 1920, heightPx: 1080 } });
    const begin = async () =>
      (await send(server, 'POST', `/api/lessons/${id}/films`, WISH)).body as FilmState;
    const [first, second] = [await begin(), await begin()];
    const own = folders().filter((name) => !before.includes(name));
    expect(own).toHaveLength(1);
    // The second waits for the first, and is left off.
    expect((await send(server, 'GET', `/api/films/${second.id}`)).body).toMatchObject({ at: 'waiting' });
    expect((await send(server, 'DELETE', `/api/films/${second.id}`)).status).toBe(204);
    expect((await send(server, 'GET', `/api/films/${second.id}`)).status).toBe(404);
    const seen = new Set<string>();
    let state = first;
    while (state.at !== 'made' && state.at !== 'failed') {
      seen.add(state.at);
      await new Promise((resolve) => setTimeout(resolve, LOOK_MS));
      state = (await send(server, 'GET', `/api/films/${first.id}`)).body as FilmState;
    }
    expect(state.at).toBe('made');
    expect([...seen]).toContain('picture');
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
      if (part === 'film') expect(content.toString('latin1', 4, 8)).toBe('ftyp');
    }
    const third = await begin();
    expect((await send(server, 'DELETE', `/api/films/${third.id}`)).status).toBe(204);
    await server.close();
    expect(folders()).toEqual(before);
  },
  PATIENCE_MS,
);

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
