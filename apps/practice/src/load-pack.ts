/** Reading the pack that the page lies in. */
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

/** The pack under its lasting name on this device. */
function named(pack: Pack): Pack {
  const { title, by } = pack.lesson;
  const address = new URL('.', window.location.href).pathname;
  const { lasting, known } = lastingName(knownPacks(), { id: pack.id, title, by: by ?? '', address });
  remember(KNOWN, JSON.stringify(known));
  return { ...pack, id: lasting };
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
