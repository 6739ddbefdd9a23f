/** Reading the pack that the page lies in. */
import { PACK_FORMAT, type Pack } from '@shedbook/pack/format';

/** What the page lies in. @throws Error when it is not there or not of this format. */
export async function loadPack(): Promise<Pack> {
  const response = await fetch('pack.json');
  if (!response.ok) throw new Error(`pack.json: ${response.status}`);
  const pack = (await response.json()) as Pack;
  if (pack.format !== PACK_FORMAT)
    throw new Error(`pack.json: found format ${pack.format}, expected ${PACK_FORMAT}`);
  return pack;
}
