/**
 * A MusicXML file as bytes: plain in any of XML's usual encodings, or compressed.
 */
import { decodeText } from '../xml/decode-text.ts';
import { isZip, readMxl } from './container.ts';
import { type MusicXmlReading, nothingRead, readMusicXml } from './read.ts';

/** Reads a plain or compressed file; `file` names it in problems. */
export function readMusicXmlFile(bytes: Uint8Array, file: string): MusicXmlReading {
  if (!isZip(bytes)) return readMusicXml(decodeText(bytes), file);
  const { text, fault } = readMxl(bytes);
  if (text !== null) return readMusicXml(text, file);
  return nothingRead([
    {
      code: 'musicxml-container',
      severity: 'error',
      file,
      line: 1,
      column: 1,
      path: '',
      found: fault,
      expected: { fact: 'musicxml-compressed' },
      repair: { fact: 'musicxml-save-again' },
    },
  ]);
}
