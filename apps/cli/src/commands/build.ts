/** `shedbook build`: the sheet, standard files and sound of a lesson. */
import { type Lesson, STANDARD_FORMAT_NAMES, type StandardFormat } from '@shedbook/core';
import { loadEngravingTools } from '@shedbook/host';
import { writeAudio } from '../build/audio.ts';
import { createOutbox, type MadeFile, type Outbox } from '../build/outbox.ts';
import { writePack } from '../build/pack.ts';
import { type BuildOptions, type BuildRequest, readBuildRequest } from '../build/request.ts';
import { writeScores, writeSheet } from '../build/sheet.ts';
import { type LessonFile, readLessonFile, requireLesson } from '../lesson-file.ts';
import type { Terminal } from '../terminal.ts';

function size(bytes: number): string {
  return bytes < 1_000_000 ? `${Math.ceil(bytes / 1000)} kB` : `${(bytes / 1_000_000).toFixed(1)} MB`;
}

function total(files: readonly MadeFile[]): string {
  return size(files.reduce((sum, file) => sum + file.bytes, 0));
}

const LABELS: Readonly<Record<StandardFormat, string>> = { musicxml: 'MusicXML', midi: 'MIDI' };

/** One line for each kind of file that was made. */
function summary({ made, folder }: Outbox): readonly string[] {
  const of = (kind: MadeFile['kind']) => made.filter((file) => file.kind === kind);
  const line = (label: string, files: readonly MadeFile[], what: string) =>
    files.length === 0 ? [] : [`  ${label.padEnd(9)} ${what} (${total(files)})`];
  const pages = of('page').length;
  const sheet = of('sheet')[0];
  const exercises = of('midi').filter((file) => file.exercise !== null).length;
  const each = exercises === 1 ? '1 exercise' : `${exercises} exercises`;
  return [
    `Made in ${folder}:`,
    ...line(
      'sheet',
      sheet ? [sheet] : [],
      `${sheet?.path ?? ''}, ${pages} ${pages === 1 ? 'page' : 'pages'}, and as SVG`,
    ),
    ...STANDARD_FORMAT_NAMES.flatMap((format) => line(LABELS[format], of(format), `the sheet and ${each}`)),
    ...line('pack', of('pack'), `practice, and practice.zip: the page that students practise on`),
    ...line('sound', of('audio'), `${of('audio').length} recordings`),
  ];
}

async function make(
  lesson: Lesson,
  file: LessonFile,
  request: BuildRequest,
  outbox: Outbox,
  terminal: Terminal,
): Promise<void> {
  terminal.progress('Engraving the sheet …');
  const tools = await loadEngravingTools();
  await writeSheet(lesson, { request, tools }, outbox, terminal);
  terminal.progress('Writing MIDI and MusicXML …');
  await writeScores(lesson, request, outbox);
  await writeAudio(lesson, request, outbox, terminal);
  if (request.pack) await writePack(lesson, { source: file, tools }, outbox, terminal);
  terminal.progress(null);
}

/**
 * Builds a lesson. @returns the exit status.
 * @throws InputError for a lesson with errors, an option that makes no sense, or a folder that cannot be written.
 */
export async function build(path: string, options: BuildOptions, terminal: Terminal): Promise<number> {
  const file = await readLessonFile(path);
  const lesson = requireLesson(file, terminal.warn);
  const request = readBuildRequest(options, lesson);
  if (lesson.exercises.length === 0) {
    terminal.warn(
      `${path}: warning: there are no exercises yet; shedbook compose writes some from the vocabulary`,
    );
  }
  const outbox = createOutbox(request.out);
  await make(lesson, file, request, outbox, terminal);
  if (options.json) terminal.say(JSON.stringify({ folder: outbox.folder, files: outbox.made }, null, 2));
  else for (const line of summary(outbox)) terminal.say(line);
  return 0;
}
