/**
 * Reads bytes one after another and knows where it is; what is wrong is thrown as a {@link ByteFault} and turned
 * into a problem at the door of the format's reader.
 */
import type { MidiPartFact, MidiPartName } from './midi-fact.ts';
import type { ByteProblem } from './problem.ts';

/** Thrown inside a reader when it cannot go on; never leaves the package. */
export class ByteFault extends Error {
  readonly problem: ByteProblem;

  constructor(problem: ByteProblem) {
    super(`Internal error: ${problem.code} at byte ${problem.offset}`);
    this.problem = problem;
  }
}

/** A byte as people write it in this trade: `0x4D`. */
export function hex(byte: number): string {
  return `0x${byte.toString(16).toUpperCase().padStart(2, '0')}`;
}

/** Reads on through bytes; every method that would pass their end refuses and says what was wanted. */
export class ByteReader {
  readonly #bytes: Uint8Array;
  readonly #end: number;
  #offset: number;

  /** Reads `bytes` from `start` up to `end`, offsets counted in the whole of `bytes`. */
  constructor(bytes: Uint8Array, start = 0, end = bytes.length) {
    this.#bytes = bytes;
    this.#offset = start;
    this.#end = end;
  }

  get offset(): number {
    return this.#offset;
  }

  get left(): number {
    return this.#end - this.#offset;
  }

  /** Refuses unless `wanted` more bytes are there; `part` is what they would be. */
  require(wanted: number, part: MidiPartFact): void {
    if (this.left >= wanted) return;
    throw new ByteFault({
      code: 'midi-truncated',
      severity: 'error',
      offset: this.#offset,
      found: this.left === 0 ? { fact: 'midi-data-end' } : { fact: 'midi-bytes-left', bytes: this.left },
      expected: { fact: 'midi-bytes-of', bytes: wanted, part },
      repair: { fact: 'midi-cut-or-damaged' },
    });
  }

  peek(what: MidiPartName): number {
    this.require(1, { fact: what });
    return this.#bytes[this.#offset] ?? 0;
  }

  byte(what: MidiPartName): number {
    const value = this.peek(what);
    this.#offset += 1;
    return value;
  }

  /** The next `length` bytes. */
  take(length: number, what: MidiPartName): Uint8Array {
    this.require(length, { fact: what });
    this.#offset += length;
    return this.#bytes.subarray(this.#offset - length, this.#offset);
  }

  /** A whole number of `length` bytes, most significant first. */
  bigEndian(length: number, what: MidiPartName): number {
    return this.take(length, what).reduce((value, byte) => value * 256 + byte, 0);
  }

  /** A variable-length quantity of at most four bytes. */
  vlq(what: MidiPartName): number {
    const start = this.#offset;
    let value = 0;
    for (let i = 0; i < 4; i += 1) {
      const byte = this.byte(what);
      value = value * 128 + (byte & 0x7f);
      if (byte < 0x80) return value;
    }
    throw new ByteFault({
      code: 'midi-quantity',
      severity: 'error',
      offset: start,
      found: { fact: 'midi-long-quantity' },
      expected: { fact: 'midi-short-quantity', part: { fact: what } },
      repair: { fact: 'midi-damaged' },
    });
  }
}
