import { createHash } from 'node:crypto';
import { strToU8 } from 'fflate';
import { describe, expect, it } from 'vitest';
import { readMedium } from './medium-file.ts';

const bytes = (...values: readonly number[]) => Uint8Array.from(values);
const padded = (start: Uint8Array, length = 64) => Uint8Array.from({ length }, (_, at) => start[at] ?? 0);

/** The head of a PNG of 600 by 400 pixels. Source: PNG 5.2 and 11.2.2. */
const PNG = padded(
  bytes(
    ...[0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10],
    ...[0, 0, 0, 13],
    ...strToU8('IHDR'),
    0,
    0,
    2,
    88,
    0,
    0,
    1,
    144,
  ),
);

/** A JPEG of 640 by 480 whose camera was held upright. Sources: ITU-T T.81, B.2.2; Exif 2.32, 4.6.4 A: tag 274 is 6. */
const EXIF = [
  ...[0xff, 0xe1, 0, 34, ...strToU8('Exif'), 0, 0],
  ...[...strToU8('MM'), 0, 42, 0, 0, 0, 8, 0, 1, 1, 0x12, 0, 3, 0, 0, 0, 1, 0, 6, 0, 0, 0, 0, 0, 0],
];
const FRAME = [0xff, 0xc0, 0, 11, 8, 1, 224, 2, 128, 1, 1, 0x11, 0];

function svg(inside: string, root = 'viewBox="0 0 30 10"'): Uint8Array {
  return strToU8(
    `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" ${root}>${inside}</svg>`,
  );
}

describe('files of the teacher\u2019s own', () => {
  it('[SE4202] are named by their content, and pictures know their size', () => {
    const { file } = readMedium('Grip.PNG', PNG);
    // library: node:crypto, SHA-256
    const sum = createHash('sha256').update(PNG).digest('hex').slice(0, 24);
    expect(file).toMatchObject({
      kind: 'picture',
      type: 'image/png',
      name: `${sum}.png`,
      size: { widthPx: 600, heightPx: 400 },
    });
    const gif = padded(bytes(...strToU8('GIF89a'), 0x58, 2, 0x90, 1));
    expect(readMedium('a.gif', gif).file?.size).toEqual({ widthPx: 600, heightPx: 400 });
    const photo = bytes(0xff, 0xd8, ...EXIF, ...FRAME, 0xff, 0xd9);
    expect(readMedium('a.jpeg', photo).file).toMatchObject({ size: { widthPx: 480, heightPx: 640 } });
    expect(readMedium('a.jpeg', photo).file?.name).toMatch(/\.jpg$/);
    expect(readMedium('a.jpg', bytes(0xff, 0xd8, ...FRAME, 0xff, 0xd9)).file?.size).toEqual({
      widthPx: 640,
      heightPx: 480,
    });
  });

  it('[SE4202] are what their endings say', () => {
    const beginnings = {
      'a.mp3': strToU8('ID3'),
      'a.wav': strToU8('RIFF....WAVE'),
      'a.flac': strToU8('fLaC'),
      'a.m4a': strToU8('....ftypM4A '),
      'a.mp4': strToU8('....ftypisom'),
      'a.webm': bytes(0x1a, 0x45, 0xdf, 0xa3),
    };
    for (const [path, start] of Object.entries(beginnings)) {
      expect(readMedium(path, padded(start)).fault, path).toBeNull();
      expect(readMedium(path, padded(strToU8('<!doctype html>'))).fault, path).toBe('other-content');
    }
    expect(readMedium('a.jpg', PNG).fault).toBe('other-content');
    expect(readMedium('a.png', PNG.subarray(0, 12)).fault).toBe('other-content');
    expect(readMedium('a.png', padded(PNG, 5_000_001)).fault).toBe('too-large');
    expect(readMedium('a.mp3', padded(strToU8('ID3'), 5_000_001)).fault).toBeNull();
  });

  it('[SE4202] an SVG document is a picture alone', () => {
    const gradient =
      '<defs><linearGradient id="g"/></defs><rect fill="url(#g)" style="stroke:#000"/><use xlink:href="#g"/>';
    expect(readMedium('a.svg', svg(gradient)).file?.size).toEqual({ widthPx: 30, heightPx: 10 });
    // definition: an inch is 96 pixels and 25.4 mm (CSS Values 4, 6.2)
    expect(readMedium('a.svg', svg('', 'width="50.8mm" viewBox="0 0 4 2"')).file?.size).toEqual({
      widthPx: 192,
      heightPx: 96,
    });
    for (const inside of [
      '<script>alert(1)</script>',
      '<rect onclick="x()"/>',
      '<foreignObject/>',
      '<a xlink:href="javascript:x()"/>',
      '<image href="https://example.org/a.png"/>',
      '<image href="data:image/svg+xml,x"/>',
      '<rect style="fill:url(http://example.org/a)"/>',
      '<style>@import "a.css"</style>',
    ])
      expect(readMedium('a.svg', svg(inside)).fault, inside).toBe('scripts');
    for (const text of ['<html/>', 'no picture', '<svg xmlns="http://www.w3.org/2000/svg"/>'])
      expect(readMedium('a.svg', strToU8(text)).fault, text).toBe('other-content');
  });
});
