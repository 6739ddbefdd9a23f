/** The take-home pack: a folder for any web host, and the same in one file. */
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { basename } from 'node:path';
import type { Lesson } from '@shedbook/core';
import { loadEngraver, loadFonts } from '@shedbook/engrave';
import { makePack, type PackFile, readAppFiles, zipPack } from '@shedbook/server';
import { InputError } from '../input-error.ts';
import type { Terminal } from '../terminal.ts';
import type { Outbox } from './outbox.ts';

/** The folder of a pack, and the name of the file that holds it. */
const PRACTICE = 'practice';

/** The lasting name of a lesson: its file's, without the endings. */
function lastingName(path: string): string {
  return basename(path).replace(/(?:\.lesson)?\.ya?ml$/i, '');
}

async function readApp(): Promise<readonly PackFile[]> {
  try {
    return await readAppFiles();
  } catch (error) {
    throw new InputError(`--pack: ${(error as Error).message}`);
  }
}

/** Writes the pack of a lesson. */
export async function writePack(
  lesson: Lesson,
  source: { readonly path: string; readonly text: string },
  outbox: Outbox,
  terminal: Terminal,
): Promise<void> {
  const { resolve } = createRequire(import.meta.url);
  const app = await readApp();
  const [engraver, fonts] = await Promise.all([
    loadEngraver(),
    loadFonts((specifier) => readFile(resolve(specifier))),
  ]);
  const files = await makePack({
    id: lastingName(source.path),
    lesson,
    text: source.text,
    ...{ app, engraver, fonts },
    onRecording: (done, of) => terminal.progress(`Recording ${done + 1} of ${of} for the pack …`),
  });
  for (const { path, content } of files) await outbox.put(`${PRACTICE}/${path}`, 'pack', null, content);
  await outbox.put(`${PRACTICE}.zip`, 'pack', null, zipPack(files, PRACTICE));
}
