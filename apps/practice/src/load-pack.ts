/** Reading the pack that the page lies in. */
import { fileNameOf, lessonKey } from '@shedbook/core';
import { PACK_FORMAT, type Pack } from '@shedbook/pack/format';
import { remember, remembered } from '@shedbook/stand';
import { type KnownPack, lastingName } from './kept/lasting-name.ts';

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

/** What the page lies in. @throws Error when it is not there or not of this format. */
export async function loadPack(): Promise<Pack> {
  const response = await fetch('pack.json');
  if (!response.ok) throw new Error(`pack.json: ${response.status}`);
  const pack = (await response.json()) as Pack;
  if (pack.format !== PACK_FORMAT)
    throw new Error(`pack.json: found format ${pack.format}, expected ${PACK_FORMAT}`);
  return named(pack);
}
