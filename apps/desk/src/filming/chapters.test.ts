import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Seconds } from '@shedbook/core';
import {
  ALL_FORMATS,
  BufferSource,
  BufferTarget,
  EncodedPacketSink,
  EncodedVideoPacketSource,
  Input,
  Output,
} from 'mediabunny';
import { afterAll, expect, it } from 'vitest';
import { chaptered, containerOf, type FilmKind, headOf } from './film-kind.ts';

const folder = mkdtempSync(join(tmpdir(), 'shedbook-chapters-test-'));
afterAll(() => rmSync(folder, { recursive: true }));

const ffmpeg = (...args: readonly string[]) => execFileSync('ffmpeg', ['-v', 'error', '-nostdin', ...args]);

const headed = {
  title: 'Two = one; a test',
  chapters: [
    { fromSeconds: Seconds(0), toSeconds: Seconds(0.5), title: 'Title' },
    { fromSeconds: Seconds(0.5), toSeconds: Seconds(1.25), title: 'Übung 1, 93 Schläge in der Minute' },
    { fromSeconds: Seconds(1.25), toSeconds: Seconds(2), title: '→ '.repeat(100) },
  ],
};

/** A film of two seconds that FFmpeg encoded, put into a file by what writes the browser's films. */
async function written(ending: FilmKind['ending'], encoder: string): Promise<string> {
  const path = join(folder, `plain${ending}`);
  ffmpeg('-f', 'lavfi', '-i', 'testsrc=s=64x48:r=10:d=2', '-pix_fmt', 'yuv420p', '-c:v', encoder, path);
  const input = new Input({ formats: ALL_FORMATS, source: new BufferSource(readFileSync(path)) });
  const track = await input.getPrimaryVideoTrack();
  const decoderConfig = await track?.getDecoderConfig();
  const codec = track?.codec;
  if (!track || !decoderConfig || !codec) throw new Error('no picture');
  const kind = { ending };
  const target = new BufferTarget();
  const output = new Output({ format: containerOf(kind), target });
  const source = new EncodedVideoPacketSource(codec);
  output.addVideoTrack(source);
  output.setMetadataTags(headOf(kind, headed));
  await output.start();
  for await (const packet of new EncodedPacketSink(track).packets())
    await source.add(packet, { decoderConfig });
  await output.finalize();
  const out = join(folder, `chapters${ending}`);
  writeFileSync(out, chaptered(kind, target.buffer as ArrayBuffer, headed));
  return out;
}

it.each([
  ['.mp4', 'libx264'],
  ['.webm', 'libvpx-vp9'],
] as const)(
  '[ST7200] writes title and chapters into a %s that FFmpeg reads, every frame whole',
  async (ending, encoder) => {
    const out = await written(ending, encoder);
    // library: FFmpeg lists what a file is called and its chapters in its own format
    const meta = ffmpeg('-i', out, '-f', 'ffmetadata', '-').toString();
    const all = (pattern: RegExp) =>
      [...meta.matchAll(pattern)].map(([, found]) => found?.replaceAll('\\', ''));
    const [title, ...titles] = all(/^title=(.*)$/gim);
    expect([title, ...titles.slice(0, 2)]).toEqual([headed.title, 'Title', headed.chapters[1]?.title]);
    expect(titles[2]).toMatch(/^(?:→ ){63}/);
    const base = all(/^TIMEBASE=1\/(\d+)$/gm).map(Number);
    expect(all(/^START=(\d+)$/gm).map((start, index) => Number(start) / (base[index] ?? 1))).toEqual([
      0, 0.5, 1.25,
    ]);
    const frames = ffmpeg('-i', out, '-f', 'rawvideo', '-pix_fmt', 'gray', '-');
    expect(frames).toEqual(
      ffmpeg('-i', join(folder, `plain${ending}`), '-f', 'rawvideo', '-pix_fmt', 'gray', '-'),
    );
  },
);
