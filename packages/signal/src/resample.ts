/**
 * Bringing audio from one rate to another, block by block.
 *
 * Conventions: mono samples in and out; output sample `m` lies at time `m / toHz` of the input, so nothing is delayed;
 * memory is one filter length.
 * Source: windowed-sinc polyphase resampling, J. O. Smith, "Digital Audio Resampling"; Blackman window.
 */
import { blackman, sinc } from './windows.ts';

/** Zero crossings of the sinc on each side. */
const CROSSINGS = 9;

/** Pass band as a share of the lower of the two half rates. */
const PASS = 0.92;

/** The taps of the low-pass at a distance from its middle, in samples of the input. */
function kernel(distance: number, cutoff: number, half: number): number {
  return cutoff * sinc(distance * cutoff) * blackman(0.5 + (0.5 * distance) / half);
}

/** Samples that are taken in at a time. */
const PIECE = 8192;
/** So many times the rate that is wanted a recording's rate may be: 384 kHz for 22.05 kHz and a little more. */
const MOST_TIMES = 18;
const MOST_TAPS = 2 * Math.ceil((CROSSINGS * MOST_TIMES) / PASS);
/** Output samples that are summed side by side. */
const LANES = 4;

/** The input at hand; memory that never moves is quicker to reach than that of an object. */
const input = new Float64Array(PIECE + MOST_TAPS);
const sums = new Float64Array(LANES);

// Both ways have four sums, so that no product waits for the one before it.

/** Sums taps over the input from `from` on, and from one, two and three steps later, into `sums`. */
function sumLanes(taps: Float64Array, from: number, step: number): void {
  let s0 = 0;
  let s1 = 0;
  let s2 = 0;
  let s3 = 0;
  for (let tap = 0; tap < taps.length; tap += 1) {
    const weight = taps[tap]!;
    const at = from + tap;
    s0 += weight * input[at]!;
    s1 += weight * input[at + step]!;
    s2 += weight * input[at + 2 * step]!;
    s3 += weight * input[at + 3 * step]!;
  }
  sums[0] = s0;
  sums[1] = s1;
  sums[2] = s2;
  sums[3] = s3;
}

/** The sum of taps over the input from `from` on; the number of taps is even. */
function sumOne(taps: Float64Array, from: number): number {
  let s0 = 0;
  let s1 = 0;
  let s2 = 0;
  let s3 = 0;
  let tap = 0;
  for (; tap + 2 < taps.length; tap += 4) {
    const at = from + tap;
    s0 += taps[tap]! * input[at]!;
    s1 += taps[tap + 1]! * input[at + 1]!;
    s2 += taps[tap + 2]! * input[at + 2]!;
    s3 += taps[tap + 3]! * input[at + 3]!;
  }
  if (tap < taps.length) {
    s0 += taps[tap]! * input[from + tap]!;
    s1 += taps[tap + 1]! * input[from + tap + 1]!;
  }
  return s0 + s1 + (s2 + s3);
}

function isRate(rateHz: number): boolean {
  return Number.isSafeInteger(rateHz) && rateHz > 0;
}

/** The fewest output samples that span a whole number of input samples. */
function fewestSteps(fromHz: number, toHz: number): number {
  let steps = 1;
  while ((steps * fromHz) % toHz !== 0) steps += 1;
  return steps;
}

/** A resampler for one stream. */
export class Resampler {
  readonly #up: number;
  readonly #down: number;
  readonly #half: number;
  /** The taps for each place of an output sample between two of the input. */
  readonly #phases: readonly Float64Array[];
  /** The input that is still needed; silence before the first sample. */
  #kept: Float64Array;
  #taken = 0;
  #produced = 0;

  /**
   * @param fromHz samples a second of the input, a whole number
   * @param toHz samples a second of the output, a whole number, at least an eighteenth of `fromHz`
   * @throws RangeError when the rates are not so
   */
  constructor(fromHz: number, toHz: number) {
    if (!isRate(fromHz) || !isRate(toHz) || fromHz > MOST_TIMES * toHz)
      throw new RangeError(`Internal error: cannot bring ${fromHz} Hz to ${toHz} Hz`);
    this.#up = fewestSteps(fromHz, toHz);
    this.#down = (this.#up * fromHz) / toHz;
    const cutoff = Math.min(1, toHz / fromHz) * PASS;
    const half = Math.ceil(CROSSINGS / cutoff);
    this.#half = half;
    this.#phases = Array.from({ length: this.#up }, (_, phase) =>
      Float64Array.from({ length: 2 * half }, (_, tap) => {
        const distance = tap - half + 1 - phase / this.#up;
        return Math.abs(distance) < half ? kernel(distance, cutoff, half) : 0;
      }),
    );
    this.#kept = new Float64Array(half - 1);
  }

  /** The output that a further block of input makes possible. */
  push(block: Float32Array): Float32Array {
    const out = new Float32Array(this.#possible(this.#taken + block.length) - this.#produced);
    let made = 0;
    for (let at = 0; at < block.length; at += PIECE) {
      made += this.#pushPiece(block.subarray(at, at + PIECE), out, made);
    }
    return out;
  }

  /** The last output, as if silence followed. */
  flush(): Float32Array {
    return this.push(new Float32Array(2 * this.#half));
  }

  /** How many output samples so many of input make possible. */
  #possible(taken: number): number {
    return Math.max(0, Math.ceil(((taken - this.#half) * this.#up) / this.#down));
  }

  /** Takes in a piece; `out` is where its output goes. @returns how much that is. */
  #pushPiece(piece: Float32Array, out: Float32Array, at: number): number {
    const [up, down] = [this.#up, this.#down];
    const length = this.#kept.length + piece.length;
    input.set(this.#kept);
    input.set(piece, this.#kept.length);
    this.#taken += piece.length;
    // From a place in the stream to that in the input at hand where the taps round it begin.
    const offset = 1 - this.#half - (this.#taken - length);
    const count = this.#possible(this.#taken) - this.#produced;
    // Every `up`-th output sample has the same taps.
    for (let first = 0; first < Math.min(count, up); first += 1) {
      const position = (this.#produced + first) * down;
      const whole = Math.floor(position / up);
      const taps = this.#phases[position - whole * up]!;
      let from = whole + offset;
      let i = at + first;
      for (; i + (LANES - 1) * up < at + count; i += LANES * up) {
        sumLanes(taps, from, down);
        for (let lane = 0; lane < LANES; lane += 1) out[i + lane * up] = sums[lane]!;
        from += LANES * down;
      }
      for (; i < at + count; i += up) {
        out[i] = sumOne(taps, from);
        from += down;
      }
    }
    this.#produced += count;
    this.#kept = input.slice(Math.floor((this.#produced * down) / up) + offset, length);
    return count;
  }
}
