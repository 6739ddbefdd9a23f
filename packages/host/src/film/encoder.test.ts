import { chmodSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { endingHere } from './encoder.ts';

it('[HO3600] films are MP4 where FFmpeg encodes H.264, WebM where it encodes VP9 alone, and none where it does neither', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'shedbook-encoder-'));
  const { PATH } = process.env;
  onTestFinished(() => {
    process.env['PATH'] = PATH;
    rmSync(folder, { recursive: true });
  });
  process.env['PATH'] = `${folder}:${PATH}`;
  const endingWith = (encoders: readonly string[]) => {
    // As `ffmpeg -encoders` lists them: flags, name, description.
    const lines = encoders.map((name) => `echo ' V....D ${name}           an encoder'`);
    writeFileSync(join(folder, 'ffmpeg'), ['#!/bin/sh', ...lines, ''].join('\n'));
    chmodSync(join(folder, 'ffmpeg'), 0o755);
    return endingHere();
  };
  expect(await endingWith(['mpeg4', 'libx264', 'libvpx-vp9'])).toBe('.mp4');
  expect(await endingWith(['mpeg4', 'libvpx-vp9'])).toBe('.webm');
  expect(await endingWith(['mpeg4'])).toBeNull();
});
