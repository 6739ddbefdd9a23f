/** The last samples of a sound that goes on; before its first one it is silent. */
export class SoundRing {
  readonly #samples: Float32Array;
  /** How many samples came so far. */
  end = 0;

  /** @param kept how many samples are kept */
  constructor(kept: number) {
    this.#samples = new Float32Array(kept);
  }

  /** Takes a block, which `kept` is a multiple of. */
  push(block: Float32Array): void {
    this.#samples.set(block, this.end % this.#samples.length);
    this.end += block.length;
  }

  /** Samples from one on, of those that are kept. */
  between(from: number, count: number): Float32Array {
    const { length } = this.#samples;
    const samples = new Float32Array(count);
    const last = Math.min(from + count, this.end);
    for (let at = Math.max(0, from); at < last; ) {
      const to = Math.min(last, at - (at % length) + length);
      samples.set(this.#samples.subarray(at % length, (at % length) + to - at), at - from);
      at = to;
    }
    return samples;
  }
}
