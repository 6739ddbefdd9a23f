/**
 * A take-home pack: the practice room with one lesson in it, as files for any web host. The same lesson and the same
 * practice room give the same bytes.
 */

import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import { inSetUp, type Lesson, type SetUp } from '@shedbook/core';
import type { Engraver, Fonts } from '@shedbook/engrave';
import type { Demonstration } from '@shedbook/playing';
import type { LanguageTag } from '@shedbook/words';
import { strToU8 } from 'fflate';
import { fileNumber, type LessonFile, type PackFile, textFile } from '../files/file.ts';
import { FILE_FORMATS } from '../files/formats.data.ts';
import { printedMedia } from '../files/printed-media.ts';
import { recordLoops } from '../files/recordings.ts';
import { makeSheet, printSheet } from '../files/sheet.ts';
import { writeStandardFiles } from '../files/standard-files.ts';
import type { LessonMedia } from '../media/lesson-media.ts';
import { LINK_WORKER, manifest, serviceWorker, startPage } from './app-files.ts';
import {
  EXERCISES_IN_SIGHT,
  PACK_FORMAT,
  type Pack,
  type PackAssignment,
  type PackDemonstration,
  type PackDownload,
  type PackMedium,
} from './pack.ts';
import { packedMedia } from './packed-media.ts';
import { makeTiles, type PackTiles } from './tiles.ts';

/** The folder of a pack that files to take along lie in. */
const DOWNLOADS = 'files';

/** An exercise as its teacher plays it: a recording in FLAC, and which place of it is heard when. */
export interface RecordedDemonstration extends Demonstration {
  readonly flac: Uint8Array;
}

/** A film of an exercise. */
export interface ExerciseFilm {
  readonly exercise: number;
  /** With its dot. */
  readonly ending: string;
  readonly content: Uint8Array;
}

/** What a pack is made of. */
export interface PackRequest {
  /** Lasting name of the lesson: what a student has practised is kept under it. */
  readonly id: string;
  readonly lesson: Lesson;
  /** Text of the lesson file. */
  readonly text: string;
  /** Files of the built practice room. */
  readonly app: readonly PackFile[];
  readonly engraver: Engraver;
  readonly fonts: Fonts;
  /** The language of the printed sheet and of what is read out of the notation. */
  readonly language: LanguageTag;
  /** Whether exercises are recorded: yes where left out. */
  readonly audio?: boolean;
  /** Exercises as the teacher plays them, at most one of each: none where left out. */
  readonly demonstrations?: readonly RecordedDemonstration[];
  /** Films of exercises: none where left out. */
  readonly films?: readonly ExerciseFilm[];
  /** The files that the lesson shows, by their paths; named and not shown where left out. */
  readonly media?: LessonMedia;
  /** What the teacher set for the student whom the pack is for: nothing where left out. */
  readonly assignments?: readonly PackAssignment[];
  /** The level at which the teacher judges that student; what the student chooses where left out. */
  readonly level?: string;
  /** Which way round that student's drums stand; as the lesson says where left out. */
  readonly setUp?: SetUp;
  /** Whether it is opened by a private link. */
  readonly isPrivate?: boolean;
  /** Told how many recordings are done. */
  readonly onRecording?: (done: number, of: number) => void;
}

/** Files that the page fetches when a student asks for them, and that are not kept for use without a network. */
function isKeptOffline({ path }: PackFile): boolean {
  return ![`${DOWNLOADS}/audio/`, `${DOWNLOADS}/films/`].some((folder) => path.startsWith(folder));
}

/** Two texts in order of their characters, the same in every language. */
function inOrder(a: PackFile, b: PackFile): number {
  return a.path < b.path ? -1 : 1;
}

/** A short name that depends on every byte of every file. */
function versionOf(files: readonly PackFile[]): string {
  const hash = sha256.create();
  for (const { path, content } of files.toSorted(inOrder)) {
    hash.update(strToU8(`${path}\0${content.length}\0`)).update(content);
  }
  return bytesToHex(hash.digest()).slice(0, 16);
}

function filmsOf({ lesson, films = [] }: PackRequest): readonly LessonFile<'film'>[] {
  return films.map(({ exercise, ending, content }) => {
    const path = `films/${fileNumber(exercise, lesson.exercises.length)}${ending}`;
    return { path, kind: 'film', exercise, content };
  });
}

/** The demonstrations as the page knows them, each with its recording. */
function demonstrationsOf({ lesson, demonstrations = [] }: PackRequest) {
  return demonstrations.map(({ flac: content, ...demonstration }) => {
    const path = `demonstrations/${fileNumber(demonstration.exercise, lesson.exercises.length)}.flac`;
    const told: PackDemonstration = { ...demonstration, path, bytes: content.length };
    return { told, file: { path, content } };
  });
}

