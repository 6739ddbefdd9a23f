/** Performances as demonstrations of a pack: the sound of each alone, and which place of it is heard when. */
import { Hertz, type Lesson, sectionOf } from '@shedbook/core';
import type { RecordedDemonstration } from '@shedbook/pack';
import { demonstrate } from '@shedbook/playing';
import { encodeMonoFlac, normaliseLoudness, RECORDING_LUFS } from '@shedbook/sound';
import type { HeardPerformances } from './hear-performances.ts';
import { pathOf, readStretch } from './recordings.ts';

const RATE_HZ = Hertz(44_100);
/** What is cut in and out is faded so fast, in seconds: too fast to soften a stroke. */
const FADE_SECONDS = 0.005;
const INT16 = 0x7fff;

/** The two channels of interleaved floats as one. */
function mixed(bytes: Buffer): Float32Array {
  const both = new Float32Array(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length));
  return Float32Array.from({ length: both.length / 2 }, (_, i) => {
    return ((both[2 * i] as number) + (both[2 * i + 1] as number)) / 2;
  });
}

/** Samples in 16 bits, faded in and out. */
function quantised(samples: Float32Array): Int16Array<ArrayBuffer> {
  const fade = FADE_SECONDS * RATE_HZ;
  const last = samples.length - 1;
  return Int16Array.from(samples, (sample, i) => {
    const share = Math.min(1, i / fade, (last - i) / fade);
    return Math.round(INT16 * Math.max(-1, Math.min(1, share * sample)));
  });
}

/** Bytes of a second: FLAC leaves about so much of the noise of a drum set. */
const BYTES_A_SECOND = 0.6 * 2 * RATE_HZ;

/** About how large the recording of a demonstration will be, within a factor of two. */
export function estimateDemonstrationBytes(seconds: number): number {
  return seconds * BYTES_A_SECOND;
}

/** The demonstrations of a lesson's exercises, as loud as recordings are. */
export async function makeDemonstrations(
  lesson: Lesson,
  { recorded, recordings }: Pick<HeardPerformances, 'recorded' | 'recordings'>,
  signal: AbortSignal,
): Promise<readonly RecordedDemonstration[]> {
  const made: RecordedDemonstration[] = [];
  for (const each of recorded) {
    const stretch = { ...each.sounding, sampleRateHz: RATE_HZ };
    const mono = mixed(await readStretch(pathOf(recordings, each), stretch, signal));
    const audio = { left: mono, right: mono, sampleRateHz: RATE_HZ };
    const { left } = normaliseLoudness(audio, RECORDING_LUFS).audio;
    const demonstration = demonstrate(sectionOf(lesson, each.exercise), each, each.sounding);
    made.push({ ...demonstration, flac: await encodeMonoFlac(quantised(left), RATE_HZ) });
  }
  return made;
}
