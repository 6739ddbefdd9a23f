import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { formatPattern, parseLesson } from '@shedbook/core';
import type { SheetPages, StoredLesson } from '@shedbook/routes';
import { unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { readPdf } from '../../../internal/testing/pdf.ts';
import { createLesson, send, sharedTestServer } from '../test/temporary.ts';

const DEMO = readFileSync(
  fileURLToPath(new URL('../../../demo/first-swing.lesson.yaml', import.meta.url)),
  'utf8',
);

const shared = sharedTestServer();

function patternsOf(text: string): readonly string[] {
  const { lesson } = parseLesson(text, 'lesson');
  return lesson?.exercises.map(({ parts }) => formatPattern((parts[0] as (typeof parts)[0]).pattern)) ?? [];
}

describe('files', () => {
  it('[SE18] engraves a lesson as pages and as a PDF of the same pages', async () => {
    const server = shared();
    const { id } = await createLesson(server, DEMO);
    const { body } = await send(server, 'GET', `/api/lessons/${id}/pages`);
    const { pages, revision } = body as SheetPages;
    expect(revision).toBe(1);
    expect(pages.every((page) => page.startsWith('<svg'))).toBe(true);
    const response = await fetch(new URL(`/api/lessons/${id}/sheet.pdf`, server.url));
    expect(response.headers.get('content-disposition')).toBe('attachment; filename="first-swing.pdf"');
    // library: pdf.js 5.4
    const pdf = await readPdf(new Uint8Array(await response.arrayBuffer()));
    expect(pdf.pages.length).toBe(pages.length);
    expect(pdf.title).toBe('First swing');
    // standard: ISO 216, A4 is 210 mm × 297 mm, 595.28 × 841.89 pt
    for (const { widthPt, heightPt } of pdf.pages) {
      expect(widthPt).toBeCloseTo(595.28, 2);
      expect(heightPt).toBeCloseTo(841.89, 2);
    }
  });

  it('[SE18] says that a lesson with problems cannot be engraved', async () => {
    const server = shared();
    const { id } = await createLesson(server, 'meter: five\n');
    const pages = await send(server, 'GET', `/api/lessons/${id}/pages`);
    expect(pages).toMatchObject({ status: 422, body: { code: 'lesson-has-errors' } });
  });

  it('[SE19] takes a lesson out as MusicXML and as MIDI and in again with every exercise', async () => {
    for (const format of ['musicxml', 'midi']) {
      const server = shared();
      const { id } = await createLesson(server, DEMO);
      const out = await fetch(new URL(`/api/lessons/${id}/export/${format}`, server.url));
      expect(out.status).toBe(200);
      const back = await fetch(new URL('/api/import?name=back', server.url), {
        method: 'POST',
        headers: { 'content-type': 'application/octet-stream' },
        body: await out.arrayBuffer(),
      });
      expect(back.status).toBe(201);
      const lesson = (await back.json()) as StoredLesson;
      // definition: a round trip keeps the number of exercises; the rhythm of each is the exchange package's own rule
      expect(patternsOf(lesson.text)).toHaveLength(patternsOf(DEMO).length);
    }
  });

  it('[SE20] refuses a file that is neither, and says what kind of problem it has', async () => {
    const server = shared();
    const response = await fetch(new URL('/api/import?name=photo.jpg', server.url), {
      method: 'POST',
      headers: { 'content-type': 'application/octet-stream' },
      body: new Uint8Array([0xff, 0xd8, 0xff, 0xe0, 1, 2, 3]),
    });
    expect(response.status).toBe(422);
    expect(await response.json()).toEqual({
      code: 'unreadable-file',
      // standard: XML 1.0: a document begins with "<", which a photo does not
      values: { why: expect.objectContaining({ fact: 'fault', expected: { fact: 'xml-well-formed' } }) },
    });
    const format = await send(server, 'GET', '/api/lessons/none/export/docx');
    expect(format).toMatchObject({ status: 400, body: { code: 'bad-request' } });
  });
});

it('[SE33] gives out a take-home pack while it goes on answering', async () => {
  const server = shared();
  const { id } = await createLesson(server, 'title: Ton für Ton\ntempo: 240\nexercises: ["x x x x"]\n');
  const asked = fetch(new URL(`/api/lessons/${id}/practice.zip`, server.url));
  const { status } = await send(server, 'GET', `/api/lessons/${id}/pages`);
  expect(status).toBe(200);
  const response = await asked;
  expect(response.headers.get('content-type')).toBe('application/zip');
  expect(response.headers.get('content-disposition')).toBe('attachment; filename="ton-fur-ton.zip"');
  const files = unzipSync(new Uint8Array(await response.arrayBuffer()));
  const pack = JSON.parse(Buffer.from(files['practice/pack.json'] ?? []).toString('utf8'));
  expect(pack).toMatchObject({ id, lesson: { title: 'Ton für Ton' } });
  const broken = await createLesson(server, 'meter: five\n');
  const refused = await send(server, 'GET', `/api/lessons/${broken.id}/practice.zip`);
  expect(refused).toMatchObject({ status: 422, body: { code: 'lesson-has-errors' } });
});

it('[SE38] [SE5900] gives out a pack that carries what was set of its lesson for one student', async () => {
  const server = shared();
  const { id } = await createLesson(server, 'title: Swing\ntempo: 240\nexercises: ["x x x x"]\n');
  const { body: made } = await send(server, 'POST', '/api/students', { name: 'Kaito' });
  const student = made as { readonly id: string; readonly revision: number };
  const set = { exercise: 'x x x x', pinned: false, note: 'Lightly.', toBpm: 96, by: '2026-12-06' };
  const kept = await send(server, 'PUT', `/api/students/${student.id}`, {
    ...{ name: 'Kaito', revision: student.revision, level: 'advanced', setUp: 'left-handed' },
    assignments: [
      { lesson: id, ...set },
      { lesson: 'another', ...set },
    ],
  });
  expect(kept.status).toBe(200);
  const response = await fetch(new URL(`/api/lessons/${id}/practice.zip?student=${student.id}`, server.url));
  const files = unzipSync(new Uint8Array(await response.arrayBuffer()));
  const pack = JSON.parse(Buffer.from(files['practice/pack.json'] ?? []).toString('utf8'));
  expect([pack.assignments, pack.level, pack.setUp]).toEqual([[set], 'advanced', 'left-handed']);
});
