/**
 * Bytes of an XML file to text.
 * Source: XML 1.0, appendix F: a byte order mark tells UTF-16 and UTF-8; without one a file is UTF-8, and Latin-1
 * where it is not that.
 */
import { decodeUtf8 } from '../midi/utf8.ts';

function decodeUtf16(bytes: Uint8Array, bigEndian: boolean): string {
  const units: string[] = [];
  for (let i = 0; i + 1 < bytes.length; i += 2) {
    const [first, second] = [bytes[i] as number, bytes[i + 1] as number];
    units.push(String.fromCharCode(bigEndian ? first * 256 + second : second * 256 + first));
  }
  return units.join('');
}

/** The text of bytes, without a byte order mark. */
export function decodeText(bytes: Uint8Array): string {
  const [first, second, third] = bytes;
  if (first === 0xfe && second === 0xff) return decodeUtf16(bytes.subarray(2), true);
  if (first === 0xff && second === 0xfe) return decodeUtf16(bytes.subarray(2), false);
  const marked = first === 0xef && second === 0xbb && third === 0xbf;
  return decodeUtf8(marked ? bytes.subarray(3) : bytes);
}
