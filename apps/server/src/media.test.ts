import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { SheetPages } from '@shedbook/routes';
import { strToU8, unzipSync } from 'fflate';
import { expect, it } from 'vitest';
import { createLesson, send, startTestServer, temporaryFolder } from '../test/temporary.ts';
import { backUp, restore } from './backup/by-command.ts';

const SVG = strToU8(
  '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 30 10"><path d="M0 0H30V10Z"/></svg>',
);
const MP3 = Uint8Array.from({ length: 2000 }, (_, at) => [0x49, 0x44, 0x33][at] ?? at % 251);

type Server = Awaited<ReturnType<typeof startTestServer>>;

function keep({ url }: Server, name: string, body: Uint8Array): Promise<Response> {
  return fetch(new URL(`/api/media?name=${encodeURIComponent(name)}`, url), {
    method: 'POST',
    headers: { 'content-type': 'application/octet-stream' },
    body: Buffer.from(body),
  });
}

async function pathOf(server: Server, name: string, body: Uint8Array): Promise<string> {
  return ((await (await keep(server, name, body)).json()) as { readonly path: string }).path;
}

/** A desk with two lessons that show a sound, one of them a picture too. */
async function aDesk() {
  const dataDir = temporaryFolder();
  const server = await startTestServer({ dataDir });
  const picture = await pathOf(server, 'The grip.svg', SVG);
  const sound = await pathOf(server, 'slow.mp3', MP3);
  const of = (media: string) => `title: The grip\nmedia: ${media}\n`;
  const { id } = await createLesson(server, of(`[${picture}, ${sound}]`));
  await createLesson(server, of(sound));
  return { server, dataDir, picture, sound, id };
}

it('[SE4204] keeps pictures, sound and video by their content, once each, and refuses whatever else comes', async () => {
  const { server, dataDir, picture, sound } = await aDesk();
  expect(picture).toMatch(/^media\/[0-9a-f]{24}\.svg$/);
  expect(await pathOf(server, 'again.svg', SVG)).toBe(picture);
  expect(readdirSync(join(dataDir, 'media'))).toHaveLength(2);
  const script = strToU8('<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1 1"><script/></svg>');
  for (const [name, body, fault] of [
    ['a.svg', script, 'scripts'],
    ['a.exe', MP3, 'other-content'],
    ['a.png', MP3, 'other-content'],
  ] as const) {
    const answer = await keep(server, name, body);
    expect([answer.status, await answer.json()]).toEqual([
      422,
      { code: 'medium-refused', values: { fault } },
    ]);
  }
  const shown = await fetch(new URL(`/api/${picture}`, server.url));
  expect([shown.headers.get('content-type'), new Uint8Array(await shown.arrayBuffer())]).toEqual([
    'image/svg+xml',
    SVG,
  ]);
  // standard: RFC 9110, 14.1.2 and 15.3.7
  const part = await fetch(new URL(`/api/${sound}`, server.url), { headers: { range: 'bytes=0-2' } });
  expect([part.status, part.headers.get('content-range'), await part.text()]).toEqual([
    206,
    'bytes 0-2/2000',
    'ID3',
  ]);
  for (const name of ['..%2Flessons.sqlite', 'lessons.sqlite', `${'0'.repeat(24)}.png`])
    expect((await fetch(new URL(`/api/media/${name}`, server.url))).status, name).toBe(404);
});

it('[SE4204] prints them, and puts them into packs', async () => {
  const { server, picture, sound, id } = await aDesk();
  const { pages } = (await send(server, 'GET', `/api/lessons/${id}/pages`)).body as SheetPages;
  expect(pages[0]).toContain('href="data:image/png;base64,');
  const pack = await fetch(new URL(`/api/lessons/${id}/practice.zip`, server.url));
  const files = unzipSync(new Uint8Array(await pack.arrayBuffer()));
  expect(files[`practice/${picture}`]).toEqual(SVG);
  expect(files[`practice/${sound}`]).toEqual(MP3);
});

it('[SE4205] a backup has them, and what no lesson shows any more is erased with the last that did', async () => {
  const { server, dataDir, picture, sound, id } = await aDesk();
  const { file } = await backUp(dataDir, join(temporaryFolder(), 'desk.tar'));
  expect((await send(server, 'DELETE', `/api/lessons/${id}/for-good`)).status).toBe(204);
  expect([picture, sound].map((path) => existsSync(join(dataDir, path)))).toEqual([false, true]);
  const elsewhere = temporaryFolder();
  await restore(elsewhere, file);
  expect([picture, sound].map((path) => existsSync(join(elsewhere, path)))).toEqual([true, true]);
});
