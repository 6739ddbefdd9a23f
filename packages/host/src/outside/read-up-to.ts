/** Files from elsewhere as bytes, up to a size: also where nobody knows how large they are. */
import { open } from 'node:fs/promises';

/** Bytes that are read at once. */
const PART_BYTES = 2 ** 18;

/** A file is larger than what is read of its kind. */
export class TooLargeError extends Error {
  override readonly name = 'TooLargeError';
  /** Bytes that are read at most. */
  readonly mostBytes: number;

  /** @param mostBytes that are read */
  constructor(mostBytes: number) {
    super(`more than ${mostBytes} bytes`);
    this.mostBytes = mostBytes;
  }
}

/**
 * The bytes of a file, of a pipe too.
 * @throws TooLargeError where there are more; what the system says where it cannot be read
 */
export async function readUpTo(path: string, mostBytes: number): Promise<Buffer> {
  const file = await open(path, 'r');
  try {
    const { size } = await file.stat();
    if (size > mostBytes) throw new TooLargeError(mostBytes);
    const parts: Buffer[] = [];
    let bytes = 0;
    for (;;) {
      const { buffer, bytesRead } = await file.read({ buffer: Buffer.alloc(PART_BYTES) });
      if (bytesRead === 0) return Buffer.concat(parts);
      bytes += bytesRead;
      if (bytes > mostBytes) throw new TooLargeError(mostBytes);
      parts.push(buffer.subarray(0, bytesRead));
    }
  } finally {
    await file.close();
  }
}