/** The files to take along, in a folder of their own. */
async function downloadsOf(request: PackRequest): Promise<readonly LessonFile<PackDownload['kind']>[]> {
  const { lesson, id, text, engraver, fonts, language, setUp = null } = request;
  const recordings =
    request.audio === false ? [] : await recordLoops(lesson, request.onRecording ?? (() => {}));
  const source = textFile(`${id}${FILE_FORMATS.lesson.ending}`, text);
  const files: readonly LessonFile<PackDownload['kind']>[] = [
    await printSheet(
      makeSheet(inSetUp(lesson, setUp), {
        engraver,
        fonts,
        language,
        media: printedMedia(lesson, request.media ?? new Map()),
      }),
      fonts,
    ),
    ...writeStandardFiles(lesson),
    ...recordings,
    ...filmsOf(request),
    { ...source, kind: 'lesson', exercise: null },
  ];
  return files.map((file) => ({ ...file, path: `${DOWNLOADS}/${file.path}` }));
}

function describe(
  { id, lesson, assignments = [], level, setUp, isPrivate }: PackRequest,
  tiles: PackTiles,
  {
    downloads,
    demonstrations,
    media,
  }: {
    readonly downloads: readonly LessonFile<PackDownload['kind']>[];
    readonly demonstrations: readonly PackDemonstration[];
    readonly media: readonly PackMedium[];
  },
  version: string,
): Pack {
  const { exercises, groove } = tiles;
  const list = downloads.map(({ path, kind, exercise, content }) => ({
    path,
    kind,
    exercise,
    bytes: content.length,
  }));
  const pack = { format: PACK_FORMAT, id, version, lesson, exercises, groove, downloads: list } as const;
  return {
    ...pack,
    ...(demonstrations.length === 0 ? {} : { demonstrations }),
    ...(media.length === 0 ? {} : { media }),
    ...(assignments.length === 0 ? {} : { assignments }),
    ...(level === undefined ? {} : { level }),
    ...(setUp === undefined ? {} : { setUp }),
    ...(isPrivate ? { isPrivate } : {}),
  };
}

/** The tiles that are in sight when the sheet opens. */
function firstPictures({ groove, exercises }: PackTiles): readonly string[] {
  return [...groove, ...exercises.slice(0, EXERCISES_IN_SIGHT).flatMap((each) => each.own)].map(
    (bar) => bar.tile,
  );
}

/** Every file of the pack, in order of its path. */
export async function makePack(request: PackRequest): Promise<readonly PackFile[]> {
  const { lesson, id, engraver, fonts, language } = request;
  const tiles = makeTiles(lesson, { engraver, fonts, language });
  const downloads = await downloadsOf(request);
  const first = firstPictures(tiles);
  const app = request.app.map((file) => (file.path === 'index.html' ? startPage(file, lesson, first) : file));
  const worker = app.find((file) => file.path === 'sw.js');
  // What stands at a private link serves no other host.
  const isShown = ({ path }: PackFile) => path !== LINK_WORKER || request.isPrivate === true;
  const plain = app.filter((file) => file !== worker && isShown(file));
  const shown = demonstrationsOf(request);
  const media = packedMedia(lesson, request.media ?? new Map());
  const recordings = shown.map(({ file }) => file);
  const demonstrations = shown.map(({ told }) => told);
  const parts = [...plain, manifest(lesson), ...tiles.files, ...downloads, ...recordings, ...media.files];
  const { assignments = [], level, setUp, isPrivate = false } = request;
  const own = { assignments, level, setUp, isPrivate };
  const isPlain = assignments.length === 0 && (level ?? setUp) === undefined && !isPrivate;
  const set = isPlain ? [] : [textFile('assignments', JSON.stringify(own))];
  const told = shown.length === 0 ? [] : [textFile('demonstrations', JSON.stringify(demonstrations))];
  const beside = media.told.length === 0 ? [] : [textFile('media', JSON.stringify(media.told))];
  const version = versionOf([...parts, ...set, ...told, ...beside, ...(worker ? [worker] : [])]);
  const described = describe(request, tiles, { downloads, demonstrations, media: media.told }, version);
  const pack = textFile('pack.json', JSON.stringify(described));
  const files = [...parts.map(({ path, content }) => ({ path, content })), pack];
  const kept = files.filter(isKeptOffline).toSorted(inOrder);
  const withWorker = worker ? [...files, serviceWorker(worker, { id, version, kept })] : files;
  return withWorker.toSorted(inOrder);
}
