/**
 * Files in one: the tape archive that every system can open without us.
 *
 * Conventions: regular files only, each readable by its owner alone; sizes below 8 GiB.
 * Source: POSIX.1-2017, pax, "ustar Interchange Format".
 */
const BLOCK = 512;

/** Bytes that one file has at most: eleven octal digits. */
const MOST_BYTES = 8 ** 11 - 1;

/** What ends an archive: two blocks of zeros. */
export const TAR_END: Uint8Array = new Uint8Array(2 * BLOCK);

/** A file of an archive. */
export interface TarFile {
  readonly name: string;
  readonly bytes: number;
}

/** The archive breaks off, or is none. */
export class TarError extends Error {
  override readonly name = 'TarError';
}

/** The sum of a header's bytes, its own field counted as spaces. */
function sumOf(header: Buffer): number {
  return header.reduce((sum, byte, at) => sum + (at >= 148 && at < 156 ? 0x20 : byte), 0);
}

/** How it is written. */
function sumField(header: Buffer): string {
  return `${octal(sumOf(header), 6)}\0 `;
}

function octal(value: number, digits: number): string {
  return value.toString(8).padStart(digits, '0');
}

/** What stands before a file. @param madeAt seconds since 1970 */
export function tarHeader({ name, bytes }: TarFile, madeAt: number): Uint8Array {
  if (Buffer.byteLength(name) > 100 || bytes > MOST_BYTES)
    throw new RangeError(`Internal error: ${name} with ${bytes} bytes fits no header`);
  const header = Buffer.alloc(BLOCK);
  header.write(name, 0);
  header.write(`${octal(0o600, 7)}\0${octal(0, 7)}\0${octal(0, 7)}\0`, 100);
  header.write(`${octal(bytes, 11)}\0${octal(madeAt, 11)}\0`, 124);
  header.write('0', 156);
  header.write('ustar\x0000', 257);
  header.write(sumField(header), 148);
  return header;
}

/** What fills the last block of a file. */
export function tarPadding(bytes: number): Uint8Array {
  return new Uint8Array((BLOCK - (bytes % BLOCK)) % BLOCK);
}

/** Takes bytes from a stream as many as are wanted. */
function takeFrom(chunks: AsyncIterable<Uint8Array>) {
  const iterator = chunks[Symbol.asyncIterator]();
  let left: Uint8Array = new Uint8Array(0);
  /** At most so many bytes, as they come; none at the end. */
  const some = async (most: number): Promise<Uint8Array> => {
    while (left.length === 0) {
      const { value, done } = await iterator.next();
      if (done) return left;
      left = value;
    }
    const part = left.subarray(0, most);
    left = left.subarray(part.length);
    return part;
  };
  async function* parts(bytes: number): AsyncGenerator<Uint8Array> {
    for (let missing = bytes; missing > 0; ) {
      const part = await some(missing);
      if (part.length === 0) throw new TarError('the archive breaks off');
      missing -= part.length;
      yield part;
    }
  }
  return parts;
}

async function wholeOf(parts: AsyncIterable<Uint8Array>): Promise<Buffer> {
  const all: Uint8Array[] = [];
  for await (const part of parts) all.push(part);
  return Buffer.concat(all);
}

/** A file out of its header; null at the end of the archive. */
function fileOf(header: Buffer): TarFile | null {
  if (header.every((byte) => byte === 0)) return null;
  const text = (from: number, to: number) => header.toString('latin1', from, to).split('\0', 1)[0] ?? '';
  const isOurs = text(257, 263) === 'ustar' && text(156, 157) === '0' && text(345, 500) === '';
  const bytes = Number.parseInt(text(124, 136), 8);
  const isWhole = header.toString('latin1', 148, 156) === sumField(header);
  if (!isOurs || !isWhole || !(bytes >= 0)) throw new TarError('no header of a file');
  return { name: text(0, 100), bytes };
}

/**
 * Reads an archive from one end to the other.
 * @param onFile is given each file; it has to read the content before the next comes
 * @throws TarError where the archive breaks off, or is none
 */
export async function readTar(
  chunks: AsyncIterable<Uint8Array>,
  onFile: (file: TarFile, content: AsyncIterable<Uint8Array>) => Promise<void>,
): Promise<void> {
  const take = takeFrom(chunks);
  for (;;) {
    const file = fileOf(await wholeOf(take(BLOCK)));
    if (!file) return;
    await onFile(file, take(file.bytes));
    const padding = await wholeOf(take(tarPadding(file.bytes).length));
    if (padding.some((byte) => byte !== 0)) throw new TarError('something between two files');
  }
}
