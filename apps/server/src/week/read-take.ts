/** Reading the file of a take that came from outside. */
import { type TakeFacts, takeFacts } from '@shedbook/routes';
import { strFromU8, unzipSync } from 'fflate';

/** The part that holds the facts, and bytes that it has at most. */
const FACTS = 'take.json';
const FACTS_BYTES = 4 * 1024 * 1024;

/** What a take says of itself; null where the file is no take. */
export function readTakeFacts(content: Uint8Array): TakeFacts | null {
  try {
    const parts = unzipSync(content, {
      filter: ({ name, originalSize }) => name === FACTS && originalSize <= FACTS_BYTES,
    });
    const facts = parts[FACTS];
    if (!facts) return null;
    const read = takeFacts.safeParse(JSON.parse(strFromU8(facts)));
    return read.success ? read.data : null;
  } catch {
    return null;
  }
}
