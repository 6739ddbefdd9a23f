import { cpSync } from 'node:fs';
import { join } from 'node:path';
import type { BinContent, StoredBook, WrittenBook } from '@shedbook/routes';
import { expect, it } from 'vitest';
import { keptSamplePath } from '../../../internal/testing/kept-samples.ts';
import { readPdf } from '../../../internal/testing/pdf.ts';
import { createLesson, send, sharedTestServer, temporaryFolder } from '../test/temporary.ts';
import { createBookStore } from './store/books.ts';
import { openDatabase, STORE_FILE } from './store/open.ts';

const shared = sharedTestServer();

const written = (chapters: readonly string[]): WrittenBook => ({
  ...{ title: 'The first year', by: 'Oda Lindqvist-Reyes', text: null, paper: 'A5' },
  ...{ twoSided: true, contents: true, key: true, index: true },
  chapters: chapters.map((lesson) => ({ lesson, title: null })),
});

async function makeBook(book: WrittenBook): Promise<StoredBook> {
  const { status, body } = await send(shared(), 'POST', '/api/books', book);
  expect(status).toBe(201);
  return body as StoredBook;
}

it('[SE5200] keeps a book at a revision, refuses an older one, and puts it away; its lessons stay', async () => {
  const { id: lesson } = await createLesson(shared(), 'title: One\nexercises: [x x x x]\n');
  const { id, revision, updatedAt, ...said } = await makeBook(written([lesson]));
  expect([revision, said]).toEqual([1, written([lesson])]);
  const path = `/api/books/${id}`;
  const renamed = { ...said, title: 'The second year' };
  const saved = await send(shared(), 'PUT', path, { ...renamed, revision });
  expect([saved.status, saved.body]).toEqual([200, expect.objectContaining({ ...renamed, revision: 2 })]);
  const late = await send(shared(), 'PUT', path, { ...said, title: 'Too late', revision });
  expect([late.status, late.body]).toEqual([409, { code: 'book-changed', values: { kept: saved.body } }]);
  expect((await send(shared(), 'GET', '/api/books')).body).toEqual([saved.body]);
  const everything = (await send(shared(), 'GET', '/api/everything.json')).body;
  expect((everything as { readonly books: unknown }).books).toEqual([saved.body]);
  const wrong = await send(shared(), 'PUT', path, { ...said, title: '', revision: 2 });
  expect(wrong.status).toBe(400);
  expect((await send(shared(), 'DELETE', path)).status).toBe(204);
  expect((await send(shared(), 'DELETE', path)).body).toMatchObject({ code: 'no-such-book' });
  expect((await send(shared(), 'PUT', path, { ...said, revision: 2 })).body).toMatchObject({
    code: 'no-such-book',
  });
  expect((await send(shared(), 'GET', `/api/lessons/${lesson}`)).status).toBe(200);
});

it('[SE6201] keeps a book that was put away in the bin, brings it back as it was, and erases it from there', async () => {
  const { id, updatedAt: _, ...said } = await makeBook({ ...written([]), title: 'Put away' });
  const bin = async () => ((await send(shared(), 'GET', '/api/bin')).body as BinContent).books;
  const list = async () => (await send(shared(), 'GET', '/api/books')).body;
  const path = `/api/books/${id}`;
  expect((await send(shared(), 'POST', `${path}/restore`)).body).toMatchObject({ code: 'no-such-book' });
  await send(shared(), 'DELETE', path);
  expect(await bin()).toContainEqual({ id, title: 'Put away', removedAt: expect.any(String) });
  expect(await list()).not.toContainEqual(expect.objectContaining({ id }));
  expect((await send(shared(), 'GET', `${path}/book.pdf`)).status).toBe(404);
  const back = await send(shared(), 'POST', `${path}/restore`);
  expect([back.status, back.body]).toEqual([200, expect.objectContaining({ id, ...said })]);
  expect(await bin()).not.toContainEqual(expect.objectContaining({ id }));
  expect(await list()).toContainEqual(back.body);
  await send(shared(), 'DELETE', path);
  expect((await send(shared(), 'DELETE', `${path}/for-good`)).status).toBe(204);
  expect(await bin()).not.toContainEqual(expect.objectContaining({ id }));
});

