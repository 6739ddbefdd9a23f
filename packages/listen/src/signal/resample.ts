/**
 * Bringing audio of any rate to the one rate that listening works at, block by block.
 *
 * Conventions: mono samples in and out; output sample `m` lies at time `m / ANALYSIS_RATE` of the input, so
 * nothing is delayed; memory is one filter length.
 * Source: windowed-sinc polyphase resampling, J. O. Smith, "Digital Audio Resampling"; Blackman window.
 */

/** Samples a second of everything inside this package. */
export const ANALYSIS_RATE = 22_050;

/** Zero crossings of the sinc on each side. */
const CROSSINGS = 9;

/** Pass band as a share of the lower of the two half rates. */
const PASS = 0.92;

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}

function kernel(distance: number, cutoff: number, half: number): number {
  const x = distance * cutoff;
  const sinc = x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
  const position = 0.5 + (0.5 * distance) / half;
  const window = 0.42 - 0.5 * Math.cos(2 * Math.PI * position) + 0.08 * Math.cos(4 * Math.PI * position);
  return cutoff * sinc * window;
}

/** A resampler for one stream. */
export class Resampler {
  readonly #up: number;
  readonly #down: number;
  readonly #taps: number;
  readonly #half: number;
  readonly #table: Float64Array;
  #buffer = new Float32Array(0);
  #bufferStart = 0;
  #produced = 0;

  /** @param rateHz samples a second of the input, a whole number from 4000 to 384000. */
  constructor(rateHz: number) {
    const divisor = greatestCommonDivisor(rateHz, ANALYSIS_RATE);
    this.#up = ANALYSIS_RATE / divisor;
    this.#down = rateHz / divisor;
    const cutoff = Math.min(1, ANALYSIS_RATE / rateHz) * PASS;
    this.#half = Math.ceil(CROSSINGS / cutoff);
    this.#taps = 2 * this.#half;
    this.#table = new Float64Array(this.#up * this.#taps);
    for (let phase = 0; phase < this.#up; phase += 1) {
      for (let tap = 0; tap < this.#taps; tap += 1) {
        const distance = tap - this.#half + 1 - phase / this.#up;
        const inside = Math.abs(distance) < this.#half;
        this.#table[phase * this.#taps + tap] = inside ? kernel(distance, cutoff, this.#half) : 0;
      }
    }
    this.#bufferStart = -this.#half;
    this.#buffer = new Float32Array(this.#half);
  }

  /** The output that a further block of input makes possible. */
  push(block: Float32Array): Float32Array {
    const joined = new Float32Array(this.#buffer.length + block.length);
    joined.set(this.#buffer);
    joined.set(block, this.#buffer.length);
    const end = this.#bufferStart + joined.length;
    const room = Math.max(0, Math.ceil(((end - this.#half) * this.#up) / this.#down) - this.#produced + 1);
    const out = new Float32Array(room);
    const made = this.#fill(joined, end, out);
    const next = Math.floor((this.#produced * this.#down) / this.#up) - this.#half;
    const keepFrom = Math.max(0, Math.min(joined.length, next - this.#bufferStart));
    this.#buffer = joined.slice(keepFrom);
    this.#bufferStart += keepFrom;
    return made === out.length ? out : out.subarray(0, made);
  }

  /** The last output, as if silence followed. */
  flush(): Float32Array {
    return this.push(new Float32Array(this.#taps));
  }

  #fill(joined: Float32Array, end: number, out: Float32Array): number {
    const taps = this.#taps;
    const table = this.#table;
    let made = 0;
    while (made < out.length) {
      const position = this.#produced * this.#down;
      const whole = Math.floor(position / this.#up);
      if (whole + this.#half >= end) break;
      let at = whole - this.#half + 1 - this.#bufferStart;
      let row = (position - whole * this.#up) * taps;
      // Four sums, so that no product waits for the one before it; the number of taps is even.
      let s0 = 0;
      let s1 = 0;
      let s2 = 0;
      let s3 = 0;
      for (let tap = 0; tap + 2 < taps; tap += 4) {
        s0 += joined[at]! * table[row]!;
        s1 += joined[at + 1]! * table[row + 1]!;
        s2 += joined[at + 2]! * table[row + 2]!;
        s3 += joined[at + 3]! * table[row + 3]!;
        at += 4;
        row += 4;
      }
      if (taps % 4 === 2) {
        s0 += joined[at]! * table[row]!;
        s1 += joined[at + 1]! * table[row + 1]!;
      }
      out[made] = s0 + s1 + (s2 + s3);
      made += 1;
      this.#produced += 1;
    }
    return made;
  }
}
