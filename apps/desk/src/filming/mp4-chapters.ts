/**
 * Chapters in MP4 files: the box `moov/udta/chpl`, which players read since Nero's programs wrote it, and FFmpeg does.
 * Source: FFmpeg's libavformat, `mov_write_chpl_tag` and `mov_read_chpl` (no standard has it): version 1 and flags, four
 * bytes of nothing, a count of one byte, then for each chapter its beginning in units of 100 ns, the length of its title,
 * and the title in UTF-8.
 */
import type { Chapter } from '@shedbook/film';

const UNITS_PER_SECOND = 10_000_000;
/** The most that a byte counts: of chapters, and of bytes of a title. */
const MOST = 255;

/** A text in at most 255 bytes of UTF-8, no character cut in two. */
function titleBytes(title: string): Uint8Array {
  const bytes = new Uint8Array(MOST);
  const { written } = new TextEncoder().encodeInto(title, bytes);
  return bytes.subarray(0, written);
}

/** What the box contains. */
export function chplBytes(chapters: readonly Chapter[]): Uint8Array {
  const listed = chapters.slice(0, MOST);
  const blocks = listed.map(({ fromSeconds, title }) => {
    const name = titleBytes(title);
    const block = new Uint8Array(9 + name.length);
    const view = new DataView(block.buffer);
    view.setBigUint64(0, BigInt(Math.round(fromSeconds * UNITS_PER_SECOND)));
    view.setUint8(8, name.length);
    block.set(name, 9);
    return block;
  });
  return Uint8Array.from([1, 0, 0, 0, 0, 0, 0, 0, listed.length, ...blocks.flatMap((block) => [...block])]);
}
