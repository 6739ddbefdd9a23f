/** Reading the file of a take that came from outside. */
import { type TakeFacts, takeFacts } from '@shedbook/routes';
import { strFromU8, unzipSync } from 'fflate';

/** The part that holds the facts, and bytes that it has at most. */
const FACTS = 'take.json';
const FACTS_BYTES = 4 * 1024 * 1024;

/** Bytes of what is kept of them, at most: an hour of rounds has a tenth of it, and lists show a hundred takes. */
const KEPT_BYTES = 512 * 1024;

/** Bytes of the part that holds the facts; 0 where there is none. */
export function bytesOfFacts(content: Uint8Array): number {
  let bytes = 0;
  try {
    unzipSync(content, {
      filter: ({ name, originalSize }) => {
        if (name === FACTS) bytes = originalSize;
        return false;
      },
    });
  } catch {
    return 0;
  }
  return bytes;
}

function isLittle(facts: TakeFacts): boolean {
  return Buffer.byteLength(JSON.stringify(facts)) <= KEPT_BYTES;
}

/** What a take says of itself; null where the file is no take, or says more than can be kept. */
export function readTakeFacts(content: Uint8Array): TakeFacts | null {
  try {
    const parts = unzipSync(content, {
      filter: ({ name, originalSize }) => name === FACTS && originalSize <= FACTS_BYTES,
    });
    const facts = parts[FACTS];
    if (!facts) return null;
    const read = takeFacts.safeParse(JSON.parse(strFromU8(facts)));
    return read.success && isLittle(read.data) ? read.data : null;
  } catch {
    return null;
  }
}
