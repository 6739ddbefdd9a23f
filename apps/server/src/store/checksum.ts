/** Whether a text is still as it was written: disks and cables flip bits that a database does not miss. */
import { createHash } from 'node:crypto';

/** Hexadecimal digits that are kept: 64 bits. */
const DIGITS = 16;

/** The checksum of a text or of bytes. Source: FIPS 180-4, SHA-256, its first 64 bits. */
export function checksumOf(content: string | Uint8Array): string {
  return createHash('sha256').update(content).digest('hex').slice(0, DIGITS);
}

/** Whether a text has the checksum that was kept with it; where none was kept, nothing is known against it. */
export function isAsWritten(text: string, checksum: string | null): boolean {
  return checksum === null || checksumOf(text) === checksum;
}
