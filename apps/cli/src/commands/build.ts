/** `shedbook build`: the sheet, standard files and sound of a lesson. */
import { dirname } from 'node:path';
import { isBookFile, type Lesson, STANDARD_FORMAT_NAMES, type StandardFormat } from '@shedbook/core';
import { fileIn, loadEngravingTools, readMedia } from '@shedbook/host';
import { type CliWords, sizeWords } from '@shedbook/words';
import { writeAudio } from '../build/audio.ts';
import { createOutbox, type MadeFile, type Outbox } from '../build/outbox.ts';
import { writePack } from '../build/pack.ts';
import { type BuildOptions, type BuildRequest, readBuildRequest } from '../build/request.ts';
import { writeScores, writeSheet } from '../build/sheet.ts';
import { type LessonFile, readLessonFile, requireLesson } from '../lesson-file.ts';
import type { Speaker } from '../terminal.ts';

const LABELS: Readonly<Record<StandardFormat, string>> = { musicxml: 'MusicXML', midi: 'MIDI' };

/** One line for each kind of file that was made. */
function summary({ made, folder }: Outbox, { build: said, sizes }: CliWords): readonly string[] {
  const total = (files: readonly MadeFile[]) =>
    sizeWords(
      sizes,
      files.reduce((sum, file) => sum + file.bytes, 0),
    );
  const of = (kind: MadeFile['kind']) => made.filter((file) => file.kind === kind);
  const line = (label: string, files: readonly MadeFile[], what: string) =>
    files.length === 0 ? [] : [`  ${label.padEnd(9)} ${what} (${total(files)})`];
  const pages = of('page').length;
  const sheet = of('sheet')[0];
  const count = of('midi').filter((file) => file.exercise !== null).length;
  const scores = (format: StandardFormat) => line(LABELS[format], of(format), said.sheetAnd({ count }));
  return [
    said.madeIn({ folder }),
    ...line(said.sheet, sheet ? [sheet] : [], said.sheetOf({ file: sheet?.path ?? '', pages })),
    ...STANDARD_FORMAT_NAMES.flatMap(scores),
    ...line(said.pack, of('pack'), said.packOf),
    ...line(said.sound, of('audio'), said.recordings({ count: of('audio').length })),
  ];
}

async function make(
  lesson: Lesson,
  file: LessonFile,
  request: BuildRequest,
  outbox: Outbox,
  terminal: Speaker,
): Promise<void> {
  const { engraving, writing } = terminal.catalogue.words.build;
  terminal.progress(engraving);
  const tools = await loadEngravingTools();
  const media = await readMedia(lesson, fileIn(dirname(file.path)));
  await writeSheet(lesson, { request, tools, media }, outbox, terminal);
  terminal.progress(writing);
  await writeScores(lesson, request, outbox);
  await writeAudio(lesson, request, outbox, terminal);
  if (request.pack) await writePack(lesson, { source: file, tools, request, media }, outbox, terminal);
  terminal.progress(null);
}

/**
 * Builds a lesson, or a book where the name of the file says so. @returns the exit status.
 * @throws InputError for a lesson with errors, an option that makes no sense, or a folder that cannot be written.
 */
export async function build(path: string, options: BuildOptions, terminal: Speaker): Promise<number> {
  if (isBookFile(path)) {
    const { buildBook } = await import('./build-book.ts');
    return buildBook(path, options, terminal);
  }
  const file = await readLessonFile(path);
  const lesson = requireLesson(file, terminal);
  const request = readBuildRequest(options, lesson);
  if (lesson.exercises.length === 0) {
    terminal.warn(terminal.catalogue.words.build.noExercises({ file: path }));
  }
  const outbox = createOutbox(request.out);
  await make(lesson, file, request, outbox, terminal);
  if (options.json) terminal.say(JSON.stringify({ folder: outbox.folder, files: outbox.made }, null, 2));
  else for (const line of summary(outbox, terminal.catalogue.words)) terminal.say(line);
  return 0;
}
