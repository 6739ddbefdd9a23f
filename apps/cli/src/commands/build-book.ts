/** `shedbook build` of a book: one PDF of all its lessons, and where asked the packs of them in one. */
import { dirname, join } from 'node:path';
import { PAPERS } from '@shedbook/core';
import { fileIn, InputError, loadEngravingTools, readMedia, readPracticePage } from '@shedbook/host';
import { makeBookPack, printBook } from '@shedbook/pack';
import type { LessonMedia } from '@shedbook/pack/media';
import { formatProblem, sizeWords } from '@shedbook/words';
import { readBookFile } from '../book-file.ts';
import { createOutbox } from '../build/outbox.ts';
import { lastingName, putPack } from '../build/pack.ts';
import type { BuildOptions } from '../build/request.ts';
import { readChoice, refuseOption } from '../options.ts';
import type { Speaker } from '../terminal.ts';

/** Options of `build` that say something of a book. */
const OF_BOOKS: readonly string[] = ['out', 'paper', 'pack', 'json'];

/**
 * Builds a book. @returns the exit status.
 * @throws InputError for a book or a lesson of it with errors, for an option that only lessons have, or for a folder
 * that cannot be written.
 */
export async function buildBook(path: string, options: BuildOptions, terminal: Speaker): Promise<number> {
  const other = Object.keys(options).find((option) => !OF_BOOKS.includes(option));
  if (other !== undefined) {
    const given = String(options[other as keyof BuildOptions]);
    refuseOption(other, given, (expected) => expected.forLessons);
  }
  const { book, lessons, texts, problems } = await readBookFile(path);
  const isFaulty = problems.some(({ severity }) => severity === 'error');
  if (!book || isFaulty)
    throw new InputError(({ language }) =>
      problems.map((problem) => formatProblem(problem, language)).join('\n'),
    );
  for (const problem of problems) terminal.warn(formatProblem(problem, terminal.catalogue.language));
  const { words, tag: language } = terminal.catalogue;
  terminal.progress(words.build.engraving);
  const tools = await loadEngravingTools();
  const paper = options.paper === undefined ? {} : { paper: readChoice('paper', options.paper, PAPERS) };
  const media = new Map<string, LessonMedia>();
  for (const [name, lesson] of lessons)
    media.set(name, await readMedia(lesson, fileIn(dirname(join(dirname(path), name)))));
  const printed = await printBook(book, lessons, { ...tools, language, media, ...paper });
  const outbox = createOutbox(options.out);
  await outbox.put(printed);
  if (options.pack) {
    const packed = [...lessons].map(([name, lesson]) => {
      return [name, { id: lastingName(name), lesson, text: texts.get(name) ?? '' }] as const;
    });
    const app = await readPracticePage();
    const onRecording = (done: number, of: number) =>
      terminal.progress(words.build.recordingForPack({ n: done + 1, of }));
    await putPack(
      await makeBookPack(book, new Map(packed), { ...tools, app, language, media, onRecording }),
      outbox,
    );
  }
  terminal.progress(null);
  const [made] = outbox.made;
  if (options.json) terminal.say(JSON.stringify({ folder: outbox.folder, files: outbox.made }, null, 2));
  else if (made) {
    const said = words.build.bookOf({ file: made.path, pages: printed.pages });
    terminal.say(`${said} (${sizeWords(words.sizes, made.bytes)})`);
    if (options.pack) terminal.say(words.build.packOf);
  }
  return 0;
}
