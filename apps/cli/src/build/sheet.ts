/** The printed sheet and its pages, and the standard files. */
import type { Lesson } from '@shedbook/core';
import type { EngravingTools } from '@shedbook/host';
import { drawPages, makeSheet, printedMedia, printSheet, writeStandardFiles } from '@shedbook/pack';
import type { LessonMedia } from '@shedbook/pack/media';
import type { Speaker } from '../terminal.ts';
import type { Outbox } from './outbox.ts';
import type { BuildRequest } from './request.ts';

/** Writes the sheet; says which characters no font has. */
export async function writeSheet(
  lesson: Lesson,
  {
    request,
    tools,
    media,
  }: { readonly request: BuildRequest; readonly tools: EngravingTools; readonly media: LessonMedia },
  outbox: Outbox,
  terminal: Speaker,
): Promise<void> {
  const { tag: language, words } = terminal.catalogue;
  const paper = request.paper === null ? {} : { paper: request.paper };
  const sheet = makeSheet(lesson, {
    ...tools,
    language,
    outlineText: true,
    media: printedMedia(lesson, media),
    ...paper,
  });
  if (sheet.missingCharacters.length > 0) {
    const characters = sheet.missingCharacters.map((each) => `"${each}"`).join(', ');
    terminal.warn(words.build.noGlyphs({ characters }));
  }
  for (const file of [await printSheet(sheet, tools.fonts), ...drawPages(sheet)]) await outbox.put(file);
}

/** Writes MIDI and MusicXML of what was asked for. */
export async function writeScores(lesson: Lesson, request: BuildRequest, outbox: Outbox): Promise<void> {
  const { exercises, bpm, mute, form } = request;
  const layers = request.layers.at(-1);
  const playing = {
    mute,
    ...(bpm === null ? {} : { bpm }),
    ...(layers === undefined ? {} : { layers }),
    ...(form ? { form } : {}),
  };
  for (const file of writeStandardFiles(lesson, { exercises, playing })) await outbox.put(file);
}
