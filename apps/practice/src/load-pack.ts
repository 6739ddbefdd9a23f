/** Reading the pack that the page lies in, and the student's other ones on the same host. */
import { fileNameOf, lessonKey, type SetUp } from '@shedbook/core';
import { readLevel } from '@shedbook/judge';
import { PACK_FORMAT, type Pack, type PackBar } from '@shedbook/pack/format';

import type { Week } from '@shedbook/routes';
import { remember, remembered } from '@shedbook/stand';
import { forbidMicrophoneWhere } from './device/microphone-forbidden.ts';
import { type KnownPack, lastingName } from './kept/lasting-name.ts';
import { keepLesson, ownLessons } from './kept/own-lessons.ts';
import { practiseAs } from './kept/students.ts';
import { keepAlso } from './offline/register.ts';
import { fetchKept } from './page/fetch-kept.ts';
import { takeSetLevel } from './session/hearing-settings.ts';
import { takeSetUp } from './session/own-set-up.ts';
import { lastWeek, linkFolder, readWeek, setOf } from './week/read-week.ts';

const KNOWN = 'packs';

function knownPacks(): readonly KnownPack[] {
  try {
    const known: unknown = JSON.parse(remembered(KNOWN) ?? '[]');
    return Array.isArray(known) ? known : [];
  } catch {
    return [];
  }
}

/** The lesson that one is a copy of, by its lasting name on this device where its own pack was opened here. */
function originHere(from: string | null | undefined, known: readonly KnownPack[]): string | null {
  const original = known.find(({ title, key }) => (key ?? fileNameOf(title, '')) === from);
  return original?.lasting ?? from ?? null;
}

/** The folder that the page lies in. */
function ownFolder(): string {
  return new URL('.', window.location.href).pathname;
}

/** A pack under its lasting name on this device. @param address folder that it lies in */
function named(pack: Pack, address: string): Pack {
  const { title, by } = pack.lesson;
  const { lasting, known } = lastingName(knownPacks(), {
    id: pack.id,
    title,
    by: by ?? '',
    address,
    key: lessonKey(pack.lesson),
  });
  remember(KNOWN, JSON.stringify(known));
  return { ...pack, id: lasting, lesson: { ...pack.lesson, from: originHere(pack.lesson.from, known) } };
}

/** A pack as it describes itself. @throws Error when it is not there or not of this format. */
async function readPack(folder: string): Promise<Pack> {
  const path = `${folder}pack.json`;
  const response = await fetchKept(path);
  if (!response.ok) throw new Error(`${path}: ${response.status}`);
  const pack = (await response.json()) as Pack;
  if (pack.format !== PACK_FORMAT)
    throw new Error(`${path}: found format ${pack.format}, expected ${PACK_FORMAT}`);
  return pack;
}

/** Takes what the teacher set of the student: the level that they are judged at, and how their drums stand. */
function takeSet(set: { readonly level?: string; readonly setUp?: SetUp | null | undefined }): void {
  const level = readLevel(set.level);
  if (level) takeSetLevel(level);
  if (set.setUp) takeSetUp(set.setUp);
}

/** The week of whoever opened the page by a private link: they practise here now. Null where it is no such page. */
let week: Promise<Week | null> | null = null;

async function joinWeek(): Promise<Week | null> {
  forbidMicrophoneWhere(() => lastWeek()?.mayRecord === false);
  const found = await readWeek();
  if (!found) return null;
  practiseAs(found.student);
  takeSet(found);
  return found;
}

/** A pack with what was set of it. */
async function withWeek(pack: Pack, id: string): Promise<Pack> {
  const set = await week;
  return set ? { ...pack, assignments: setOf(set, id) } : pack;
}

/** What the page lies in. @throws Error when it is not there or not of this format. */
export async function loadPack(): Promise<Pack> {
  const read = await readPack('');
  if (read.isPrivate) week = joinWeek();
  else takeSet(read);
  await week;
  const pack = await withWeek(named(read, ownFolder()), read.id);
  if (ownLessons()[pack.id] === undefined) keepLesson(pack.id, true);
  return pack;
}

/** A pack whose files are found from another folder. */
function from(folder: string, pack: Pack): Pack {
  const bars = (own: readonly PackBar[]) => own.map((bar) => ({ ...bar, tile: folder + bar.tile }));
  return {
    ...pack,
    exercises: pack.exercises.map((each) => ({ ...each, own: bars(each.own), full: bars(each.full) })),
    groove: bars(pack.groove),
    downloads: pack.downloads.map((file) => ({ ...file, path: folder + file.path })),
    ...(pack.media && { media: pack.media.map((each) => ({ ...each, path: folder + each.path })) }),
    ...(pack.demonstrations && {
      demonstrations: pack.demonstrations.map((each) => ({ ...each, path: folder + each.path })),
    }),
  };
}

/** Another pack that lies in a folder; null where it can no longer be had. */
async function packIn(folder: string): Promise<Pack | null> {
  return readPack(folder).catch(() => null);
}

/** The other lessons that were set for the student of a private link. */
async function loadWeek(): Promise<readonly Pack[]> {
  const own = ownFolder();
  const folders = ((await week)?.lessons ?? []).map(({ id }) => `${linkFolder()}${encodeURIComponent(id)}/`);
  const packs = folders.map(async (folder): Promise<readonly Pack[]> => {
    const pack = folder === own ? null : await packIn(folder);
    if (!pack) return [];
    const known = await withWeek(named(pack, folder), pack.id);
    if (ownLessons()[known.id] === undefined) keepLesson(known.id, true);
    void keepAlso(folder);
    return [from(folder, known)];
  });
  return (await Promise.all(packs)).flat();
}

/**
 * The student's other lessons: those that were set for them where the page was opened by a private link, else those
 * that they have opened on this host. One that can no longer be had is left out.
 */
export async function loadOthers(own: Pack): Promise<readonly Pack[]> {
  if (own.isPrivate) return loadWeek();
  const wanted = Object.keys(ownLessons()).filter((id) => id !== own.id);
  const packs = wanted.map(async (lasting): Promise<Pack | null> => {
    const known = knownPacks().find((each) => each.lasting === lasting);
    const pack = known ? await packIn(known.address) : null;
    if (!known || pack?.id !== known.id) return null;
    const lesson = { ...pack.lesson, from: originHere(pack.lesson.from, knownPacks()) };
    return { ...from(known.address, pack), id: lasting, lesson };
  });
  return (await Promise.all(packs)).filter((pack) => pack !== null);
}
