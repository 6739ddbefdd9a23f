/**
 * One stream without holes out of captured blocks: what was lost becomes silence, what came twice is left out.
 *
 * Conventions: frames of the audio context.
 */
import type { CapturedBlock } from '../device/capture-messages.ts';

/** A hole longer than this many seconds is a microphone that was away: the stream is not filled further. */
const LONGEST_HOLE_SECONDS = 120;

/** Joins blocks from a frame on. */
export class JoinedStream {
  #next: number;
  readonly #longestHole: number;

  constructor(originFrame: number, rateHz: number) {
    this.#next = originFrame;
    this.#longestHole = LONGEST_HOLE_SECONDS * rateHz;
  }

  /** The frame that the next sample will have. */
  get frame(): number {
    return this.#next;
  }

  /** The pieces to append, in order: at most a silence and the new part of the block. */
  take({ frame, samples }: CapturedBlock): readonly Float32Array[] {
    const end = frame + samples.length;
    if (end <= this.#next) return [];
    const hole = Math.min(Math.max(0, frame - this.#next), this.#longestHole);
    const fresh = samples.subarray(Math.max(0, this.#next - frame));
    this.#next = end;
    return hole > 0 ? [new Float32Array(hole), fresh] : [fresh];
  }
}
