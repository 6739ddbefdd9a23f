/** Makes a film: sound, frames and captions through FFmpeg into one file that is there whole or not at all. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, rename, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, extname, join } from 'node:path';
import type { Box } from '@shedbook/engrave';
import {
  captionsOf,
  chapterList,
  chaptersOf,
  createPainter,
  drawingsOf,
  FILM_ENDINGS,
  type Film,
  type FilmEnding,
  filmIn,
  frameAt,
  type Rasteriser,
  type StagedScene,
  writeVtt,
} from '@shedbook/film';
import type { Kit } from '@shedbook/sound';
import { LANGUAGE_TAGS, type LanguageTag } from '@shedbook/words';
import { InputError, reasonOf } from '../input-error.ts';
import { chapterFile, encoderArguments, type FilmParts, findEncoder, type PictureOver } from './encoder.ts';
import { writeFilmSound } from './film-sound.ts';
import { loadRasteriser } from './rasterise.ts';
import { pathOf, type Recordings } from './recordings.ts';

/** How far a film is. */
export interface FilmProgress {
  readonly stage: 'sound' | 'picture';
  /** 0 to 1, of this stage. */
  readonly part: number;
}

/** What a film is made of and where it goes. */
export interface FilmOrder {
  readonly film: Film;
  readonly kit: Kit;
  /** Files of the performances that it shows; none where left out. */
  readonly recordings?: Recordings;
  /** Path of the film; its ending says its kind. */
  readonly out: string;
  /** Folder for what is needed on the way; the system's own for such things where left out. */
  readonly folder?: string;
  readonly signal: AbortSignal;
  readonly tell: (progress: FilmProgress) => void;
}

/** A file that was made. */
export interface FilmFile {
  readonly path: string;
  readonly what: 'film' | 'captions' | 'chapters' | 'cover';
  readonly bytes: number;
}

/** Bytes of a second of somebody's picture that fills the page: hands and drums, as telephones film them; a guess. */
const PICTURE_BYTES_PER_SECOND = 1_000_000;

/** How much of a scene's page somebody's picture takes: 0 to 1. */
function pictureShare({ layout }: StagedScene): number {
  const { picture, widthMm, heightMm } = layout;
  return picture ? (picture.width * picture.height) / (widthMm * heightMm) : 0;
}

/** How much larger a film gets by the pictures of performances, in bytes; a rough guess. */
export function estimatePictureBytes({ scenes, request }: Film): number {
  const perSecond = scenes.map((scene) =>
    scene.kind === 'title' ? 0 : pictureShare(scene) * scene.frames * PICTURE_BYTES_PER_SECOND,
  );
  return perSecond.reduce((sum, bytes) => sum + bytes, 0) / request.framesPerSecond;
}

/** The kind of file that a path asks for, or null. */
export function filmEndingOf(path: string): FilmEnding | null {
  return FILM_ENDINGS.find((ending) => ending === extname(path).toLowerCase()) ?? null;
}

/** Languages as films name them. @source ISO 639-2 */
const LANGUAGE_CODES: Readonly<Record<LanguageTag, string>> = { en: 'eng', de: 'deu' };

async function writeParts(order: FilmOrder, folder: string, ending: FilmEnding): Promise<FilmParts> {
  const { film, kit, recordings = new Map(), signal, tell } = order;
  const tellSound = (part: number) => tell({ stage: 'sound', part });
  const sound = await writeFilmSound(film, { kit, recordings, folder, ending, signal, tell: tellSound });
  const chapters = join(folder, 'chapters.txt');
  await writeFile(chapters, chapterFile(film.request.lesson.title, chaptersOf(film)));
  const captions = [];
  for (const language of LANGUAGE_TAGS) {
    const path = join(folder, `${language}.vtt`);
    await writeFile(path, writeVtt(captionsOf(filmIn(film, language))));
    captions.push({ path, language: LANGUAGE_CODES[language] });
  }
  return { sound, chapters, captions };
}

/** The pictures of performances, each over its scene. */
function picturesOver({ film, recordings = new Map() }: FilmOrder): readonly PictureOver[] {
  const rate = film.request.framesPerSecond;
  const { pixelsPerMm } = film.look;
  return film.scenes.flatMap((scene): PictureOver[] => {
    if (scene.kind === 'title' || !scene.shown || !scene.layout.picture) return [];
    const { recorded, fromSeconds, toSeconds, speed } = scene.shown;
    const [x, y, width, height] = (['x', 'y', 'width', 'height'] as const).map(
      (side) => 2 * Math.round(((scene.layout.picture as Box)[side] * pixelsPerMm) / 2),
    ) as [number, number, number, number];
    const [from, to] = [scene.startFrame, scene.startFrame + scene.frames].map((frame) => frame / rate);
    return [
      {
        ...{ path: pathOf(recordings, recorded), fromSeconds, toSeconds, speed },
        sceneSeconds: { from: from as number, to: to as number },
        leadSeconds: scene.leadFrames / rate,
        box: { x, y, width, height },
      },
    ];
  });
}

