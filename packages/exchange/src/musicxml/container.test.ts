import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { factInEnglish } from '../../../../internal/testing/in-english.ts';
import { swingLesson } from '../../test/lessons.ts';
import { encodeUtf8 } from '../midi/utf8.ts';
import { isZip, writeMxl } from './container.ts';
import { readMusicXmlFile } from './read-file.ts';
import { writeMusicXml } from './write.ts';

const TEXT = writeMusicXml({ ...swingLesson(), title: 'Tänzchen' });

function utf16(text: string, bigEndian: boolean): Uint8Array {
  const units = [...`\ufeff${text}`].flatMap((unit) => {
    const code = unit.charCodeAt(0);
    return bigEndian ? [code >> 8, code & 0xff] : [code & 0xff, code >> 8];
  });
  return Uint8Array.from(units);
}

function found(bytes: Uint8Array): string | undefined {
  const [problem] = readMusicXmlFile(bytes, 'sheet.mxl').problems;
  return problem && factInEnglish(problem.found);
}

describe('compressed MusicXML', () => {
  it('[EX65] has its media type first and as it is, and a container that names the score', () => {
    const bytes = writeMxl(TEXT);
    expect(isZip(bytes)).toBe(true);
    // standard: MusicXML 4.0, compressed files: the first entry is mimetype, uncompressed; a local file header of a
    // zip archive has 30 bytes before the name
    const start = String.fromCharCode(...bytes.slice(30, 30 + 8 + 34));
    expect(start).toBe('mimetypeapplication/vnd.recordare.musicxml');
    const files = unzipSync(bytes);
    expect(Object.keys(files)).toEqual(['mimetype', 'META-INF/container.xml', 'score.musicxml']);
    // standard: MusicXML 4.0 container: rootfile with full-path and the media type of plain MusicXML
    expect(strFromU8(files['META-INF/container.xml'] ?? new Uint8Array())).toContain(
      '<rootfile full-path="score.musicxml" media-type="application/vnd.recordare.musicxml+xml"/>',
    );
    expect(writeMxl(TEXT)).toEqual(bytes);
  });

  it('[EX66] is read like the plain file, in UTF-8, with a byte order mark, in UTF-16 and in Latin-1', () => {
    const files = [
      writeMxl(TEXT),
      Uint8Array.from(encodeUtf8(TEXT)),
      Uint8Array.from(encodeUtf8(`\ufeff${TEXT}`)),
      utf16(TEXT.replace('UTF-8', 'UTF-16'), true),
      utf16(TEXT.replace('UTF-8', 'UTF-16'), false),
      Uint8Array.from([...TEXT.replace('UTF-8', 'ISO-8859-1')].map((character) => character.charCodeAt(0))),
    ];
    for (const bytes of files) {
      const reading = readMusicXmlFile(bytes, 'sheet.musicxml');
      expect([reading.problems, reading.title, reading.exercises.length]).toEqual([[], 'Tänzchen', 2]);
    }
  });

  it('[EX67] is refused with what is wrong when it is damaged or no score', () => {
    expect(found(writeMxl(TEXT).slice(0, 200))).toBe('a damaged zip archive');
    expect(found(zipSync({ 'a.txt': strToU8('a') }))).toBe('a zip archive without META-INF/container.xml');
    expect(found(zipSync({ 'META-INF/container.xml': strToU8('<container/>') }))).toBe(
      'a META-INF/container.xml that names no root file',
    );
    const pointing = '<container><rootfiles><rootfile full-path="b.xml"/></rootfiles></container>';
    expect(found(zipSync({ 'META-INF/container.xml': strToU8(pointing) }))).toBe(
      'no file b.xml of a readable size in it',
    );
  });
});
