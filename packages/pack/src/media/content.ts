/**
 * What a file is by how it begins.
 *
 * Sources: PNG 5.2; JPEG (ITU-T T.81, B.1.1.3); GIF89a, 17; ISO/IEC 11172-3 and ID3v2 (MP3);
 * ISO/IEC 14496-12, 4.3 (`ftyp`); RIFF WAVE; FLAC (RFC 9639, 6); Matroska (EBML, RFC 8794, 11.2.1).
 */
import type { MediumEnding } from '@shedbook/core';

/** Letters of a file from a place on. */
function letters(content: Uint8Array, from: number, length: number): string {
  return String.fromCharCode(...content.subarray(from, from + length));
}

function begins(content: Uint8Array, ...bytes: readonly number[]): boolean {
  return bytes.every((byte, at) => content[at] === byte);
}

function isMp3(content: Uint8Array): boolean {
  return letters(content, 0, 3) === 'ID3' || (content[0] === 0xff && ((content[1] ?? 0) & 0xe0) === 0xe0);
}

function isIsoMedia(content: Uint8Array): boolean {
  return letters(content, 4, 4) === 'ftyp';
}

const IS: Readonly<Record<MediumEnding, (content: Uint8Array) => boolean>> = {
  png: (content) => begins(content, 0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a),
  jpg: (content) => begins(content, 0xff, 0xd8, 0xff),
  jpeg: (content) => begins(content, 0xff, 0xd8, 0xff),
  gif: (content) => /^GIF8[79]a$/.test(letters(content, 0, 6)),
  // what an SVG document is its reader says
  svg: (content) => content.length > 0,
  mp3: isMp3,
  m4a: isIsoMedia,
  wav: (content) => letters(content, 0, 4) === 'RIFF' && letters(content, 8, 4) === 'WAVE',
  flac: (content) => letters(content, 0, 4) === 'fLaC',
  mp4: isIsoMedia,
  webm: (content) => begins(content, 0x1a, 0x45, 0xdf, 0xa3),
};

/** Whether a file begins as files with its ending do. */
export function isWhatItSays(ending: MediumEnding, content: Uint8Array): boolean {
  return IS[ending](content);
}
