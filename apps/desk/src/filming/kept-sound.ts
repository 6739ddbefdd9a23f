/** Sound that is kept beside the memory of the page, since a film of half an hour is a gigabyte of it. */
import type { Hertz } from '@shedbook/core';
import type { KeptSound } from '@shedbook/film';
import type { StereoAudio } from '@shedbook/sound';

const SAMPLE_BYTES = Float32Array.BYTES_PER_ELEMENT;

function blobOf(samples: Float32Array): Blob {
  return new Blob([new Float32Array(samples)]);
}

async function samplesOf(kept: Blob, from: number, to: number): Promise<Float32Array> {
  return new Float32Array(await kept.slice(SAMPLE_BYTES * from, SAMPLE_BYTES * to).arrayBuffer());
}

/** Keeps blocks of sound. @param sampleRateHz the rate of all of them */
export function keepSound(blocks: Iterable<StereoAudio>, sampleRateHz: Hertz): KeptSound {
  const [left, right]: [Blob[], Blob[]] = [[], []];
  let samples = 0;
  for (const block of blocks) {
    left.push(blobOf(block.left));
    right.push(blobOf(block.right));
    samples += block.left.length;
  }
  const [allLeft, allRight] = [new Blob(left), new Blob(right)];
  const read = async (from: number, to: number) => ({
    left: await samplesOf(allLeft, from, to),
    right: await samplesOf(allRight, from, to),
    sampleRateHz,
  });
  return { samples, sampleRateHz, read };
}
