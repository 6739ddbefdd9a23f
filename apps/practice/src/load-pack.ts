/** Reading the pack that the page lies in, and the student's other ones on the same host. */
import { fileNameOf, lessonKey } from '@shedbook/core';
import { PACK_FORMAT, type Pack, type PackBar } from '@shedbook/pack/format';

import { remember, remembered } from '@shedbook/stand';
import { type KnownPack, lastingName } from './kept/lasting-name.ts';
import { keepLesson, ownLessons } from './kept/own-lessons.ts';
import { fetchKept } from './page/fetch-kept.ts';

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

/** The pack under its lasting name on this device. */
function named(pack: Pack): Pack {
  const { title, by } = pack.lesson;
  const address = new URL('.', window.location.href).pathname;
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

/** What the page lies in. @throws Error when it is not there or not of this format. */
export async function loadPack(): Promise<Pack> {
  const pack = named(await readPack(''));
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
  };
}

/**
 * The other packs of this host that the student who practises now has opened; one that can no longer be had is left
 * out.
 */
export async function loadOthers(own: Pack): Promise<readonly Pack[]> {
  const wanted = Object.keys(ownLessons()).filter((id) => id !== own.id);
  const packs = wanted.map(async (lasting): Promise<Pack | null> => {
    const known = knownPacks().find((each) => each.lasting === lasting);
    if (!known) return null;
    const pack = await readPack(known.address).catch(() => null);
    if (pack?.id !== known.id) return null;
    const lesson = { ...pack.lesson, from: originHere(pack.lesson.from, knownPacks()) };
    return { ...from(known.address, pack), id: lasting, lesson };
  });
  return (await Promise.all(packs)).filter((pack) => pack !== null);
}
