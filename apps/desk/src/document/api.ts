/** What the desk asks of the server about lessons. */
import type { StandardFormat } from '@shedbook/core';
import type {
  HistoryStep,
  LessonFiling,
  LessonSummary,
  NamesInUse,
  SaveRequest,
  SheetPages,
  StoredLesson,
} from '@shedbook/routes';
import type { LanguageTag } from '@shedbook/words';
import { ask, type ReceivedFile, RefusedError } from './client.ts';

/** What became of a save. */
export type SaveReply =
  | { readonly kind: 'saved'; readonly lesson: StoredLesson }
  | { readonly kind: 'conflict'; readonly kept: StoredLesson };

/** Every lesson, last changed first. */
export function listLessons(): Promise<readonly StoredLesson[]> {
  return ask('listLessons', {});
}

/** Every lesson as a list shows it, last changed first. */
export function listShelf(): Promise<readonly LessonSummary[]> {
  return ask('listShelf', {});
}

/** Files a lesson. */
export async function fileLesson(id: string, body: LessonFiling): Promise<void> {
  await ask('fileLesson', { params: { id }, body });
}

/** One lesson. */
export function readLesson(id: string): Promise<StoredLesson> {
  return ask('readLesson', { params: { id } });
}

/** A new lesson with a text. */
export function createLesson(text: string): Promise<StoredLesson> {
  return ask('createLesson', { body: { text } });
}

/** Keeps a text, or brings back what is kept instead. */
export async function saveLesson(id: string, body: SaveRequest): Promise<SaveReply> {
  try {
    return { kind: 'saved', lesson: await ask('saveLesson', { params: { id }, body }) };
  } catch (error) {
    if (!(error instanceof RefusedError) || error.refusal.code !== 'lesson-changed') throw error;
    return { kind: 'conflict', kept: error.refusal.values.kept };
  }
}

/** Which lasting names of a lesson something refers to. */
export function readNamesInUse(id: string): Promise<NamesInUse> {
  return ask('namesInUse', { params: { id } });
}

/** One text of a lesson's history. */
export function readStep(id: string, step: number): Promise<HistoryStep> {
  return ask('readStep', { params: { id, step } });
}

/** Puts a lesson away; it can be brought back. */
export async function removeLesson(id: string): Promise<void> {
  await ask('removeLesson', { params: { id } });
}

/** Brings a lesson back. */
export function restoreLesson(id: string): Promise<StoredLesson> {
  return ask('restoreLesson', { params: { id } });
}

/** A lesson as MusicXML or MIDI. */
export function exportLesson(id: string, format: StandardFormat): Promise<ReceivedFile> {
  return ask('exportLesson', { params: { id, format } });
}

/** A take-home pack of a lesson, its sheet in a language. @param student whose assignments it carries: nobody's where left out */
export function readPack(
  id: string,
  language: LanguageTag,
  {
    student,
    performances = [],
    films = [],
  }: {
    readonly student?: string;
    readonly performances?: readonly string[];
    readonly films?: readonly string[];
  } = {},
): Promise<ReceivedFile> {
  const query = {
    language,
    ...(student === undefined ? {} : { student }),
    ...(performances.length === 0 ? {} : { performances: performances.join(',') }),
    ...(films.length === 0 ? {} : { films: films.join(',') }),
  };
  return ask('packLesson', { params: { id }, query });
}

/** A MusicXML or MIDI file as a new lesson. */
export function importLesson(file: File): Promise<StoredLesson> {
  return ask('importLesson', { query: { name: file.name }, body: file });
}

/** The pages of a lesson as it is kept, in a language. */
export function readPages(id: string, language: LanguageTag): Promise<SheetPages> {
  return ask('readPages', { params: { id }, query: { language } });
}
