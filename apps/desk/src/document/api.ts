/** Talking to the server of the desk. */
import type {
  Conflict,
  HistoryStep,
  Refusal,
  RefusalCode,
  SaveRequest,
  SheetPages,
  StoredLesson,
} from '@shedbook/server';

/** The server said no, with a code that the catalogue has words for. */
export class RefusedError extends Error {
  override readonly name = 'RefusedError';
  readonly code: RefusalCode;

  constructor(refusal: Refusal) {
    super(refusal.message);
    this.code = refusal.code;
  }
}

/** The server could not be reached at all. */
export class UnreachableError extends Error {
  override readonly name = 'UnreachableError';
}

/** What became of a save. */
export type SaveReply =
  | { readonly kind: 'saved'; readonly lesson: StoredLesson }
  | { readonly kind: 'conflict'; readonly kept: StoredLesson };

/** Sends a request with a body as JSON. @throws UnreachableError */
export async function ask(method: string, path: string, body?: unknown): Promise<Response> {
  const init: RequestInit = { method };
  if (body !== undefined) {
    init.body = JSON.stringify(body);
    init.headers = { 'content-type': 'application/json' };
  }
  try {
    return await fetch(path, init);
  } catch {
    throw new UnreachableError(path);
  }
}

/** What a response carries. @throws RefusedError */
export async function answer<T>(response: Response): Promise<T> {
  if (response.ok) return (response.status === 204 ? undefined : await response.json()) as T;
  throw new RefusedError((await response.json()) as Refusal);
}

/** Every lesson, last changed first. */
export async function listLessons(): Promise<readonly StoredLesson[]> {
  return answer(await ask('GET', '/api/lessons'));
}

/** One lesson. */
export async function readLesson(id: string): Promise<StoredLesson> {
  return answer(await ask('GET', `/api/lessons/${id}`));
}

/** A new lesson with a text. */
export async function createLesson(text: string): Promise<StoredLesson> {
  return answer(await ask('POST', '/api/lessons', { text }));
}

/** Keeps a text, or brings back what is kept instead. */
export async function saveLesson(id: string, request: SaveRequest): Promise<SaveReply> {
  const response = await ask('PUT', `/api/lessons/${id}`, request);
  if (response.status !== 409) return { kind: 'saved', lesson: await answer<StoredLesson>(response) };
  const conflict = (await response.json()) as Conflict;
  return { kind: 'conflict', kept: conflict.kept };
}

/** One text of a lesson's history. */
export async function readStep(id: string, step: number): Promise<HistoryStep> {
  return answer(await ask('GET', `/api/lessons/${id}/steps/${step}`));
}

/** Puts a lesson away; it can be brought back. */
export async function removeLesson(id: string): Promise<void> {
  return answer(await ask('DELETE', `/api/lessons/${id}`));
}

/** Brings a lesson back. */
export async function restoreLesson(id: string): Promise<StoredLesson> {
  return answer(await ask('POST', `/api/lessons/${id}/restore`));
}

/** A lesson as MusicXML or MIDI. */
export async function exportLesson(id: string, format: 'musicxml' | 'midi'): Promise<Blob> {
  const response = await ask('GET', `/api/lessons/${id}/export/${format}`);
  return response.ok ? response.blob() : answer<Blob>(response);
}

/** A take-home pack of a lesson, and the name of its file. */
export async function readPack(id: string): Promise<{ readonly file: Blob; readonly name: string }> {
  const response = await ask('GET', `/api/lessons/${id}/practice.zip`);
  if (!response.ok) return answer(response);
  const [, name = 'practice.zip'] =
    /filename="([^"]+)"/.exec(response.headers.get('content-disposition') ?? '') ?? [];
  return { file: await response.blob(), name };
}

/** A MusicXML or MIDI file as a new lesson. */
export async function importLesson(file: File): Promise<StoredLesson> {
  const path = `/api/import?name=${encodeURIComponent(file.name)}`;
  const headers = { 'content-type': 'application/octet-stream' };
  const response = await fetch(path, { method: 'POST', body: file, headers }).catch(() => {
    throw new UnreachableError(path);
  });
  return answer(response);
}

/** The pages of a lesson as it is kept. */
export async function readPages(id: string): Promise<SheetPages> {
  return answer(await ask('GET', `/api/lessons/${id}/pages`));
}
