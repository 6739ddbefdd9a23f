import { cpSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Pack } from '@shedbook/pack';
import type { KeptDemonstration, MadeLink, StoredBook, StoredLesson, StoredStudent } from '@shedbook/routes';
import { expect, it } from 'vitest';
import { keptSamplePath } from '../../../internal/testing/kept-samples.ts';
import { recordingOf } from '../test/recording.ts';
import { createLesson, send, startTestServer, temporaryFolder } from '../test/temporary.ts';
import { backUp, restore } from './backup/by-command.ts';
import { createDemonstrationStore } from './store/demonstrations.ts';
import { openDatabase, STORE_FILE } from './store/open.ts';
import { createStudentStore } from './store/students.ts';
import { openTakeFiles } from './store/take-files.ts';
import { createTakeStore } from './store/takes.ts';

const PATIENCE_MS = 120_000;
const TEXT = `title: Short one
tempo: 240
exercises:
  - {pattern: x . x ., id: first}
  - x x x x
forms: {One: {sections: [{pattern: 4}]}}
`;

/** A desk with a lesson that is set for Kaito, who has a link, and exercise 1 kept as its teacher plays it. */
async function aDesk() {
  const dataDir = temporaryFolder();
  const server = await startTestServer({ dataDir });
  const { id } = await createLesson(server, TEXT);
  const kaito = (await send(server, 'POST', '/api/students', { name: 'Kaito' })).body as StoredStudent;
  const assignments = ['first', 'snare x x x x'].map((exercise) => {
    return { lesson: id, exercise, pinned: false, note: null };
  });
  await send(server, 'PUT', `/api/students/${kaito.id}`, { name: 'Kaito', assignments, revision: 1 });
  const made = (await send(server, 'POST', `/api/students/${kaito.id}/links`)).body as MadeLink;
  const { body } = await send(server, 'POST', '/api/performances', {});
  const { performance } = body as { readonly performance: string };
  await fetch(new URL(`/api/performances/${performance}/parts/0`, server.url), {
    method: 'PUT',
    headers: { 'content-type': 'application/octet-stream' },
    body: await recordingOf(TEXT),
  });
  const keep = (name: string) =>
    send(server, 'POST', `/api/lessons/${id}/demonstrations`, { performance: name });
  expect(await keep(performance)).toMatchObject({ status: 404, body: { code: 'no-such-performance' } });
  const wish = { performance, exercise: 1, form: 'One' };
  expect((await send(server, 'POST', `/api/lessons/${id}/performances`, wish)).status).toBe(200);
  const kept = await keep(performance);
  expect(kept).toMatchObject({ status: 201, body: [{ exercise: 1, isShown: true }] });
  const get = (path: string, headers: Record<string, string> = {}) =>
    fetch(new URL(`${id}/${path}`, made.address), { headers });
  const shown = async () => ((await (await get('pack.json')).json()) as Pack).demonstrations;
  const list = async () =>
    (await send(server, 'GET', `/api/lessons/${id}/demonstrations`)).body as readonly KeptDemonstration[];
  const save = (text: string, revision: number) =>
    send(server, 'PUT', `/api/lessons/${id}`, { text, revision, cause: 'edit' });
  return { server, dataDir, id, get, shown, list, save };
}

/** Whether bytes lie anywhere in a folder of a store. */
function isIn(dataDir: string, bytes: Uint8Array): boolean {
  const files = readdirSync(dataDir, { withFileTypes: true }).filter((each) => each.isFile());
  return files.some(({ name }) => readFileSync(join(dataDir, name)).includes(Buffer.from(bytes)));
}

