/**
 * Whether an Ogg file ends where one of its pages ends.
 *
 * Source: RFC 3533, section 6: a page header of 27 bytes, a table of segment lengths, then the segments.
 */
import { open } from 'node:fs/promises';
import { breaksOff } from './sound-fault.ts';

/** The longest page: header, 255 lengths and 255 segments of 255 bytes. */
const LONGEST_PAGE_BYTES = 27 + 255 + 255 * 255;
const SEGMENTS_AT = 26;
const HEADER_BYTES = 27;

function pageBytes(page: Buffer): number {
  const segments = page.length > SEGMENTS_AT ? page.readUInt8(SEGMENTS_AT) : 0;
  const lengths = page.subarray(HEADER_BYTES, HEADER_BYTES + segments);
  return HEADER_BYTES + segments + lengths.reduce((sum, length) => sum + length, 0);
}

/** @throws SoundFault when the last page of the file is not whole. */
export async function requireWholePages(path: string): Promise<void> {
  const file = await open(path, 'r');
  try {
    const { size } = await file.stat();
    const length = Math.min(size, 2 * LONGEST_PAGE_BYTES);
    const { buffer } = await file.read(Buffer.alloc(length), 0, length, size - length);
    const last = buffer.lastIndexOf('OggS', length, 'latin1');
    if (last >= 0 && pageBytes(buffer.subarray(last)) <= length - last) return;
    throw breaksOff({ is: 'lastPage' });
  } finally {
    await file.close();
  }
}