it('[SE6201] forgets a book after its thirty days in the bin, and no sooner', async () => {
  const database = openDatabase(temporaryFolder());
  const books = createBookStore(database, () => new Date('2026-11-30T03:00:00Z'));
  const { id } = await books.create(written([]));
  await books.remove(id);
  expect(await books.forgetRemovedBefore(new Date('2026-11-30T03:00:00Z'))).toBe(0);
  expect(await books.forgetRemovedBefore(new Date('2026-11-30T03:00:01Z'))).toBe(1);
  expect(await books.restore(id)).toBeNull();
  await database.destroy();
});

it('[SE5201] prints a book in its order, and says which lessons keep it from that', async () => {
  const one = await createLesson(shared(), 'title: One\nexercises: [x x x x]\n');
  const two = await createLesson(shared(), 'title: Two\nexercises: [x . x .]\n');
  const faulty = await createLesson(shared(), 'title: Three\nexercises: [x q x .]\n');
  const book = await makeBook(written([two.id, one.id]));
  const response = await fetch(new URL(`/api/books/${book.id}/book.pdf`, shared().url));
  expect(response.headers.get('content-disposition')).toContain('the-first-year.pdf');
  const { title, pages } = await readPdf(new Uint8Array(await response.arrayBuffer()));
  expect(title).toBe('The first year');
  const at = (name: string) =>
    pages.findIndex(({ texts }, index) => index > 3 && texts.some(({ text }) => text === name));
  expect(at('Two')).toBeGreaterThan(3);
  expect(at('One')).toBeGreaterThan(at('Two'));
  const refused = async (chapters: readonly string[]) => {
    const { id } = await makeBook(written(chapters));
    return (await send(shared(), 'GET', `/api/books/${id}/book.pdf`)).body;
  };
  const unfinished = (lessons: readonly string[]) => ({ code: 'book-unfinished', values: { lessons } });
  expect(await refused([])).toEqual(unfinished([]));
  expect(await refused([one.id, 'gone'])).toEqual(unfinished(['gone']));
  expect(await refused([faulty.id, one.id])).toEqual(unfinished([faulty.id]));
});

it('[SE6204] prints those sections of a lesson that a chapter names, and says where one is gone', async () => {
  const text =
    'title: Limbs\nsections: [{heading: Feet, exercises: [x x x x]}, {heading: Hands, exercises: [x . x .]}]\n';
  const { id: lesson } = await createLesson(shared(), text);
  const printed = async (sections: readonly (string | number)[]) => {
    const plain = { ...written([]), contents: false, key: false, index: false };
    const book = await makeBook({ ...plain, chapters: [{ lesson, title: null, sections }] });
    return fetch(new URL(`/api/books/${book.id}/book.pdf`, shared().url));
  };
  const only = await readPdf(new Uint8Array(await (await printed(['Hands'])).arrayBuffer()));
  const texts = only.pages.flatMap(({ texts: all }) => all.map(({ text: each }) => each));
  expect([texts.includes('Hands'), texts.includes('Feet')]).toEqual([true, false]);
  const gone = await (await printed(['Heads', 1])).json();
  expect(gone).toEqual({ code: 'book-unfinished', values: { lessons: [lesson] } });
});

it('[SE42] finds no book in a store from before there were some, and then the first', async () => {
  const folder = temporaryFolder();
  cpSync(keptSamplePath('store-17.sqlite'), join(folder, STORE_FILE));
  const database = openDatabase(folder);
  const books = createBookStore(database, () => new Date('2026-11-30T03:00:00Z'));
  expect(await books.list()).toEqual([]);
  const { id } = await books.create(written([]));
  expect((await books.read(id))?.title).toBe('The first year');
  await database.destroy();
});