it(
  '[SE5401] [SE6203] behind a private link students hear an exercise as the teacher plays it, also offline, as long as it is there and played so',
  async () => {
    const { server, id, get, shown, list, save } = await aDesk();
    const told = await shown();
    expect(told).toMatchObject([{ exercise: 1, path: 'demonstrations/01.flac', formBars: [1, 2, 3, 4] }]);
    const path = told?.[0]?.path ?? '';
    const sound = await get(path, { range: 'bytes=0-3' });
    // standard: RFC 9639, 6: a FLAC stream begins with "fLaC"; RFC 9110, 15.3.7
    expect([sound.status, sound.headers.get('content-type'), await sound.text()]).toEqual([
      206,
      'audio/flac',
      'fLaC',
    ]);
    // definition: what the page's worker keeps is listed in it, each file by its sum
    expect(await (await get('sw.js')).text()).toContain(path);
    const { id: _, ...one } = (await list())[0] as KeptDemonstration;
    expect(one).toMatchObject({ exercise: 1, isShown: true });
    // another exercise before it: it is the second one now, which is the same
    const moved = TEXT.replace('exercises:', 'exercises:\n  - . x . x');
    await save(moved, 1);
    expect([(await shown())?.map(({ exercise }) => exercise), (await list())[0]?.exercise]).toEqual([[2], 2]);
    // the same name with other strokes, and no exercise: nobody is shown what is played no more
    for (const [index, text] of [
      TEXT.replace('x . x .', 'x . . x'),
      TEXT.replace('  - {pattern: x . x ., id: first}\n', ''),
    ].entries()) {
      await save(text, 2 + index);
      expect([await shown(), (await list()).map(({ isShown }) => isShown)]).toEqual([undefined, [false]]);
    }
    expect((await list())[0]?.exercise).toBeNull();
    // it is taken back
    await save(TEXT, 4);
    expect(await shown()).toHaveLength(1);
    // everybody's pack has it, that of a book too, and what goes out as JSON names it
    const zip = await fetch(new URL(`/api/lessons/${id}/practice.zip`, server.url));
    expect(Buffer.from(await zip.arrayBuffer()).includes('demonstrations/01.flac')).toBe(true);
    const chapters = [{ lesson: id, title: null }];
    const parts = { twoSided: false, contents: false, key: false, index: false };
    const written = { title: 'One lesson', by: null, text: null, paper: null, chapters, ...parts };
    const book = (await send(server, 'POST', '/api/books', written)).body as StoredBook;
    const packed = await fetch(new URL(`/api/books/${book.id}/practice.zip`, server.url));
    expect(Buffer.from(await packed.arrayBuffer()).includes('short-one/demonstrations/01.flac')).toBe(true);
    const all = (await send(server, 'GET', '/api/everything.json')).body as {
      readonly lessons: readonly unknown[];
    };
    expect(all.lessons).toMatchObject([{ media: [], demonstrations: [{ exercise: 'first' }] }]);
  },
  PATIENCE_MS,
);

it(
  '[SE5402] it is in a backup, and what is erased is gone from the disk and from what is restored',
  async () => {
    const { server, dataDir, id, get, shown, list } = await aDesk();
    const flac = new Uint8Array(await (await get((await shown())?.[0]?.path ?? '')).arrayBuffer());
    const inside = flac.subarray(2000, 2200);
    expect(isIn(dataDir, inside)).toBe(true);
    const { file } = await backUp(dataDir, join(temporaryFolder(), 'desk.tar'));
    const elsewhere = temporaryFolder();
    await restore(elsewhere, file);
    const database = openDatabase(elsewhere);
    const [whole] = await createDemonstrationStore(database, () => new Date()).whole(id);
    await database.destroy();
    expect([whole?.exercise, whole?.flac]).toEqual(['first', flac]);
    const [kept] = await list();
    const path = `/api/demonstrations/${kept?.id}`;
    expect((await send(server, 'DELETE', path)).status).toBe(204);
    expect((await send(server, 'DELETE', path)).body).toEqual({ code: 'no-such-demonstration', values: {} });
    expect([await list(), await shown(), isIn(dataDir, inside)]).toEqual([[], undefined, false]);
    await server.close();
    // what is restored from before has it no more, since it was erased here
    await restore(dataDir, file);
    const again = openDatabase(dataDir);
    expect(await createDemonstrationStore(again, () => new Date()).of(id)).toEqual([]);
    await again.destroy();
    // with its lesson it goes too
    const third = await startTestServer({ dataDir: elsewhere });
    expect(isIn(elsewhere, inside)).toBe(true);
    expect((await send(third, 'DELETE', `/api/lessons/${id}/for-good`)).status).toBe(204);
    expect(isIn(elsewhere, inside)).toBe(false);
  },
  PATIENCE_MS,
);

it('[SE42] keeps both voice notes of a store from before demonstrations were kept, and keeps one from then on', async () => {
  const folder = temporaryFolder();
  cpSync(keptSamplePath('store-16.sqlite'), join(folder, STORE_FILE));
  const database = openDatabase(folder);
  const [kaito] = (await createStudentStore(database, () => new Date()).page({ find: 'kaito' })).students;
  const takes = createTakeStore(database, openTakeFiles(folder), () => new Date());
  // definition: what the file was made of, internal/fixtures/versions/SOURCE.md
  expect(await takes.of(kaito?.id ?? '')).toMatchObject([{ notes: [{ bar: null }, { bar: 2 }] }]);
  const [lesson] = (await database.selectFrom('lessons').select('id').execute()) as readonly Pick<
    StoredLesson,
    'id'
  >[];
  const store = createDemonstrationStore(database, () => new Date());
  expect(await store.of(lesson?.id ?? '')).toEqual([]);
  const made = { exercise: 'one', plays: 'x', facts: '{}', flac: Uint8Array.of(1, 2) };
  await store.keep(lesson?.id ?? '', made);
  await store.keep(lesson?.id ?? '', { ...made, flac: Uint8Array.of(3) });
  expect((await store.whole(lesson?.id ?? '')).map(({ flac }) => [...flac])).toEqual([[3]]);
  await database.destroy();
});
