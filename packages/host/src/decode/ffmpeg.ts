/** What no decoder here reads, AAC above all, through an installed FFmpeg. */
import { Hertz } from '@shedbook/core';
import { type DecodedSound, type ForFfmpeg, inFull } from './decoded-sound.ts';
import { FfmpegFault, ffmpegSamples } from './ffmpeg-samples.ts';
import { type FoundSound, SoundFault } from './sound-fault.ts';

const RATE_HZ = Hertz(44_100);

async function* blocksOf(path: string, found: FoundSound): AsyncGenerator<Float32Array> {
  try {
    yield* ffmpegSamples({ path, sampleRateHz: RATE_HZ, of: ['-vn'] });
  } catch (error) {
    if (!(error instanceof FfmpegFault)) throw error;
    const { why } = error;
    if (why === 'missing') throw new SoundFault({ fault: 'no-ffmpeg', found });
    if (why === 'too-long') throw new SoundFault({ fault: 'too-much' });
    throw new SoundFault({ fault: 'complaint', found, why: why.said });
  }
}

/** Opens a file with FFmpeg. What it cannot read throws a SoundFault while blocks are read. */
export function openWithFfmpeg(path: string, { forFfmpeg, wholeSeconds }: ForFfmpeg): DecodedSound {
  const sound = { sampleRateHz: RATE_HZ, blocks: blocksOf(path, forFfmpeg) };
  return { ...sound, blocks: inFull(sound, wholeSeconds) };
}
