import { strToU8 } from 'fflate';
import { expect, it } from 'vitest';
import { readMedium } from './medium-file.ts';

const NOTE = 'N 48 51 E 2 21';

/** A segment of a JPEG. Source: ITU-T T.81, B.1.1.4: its length counts itself. */
function segment(marker: number, ...content: readonly number[]): readonly number[] {
  const length = content.length + 2;
  return [0xff, marker, length >> 8, length & 0xff, ...content];
}

// Exif 2.32, 4.6.4 A: tag 274, held upright, and what else a camera notes
const ENTRY = [1, 0x12, 0, 3, 0, 0, 0, 1, 0, 6, 0, 0];
const TIFF = [...strToU8('MM'), 0, 42, 0, 0, 0, 8, 0, 1, ...ENTRY, 0, 0, 0, 0, ...strToU8(NOTE)];
const EXIF = segment(0xe1, ...strToU8('Exif'), 0, 0, ...TIFF);
const FRAME = segment(0xc0, 8, 1, 224, 2, 128, 1, 1, 0x11, 0);
const TABLE = segment(0xc4, 0, 0xff, 0xd9, 7);
// coded data with a stuffed byte and a restart, a table, and a second scan
const SCANS = [...segment(0xda, 1, 1), 5, 0xff, 0, 6, 0xff, 0xd0, 7, ...TABLE, ...segment(0xda, 1, 1), 8];

it('[SE4901] a photograph goes out without place, time, remarks and further pictures, held as it was', () => {
  const colours = segment(0xe2, ...strToU8('ICC_PROFILE'), 0, 1, 1);
  const notes = [
    ...segment(0xfe, ...strToU8(NOTE)),
    ...segment(0xe2, ...strToU8('MPF'), 0, ...strToU8(NOTE)),
  ];
  const photo = [0xff, 0xd8, ...EXIF, ...colours, ...notes, ...FRAME, ...SCANS, 0xff, 0xd9, ...strToU8(NOTE)];
  const { file } = readMedium('grip.jpg', Uint8Array.from(photo));
  const shared = Buffer.from(file?.content ?? []);
  expect(shared.includes(NOTE)).toBe(false);
  expect(file?.size).toEqual({ widthPx: 480, heightPx: 640 });
  const again = readMedium('grip.jpg', shared).file;
  expect(again).toMatchObject({ name: file?.name, size: file?.size });
  // ITU-T T.81, B.2.1: what the picture itself is made of comes through byte by byte
  expect(shared.includes(Buffer.from([...colours, ...FRAME, ...SCANS, 0xff, 0xd9]))).toBe(true);
  expect(shared.subarray(-2)).toEqual(Buffer.from([0xff, 0xd9]));
});

it('[SE4901] a picture of a screen goes out without what was noted in it', () => {
  // PNG 5.3 and 11.3.3: length, type, content, checksum
  const chunk = (type: string, content: readonly number[]) => [
    ...[0, 0, 0, content.length, ...strToU8(type)],
    ...content,
    ...[0, 0, 0, 0],
  ];
  const head = [0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10];
  const size = chunk('IHDR', [0, 0, 2, 88, 0, 0, 1, 144, 8, 0, 0, 0, 0]);
  const rest = [...chunk('IDAT', [1, 2, 3]), ...chunk('IEND', [])];
  const noted = [...head, ...size, ...chunk('tEXt', [...strToU8(NOTE)]), ...rest];
  expect(readMedium('a.png', Uint8Array.from(noted)).file?.content).toEqual(
    Uint8Array.from([...head, ...size, ...rest]),
  );
});
