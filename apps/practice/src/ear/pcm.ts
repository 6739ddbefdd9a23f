/**
 * A recording while it grows, and as a file.
 *
 * Conventions: mono, 16 bits, little-endian; a minute at 44 100 Hz takes 5.3 MB.
 * Source: Microsoft and IBM, Multimedia Programming Interface and Data Specifications 1.0 (1991), RIFF WAVE.
 */

const FULL_SCALE = 32_767;
const HEADER_BYTES = 44;
const SAMPLE_BYTES = 2;

/** A recording. */
export class Pcm {
  readonly #chunks: Int16Array<ArrayBuffer>[] = [];
  readonly rateHz: number;
  /** Samples so far. */
  length = 0;
  /** Chunks of it that {@link fresh} has handed out. */
  #given = 0;

  constructor(rateHz: number) {
    this.rateHz = rateHz;
  }

  /** Takes the next samples; what is outside full scale is held at it. */
  push(samples: Float32Array): void {
    const chunk = Int16Array.from(samples, (sample) =>
      Math.round(Math.max(-1, Math.min(1, sample)) * FULL_SCALE),
    );
    this.#chunks.push(chunk);
    this.length += chunk.length;
  }

  /** The samples that came since this was asked last. */
  fresh(): Int16Array<ArrayBuffer> {
    const chunks = this.#chunks.slice(this.#given);
    this.#given = this.#chunks.length;
    const all = new Int16Array(chunks.reduce((sum, { length }) => sum + length, 0));
    let at = 0;
    for (const chunk of chunks) {
      all.set(chunk, at);
      at += chunk.length;
    }
    return all;
  }

  /** The recording as a WAV file. */
  toWav(): Blob {
    return wavOf(this.#chunks, this.rateHz);
  }
}

/** Samples of 16 bits as numbers from -1 to 1. */
export function fromPcm(samples: Int16Array<ArrayBuffer>): Float32Array<ArrayBuffer> {
  return Float32Array.from(samples, (sample) => sample / FULL_SCALE);
}

/** Pieces of one recording as a WAV file. */
export function wavOf(pieces: readonly Int16Array<ArrayBuffer>[], rateHz: number): Blob {
  const length = pieces.reduce((sum, piece) => sum + piece.length, 0);
  return new Blob([wavHeader(length, rateHz), ...pieces], { type: 'audio/wav' });
}

function text(view: DataView, at: number, letters: string): void {
  for (let i = 0; i < letters.length; i += 1) view.setUint8(at + i, letters.charCodeAt(i));
}

/** The header of a mono file of 16 bits. */
export function wavHeader(samples: number, rateHz: number): ArrayBuffer {
  const view = new DataView(new ArrayBuffer(HEADER_BYTES));
  const bytes = samples * SAMPLE_BYTES;
  text(view, 0, 'RIFF');
  view.setUint32(4, HEADER_BYTES - 8 + bytes, true);
  text(view, 8, 'WAVEfmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, 1, true);
  view.setUint16(22, 1, true);
  view.setUint32(24, rateHz, true);
  view.setUint32(28, rateHz * SAMPLE_BYTES, true);
  view.setUint16(32, SAMPLE_BYTES, true);
  view.setUint16(34, 8 * SAMPLE_BYTES, true);
  text(view, 36, 'data');
  view.setUint32(40, bytes, true);
  return view.buffer;
}
