/** The take-home pack: a folder for any web host, and the same in one file. */
import { basename } from 'node:path';
import type { Lesson } from '@shedbook/core';
import { type EngravingTools, readPracticePage } from '@shedbook/host';
import { makePack, PACK_FOLDER, type PackFile, zipPack } from '@shedbook/pack';
import type { LessonMedia } from '@shedbook/pack/media';
import type { LessonFile } from '../lesson-file.ts';
import type { Speaker } from '../terminal.ts';
import type { Outbox } from './outbox.ts';
import type { BuildRequest } from './request.ts';

/** The lasting name of a lesson: its file's, without the endings. */
export function lastingName(path: string): string {
  return basename(path).replace(/(?:\.lesson)?\.ya?ml$/i, '');
}

/** Writes the pack of a lesson. */
export async function writePack(
  lesson: Lesson,
  {
    source,
    tools,
    request,
    media,
  }: {
    readonly source: LessonFile;
    readonly tools: EngravingTools;
    readonly request: BuildRequest;
    readonly media: LessonMedia;
  },
  outbox: Outbox,
  terminal: Speaker,
): Promise<void> {
  const { tag: language, words } = terminal.catalogue;
  const app = await readPracticePage();
  const { performances, films } = request;
  const beside =
    performances.length > 0 || films
      ? await (await import('./in-pack.ts')).besidePage(lesson, { request, tools }, terminal)
      : {};
  const files = await makePack({
    id: lastingName(source.path),
    lesson,
    text: source.text,
    ...{ app, language, media, ...tools, ...beside },
    onRecording: (done, of) => terminal.progress(words.build.recordingForPack({ n: done + 1, of })),
  });
  await putPack(files, outbox);
}

/** Puts the files of a pack out, in a folder and in one file. */
export async function putPack(files: readonly PackFile[], outbox: Outbox): Promise<void> {
  const zip = { path: `${PACK_FOLDER}.zip`, content: zipPack(files, PACK_FOLDER) };
  const inFolder = files.map(({ path, content }) => ({ path: `${PACK_FOLDER}/${path}`, content }));
  for (const file of [...inFolder, zip]) await outbox.put({ ...file, kind: 'pack', exercise: null });
}
