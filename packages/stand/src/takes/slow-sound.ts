/**
 * Slow motion of drums: each stroke sounds as it was struck, and lies as many times further from the next.
 *
 * Conventions: mono samples; seconds from the first sample; a speed of 0.5 is half as fast. Between two strokes the
 * sound goes on as it was and fades before what is missing would begin, so that attacks keep their edge and pitch.
 */
import type { Hertz } from '@shedbook/core';

/** A stroke begins so long before its onset was found, in seconds: its very first rise is kept. */
const BEFORE_SECONDS = 0.006;
/** Length of the fade at the end of what sounds, in seconds. */
const FADE_SECONDS = 0.02;

/** A stretch of the recording that is moved as a whole. */
interface Piece {
  readonly from: number;
  readonly to: number;
  /** Where it begins in what is slower. */
  readonly at: number;
}

function piecesOf(length: number, onsets: readonly number[], { rate, speed }: Cut): readonly Piece[] {
  const starts = [...new Set([0, ...onsets.map((onset) => Math.round((onset - BEFORE_SECONDS) * rate))])]
    .filter((start) => start >= 0 && start < length)
    .toSorted((a, b) => a - b);
  return starts.map((from, index) => ({
    from,
    to: starts[index + 1] ?? length,
    // The onset itself, not the rise before it, is what lies at the slower place.
    at: from === 0 ? 0 : Math.round((from + BEFORE_SECONDS * rate) / speed - BEFORE_SECONDS * rate),
  }));
}

interface Cut {
  readonly rate: number;
  readonly speed: number;
}

/** The samples at another speed, at most as fast as they were played. @param onsets of the strokes, in seconds */
export function slowSamples(
  samples: Float32Array,
  onsets: readonly number[],
  { rateHz, speed }: { readonly rateHz: Hertz; readonly speed: number },
): Float32Array<ArrayBuffer> {
  if (speed >= 1) return new Float32Array(samples);
  const slow = new Float32Array(Math.ceil(samples.length / speed));
  const fade = Math.round(FADE_SECONDS * rateHz);
  for (const { from, to, at } of piecesOf(samples.length, onsets, { rate: rateHz, speed })) {
    const length = to - from;
    for (let i = 0; i < length && at + i < slow.length; i += 1) {
      const share = Math.min(1, (length - i) / Math.min(fade, length));
      slow[at + i] = (slow[at + i] ?? 0) + (samples[from + i] as number) * share;
    }
  }
  return slow;
}