/** Sends every frame to FFmpeg; while one is on its way the next is painted. */
async function encode(order: FilmOrder, args: readonly string[], { rasterise }: Rasteriser): Promise<void> {
  const { film, signal, tell } = order;
  const child = spawn('ffmpeg', args, { stdio: ['pipe', 'ignore', 'pipe'] });
  let complaint = '';
  child.stderr.on('data', (chunk: Buffer) => {
    complaint = `${complaint}${chunk}`.slice(-2000);
  });
  const closed = once(child, 'close').then(([status]) => status as number | null);
  const failed = closed.then((status) => {
    if (status === 0) return;
    signal.throwIfAborted();
    const why = complaint.trim().split('\n').at(-1) ?? `${status}`;
    throw new InputError(({ words }) => words.film.stopped({ why }));
  });
  failed.catch(() => undefined);
  child.stdin.on('error', () => undefined);
  const stop = () => child.kill('SIGKILL');
  signal.addEventListener('abort', stop, { once: true });
  try {
    const painter = createPainter(film, rasterise);
    let sent: Promise<unknown> = Promise.resolve();
    for (let frame = 0; frame < film.frames; frame += 1) {
      const bytes = painter.paint(frame);
      await Promise.race([sent, failed]);
      signal.throwIfAborted();
      // A pipe that breaks is told by how FFmpeg ended.
      sent = child.stdin.write(bytes) ? Promise.resolve() : once(child.stdin, 'drain').catch(() => failed);
      sent.catch(() => undefined);
      if (frame % film.request.framesPerSecond === 0) tell({ stage: 'picture', part: frame / film.frames });
    }
    child.stdin.end();
    await failed;
    tell({ stage: 'picture', part: 1 });
  } finally {
    signal.removeEventListener('abort', stop);
    stop();
    await closed;
  }
}

/** The film's path without its ending, for what lies beside it. */
function stemOf(out: string): string {
  return out.slice(0, out.length - extname(out).length);
}

/** Writes what belongs beside the film. @param made gets each file as soon as it is there */
async function writeBeside(
  { film, out }: FilmOrder,
  toPng: Rasteriser['toPng'],
  made: FilmFile[],
): Promise<void> {
  const put = async (path: string, what: FilmFile['what'], content: string | Uint8Array) => {
    await writeFile(path, content);
    made.push({ path, what, bytes: Buffer.byteLength(content) });
  };
  for (const language of LANGUAGE_TAGS)
    await put(`${stemOf(out)}.${language}.vtt`, 'captions', writeVtt(captionsOf(filmIn(film, language))));
  await put(`${stemOf(out)}.chapters.txt`, 'chapters', chapterList(chaptersOf(film)));
  await put(`${stemOf(out)}.png`, 'cover', toPng(drawingsOf(film, frameAt(film, 0)).page.svg()));
}

function unwritable(path: string) {
  return (error: unknown): never => {
    throw new InputError((to) => to.words.unwritable({ file: `--out: ${path}`, why: reasonOf(error, to) }));
  };
}

/**
 * Makes a film, its captions in every language, its list of chapters and its cover. Nothing is left behind where it
 * is cancelled or fails.
 * @throws InputError without FFmpeg, without an encoder, or where nothing can be written; what the signal says where
 * it is aborted.
 */
export async function makeFilm(order: FilmOrder): Promise<readonly FilmFile[]> {
  const { out, film } = order;
  const ending = filmEndingOf(out) ?? '.mp4';
  const encoder = await findEncoder(ending);
  const part = join(dirname(out), `.${Date.now()}-${process.pid}${ending}`);
  await writeFile(part, '').catch(unwritable(out));
  const folder = await mkdtemp(join(order.folder ?? tmpdir(), 'shedbook-film-'));
  const beside: FilmFile[] = [];
  try {
    const rasteriser = await loadRasteriser();
    const parts = await writeParts(order, folder, ending);
    await encode(
      order,
      encoderArguments(film, parts, { encoder, ending, pictures: picturesOver(order), out: part }),
      rasteriser,
    );
    await writeBeside(order, rasteriser.toPng, beside).catch(unwritable(out));
    await rename(part, out).catch(unwritable(out));
    return [{ path: out, what: 'film', bytes: (await stat(out)).size }, ...beside];
  } catch (error) {
    for (const { path } of beside) await rm(path, { force: true });
    throw error;
  } finally {
    await rm(part, { force: true });
    await rm(folder, { recursive: true, force: true });
  }
}
