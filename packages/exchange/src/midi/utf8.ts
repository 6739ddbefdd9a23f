/**
 * Text in MIDI meta events. The standard asks for ASCII and lets programs agree on more; UTF-8 contains ASCII
 * and is what programs agree on today, so it is written here, and read with Latin-1 as the fall-back.
 * Source: RFC 3629 (UTF-8).
 */

function codeUnits(point: number): readonly number[] {
  const tail = (shift: number) => 0x80 | ((point >> shift) & 0x3f);
  if (point < 0x80) return [point];
  if (point < 0x800) return [0xc0 | (point >> 6), tail(0)];
  if (point < 0x10000) return [0xe0 | (point >> 12), tail(6), tail(0)];
  return [0xf0 | (point >> 18), tail(12), tail(6), tail(0)];
}

/** The UTF-8 bytes of a text; half a surrogate pair becomes U+FFFD. */
export function encodeUtf8(text: string): readonly number[] {
  return [...text].flatMap((character) => {
    const point = character.codePointAt(0) ?? 0xfffd;
    return codeUnits(point >= 0xd800 && point <= 0xdfff ? 0xfffd : point);
  });
}

const ESCAPES = Array.from({ length: 256 }, (_, byte) => `%${byte.toString(16).padStart(2, '0')}`);

/** The text of bytes: as UTF-8 where they are that, as Latin-1 where not. */
export function decodeUtf8(bytes: Uint8Array): string {
  const escaped = Array.from(bytes, (byte) => ESCAPES[byte]).join('');
  try {
    return decodeURIComponent(escaped);
  } catch {
    return Array.from(bytes, (byte) => String.fromCharCode(byte)).join('');
  }
}
