/**
 * Reads bytes one after another and knows where it is; what is wrong is thrown as a {@link ByteFault} and turned
 * into a problem at the door of the format's reader.
 */
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

function count(bytes: number): string {
  return `${bytes} ${bytes === 1 ? 'byte' : 'bytes'}`;
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

  /** Refuses unless `wanted` more bytes are there; `what` they would be is said in the message. */
  require(wanted: number, what: string): void {
    if (this.left >= wanted) return;
    throw new ByteFault({
      code: 'midi-truncated',
      severity: 'error',
      offset: this.#offset,
      found: this.left === 0 ? 'the end of the data' : `${count(this.left)} before the end of the data`,
      expected: `${count(wanted)} of ${what}`,
      repair: 'the file is cut short or damaged: copy or export it again',
    });
  }

  peek(what: string): number {
    this.require(1, what);
    return this.#bytes[this.#offset] ?? 0;
  }

  byte(what: string): number {
    const value = this.peek(what);
    this.#offset += 1;
    return value;
  }

  /** The next `length` bytes. */
  take(length: number, what: string): Uint8Array {
    this.require(length, what);
    this.#offset += length;
    return this.#bytes.subarray(this.#offset - length, this.#offset);
  }

  /** A whole number of `length` bytes, most significant first. */
  bigEndian(length: number, what: string): number {
    return this.take(length, what).reduce((value, byte) => value * 256 + byte, 0);
  }

  /** A variable-length quantity of at most four bytes. */
  vlq(what: string): number {
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
      found: 'a variable-length quantity of more than four bytes',
      expected: `${what} of at most four bytes`,
      repair: 'the file is damaged: copy or export it again',
    });
  }
}
