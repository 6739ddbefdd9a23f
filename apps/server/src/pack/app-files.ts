/** The practice room's own files, as they were built, and what a pack makes of them. */
import { existsSync } from 'node:fs';
import { readdir, readFile } from 'node:fs/promises';
import { join, relative, sep } from 'node:path';
import type { Lesson } from '@shedbook/core';
import { PRACTICE_DIR } from '@shedbook/host';
import { type PackFile, textFile } from './file.ts';

/**
 * Every file of the built practice room, in order of its path.
 * @throws Error with a message for people when it has not been built.
 */
export async function readAppFiles(folder: string = PRACTICE_DIR): Promise<readonly PackFile[]> {
  if (!existsSync(join(folder, 'index.html'))) {
    throw new Error('The practice room has not been built yet: run "npm run build".');
  }
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  const paths = entries.filter((entry) => entry.isFile()).map((entry) => join(entry.parentPath, entry.name));
  const files = paths.map(async (path) => ({
    path: relative(folder, path).split(sep).join('/'),
    content: new Uint8Array(await readFile(path)),
  }));
  return (await Promise.all(files)).toSorted((a, b) => (a.path < b.path ? -1 : 1));
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;');
}

/** The start page under the lesson's own name; the pictures that come into sight first are asked for with it. */
export function startPage(page: PackFile, lesson: Lesson, pictures: readonly string[]): PackFile {
  const html = new TextDecoder().decode(page.content);
  const ahead = pictures.map((path) => `<link rel="preload" as="image" href="./${path}" />`);
  const title = `<title>${escaped(lesson.title)}</title>`;
  return textFile(page.path, html.replace(/<title>[^<]*<\/title>/, [title, ...ahead].join('\n    ')));
}

/** What a browser needs to put the pack among its apps. Source: W3C Web Application Manifest. */
export function manifest(lesson: Lesson): PackFile {
  const content = {
    name: lesson.title,
    short_name: lesson.title.slice(0, 24),
    start_url: './',
    scope: './',
    display: 'standalone',
    background_color: '#ccd4d2',
    theme_color: '#ccd4d2',
    icons: [{ src: 'mark.svg', sizes: 'any', type: 'image/svg+xml', purpose: 'any' }],
  };
  return textFile('manifest.webmanifest', `${JSON.stringify(content, null, 2)}\n`);
}

/** What the service worker keeps, said in front of its code, so that any change of the pack is a new worker. */
export function serviceWorker(
  built: PackFile,
  pack: { readonly id: string; readonly version: string; readonly files: readonly string[] },
): PackFile {
  const code = new TextDecoder().decode(built.content);
  return textFile(built.path, `self.SHEDBOOK_PACK=${JSON.stringify(pack)};\n${code}`);
}
