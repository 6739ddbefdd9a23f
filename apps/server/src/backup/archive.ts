/**
 * What a backup is: an archive with the store, the recordings of takes, the teacher's own files and the sum of each, which any computer can open
 * (`tar xf`) and check (`sha256sum -c SHA256SUMS`) without us.
 *
 * Conventions: the sums come last, so that a file that breaks off has none.
 * Source: FIPS 180-4, SHA-256; GNU coreutils, `sha256sum`, the form of its lists.
 */
import { createHash } from 'node:crypto';
import { type TarFile, tarHeader, tarPadding } from './tar.ts';

/** What a backup says of itself, its first file. */
export const ABOUT_FILE = 'backup.json';

/** The sums of all the others, its last file. */
export const SUMS_FILE = 'SHA256SUMS';

/** Folder of recordings within it. */
export const TAKES_PART = 'takes';

/** Folder of the teacher's own pictures, sound and video within it. */
export const MEDIA_PART = 'media';

/** Version of the archive that this program writes. */
export const ARCHIVE_VERSION = 1;

/** Writes an archive file by file, and keeps their sums. */
export interface ArchiveWriter {
  /** The parts of a file with all its content. */
  file(name: string, content: Uint8Array): readonly Uint8Array[];
  /** The parts of a file whose content comes bit by bit. */
  long(file: TarFile, content: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array>;
  /** The parts of the list of sums. */
  sums(): readonly Uint8Array[];
}

/** A writer. @param madeAt seconds since 1970 */
export function writeArchive(madeAt: number): ArchiveWriter {
  const lines: string[] = [];
  const plain = (name: string, content: Uint8Array) => [
    tarHeader({ name, bytes: content.length }, madeAt),
    content,
    tarPadding(content.length),
  ];
  return {
    file: (name, content) => {
      lines.push(`${createHash('sha256').update(content).digest('hex')}  ${name}\n`);
      return plain(name, content);
    },
    async *long(file, content) {
      const sum = createHash('sha256');
      yield tarHeader(file, madeAt);
      for await (const part of content) {
        sum.update(part);
        yield part;
      }
      yield tarPadding(file.bytes);
      lines.push(`${sum.digest('hex')}  ${file.name}\n`);
    },
    sums: () => plain(SUMS_FILE, Buffer.from(lines.join(''))),
  };
}
