/**
 * Compressed MusicXML (`.mxl`): a zip archive with a container that names the score.
 *
 * Conventions: the same score gives the same bytes, so the archive's dates are the earliest that zip can say.
 * Source: MusicXML 4.0, compressed files: `mimetype` first and stored as it is, `META-INF/container.xml` with the
 * path of the first root file.
 */
import { childrenOf, descend, readXml } from '@shedbook/core';
import { strToU8, unzipSync, zipSync } from 'fflate';
import { decodeText } from '../xml/decode-text.ts';
import { printXml, xml } from '../xml/write-xml.ts';
import type { MusicXmlFact } from './musicxml-fact.ts';

const MIME_TYPE = 'application/vnd.recordare.musicxml';
const CONTAINER = 'META-INF/container.xml';
const SCORE = 'score.musicxml';

/** Largest file that is unpacked, in bytes; a sheet of a hundred exercises is about one million. */
const MAX_UNPACKED = 64_000_000;

/** Zip counts its dates from 1980. */
const EARLIEST = new Date(1980, 0, 1);

/** The bytes of a compressed file with a MusicXML text. */
export function writeMxl(musicXml: string): Uint8Array {
  const container = xml('container', {}, [
    xml('rootfiles', {}, [xml('rootfile', { 'full-path': SCORE, 'media-type': `${MIME_TYPE}+xml` })]),
  ]);
  return zipSync(
    {
      mimetype: [strToU8(MIME_TYPE), { level: 0 }],
      [CONTAINER]: strToU8(printXml(container)),
      [SCORE]: strToU8(musicXml),
    },
    { mtime: EARLIEST },
  );
}

/** Whether bytes are a zip archive. */
export function isZip(bytes: Uint8Array): boolean {
  return bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 0x03 && bytes[3] === 0x04;
}

/** The score in a compressed file, or what is wrong with it. */
export type UnpackedMxl =
  | { readonly text: string; readonly fault: null }
  | { readonly text: null; readonly fault: MusicXmlFact };

function fault(of: MusicXmlFact): UnpackedMxl {
  return { text: null, fault: of };
}

function unpack(bytes: Uint8Array, name: string): Uint8Array | null {
  const filter = (file: { readonly name: string; readonly originalSize: number }) =>
    file.name === name && file.originalSize <= MAX_UNPACKED;
  return unzipSync(bytes, { filter })[name] ?? null;
}

/** Unpacks the first root file that the container names. */
export function readMxl(bytes: Uint8Array): UnpackedMxl {
  try {
    const container = unpack(bytes, CONTAINER);
    if (!container) return fault({ fact: 'musicxml-zip-without', file: CONTAINER });
    const { root } = readXml(decodeText(container));
    const rootfiles = root ? childrenOf(descend(root, 'rootfiles'), 'rootfile') : [];
    const path = rootfiles[0]?.attributes['full-path'];
    if (path === undefined) return fault({ fact: 'musicxml-no-root-file', file: CONTAINER });
    const score = unpack(bytes, path);
    return score ? { text: decodeText(score), fault: null } : fault({ fact: 'musicxml-no-file', file: path });
  } catch {
    return fault({ fact: 'musicxml-damaged-zip' });
  }
}
