/**
 * A tiny SoundFont, written byte by byte from the specification: one drum set with sounds on given keys.
 * Source: SoundFont Technical Specification 2.04, sections 4 to 7 (chunks and records).
 */

/** A recording of a drum, and the key it lies on. */
export interface Recording {
  readonly key: number;
  readonly samples: Float32Array;
}

class Bytes {
  readonly all: number[] = [];
  text(value: string, size: number): this {
    for (let i = 0; i < size; i += 1) this.all.push(i < value.length ? value.charCodeAt(i) : 0);
    return this;
  }
  u8(...values: number[]): this {
    this.all.push(...values);
    return this;
  }
  u16(...values: number[]): this {
    for (const value of values) this.all.push(value & 255, (value >> 8) & 255);
    return this;
  }
  u32(...values: number[]): this {
    for (const value of values) this.u16(value & 0xffff, (value >>> 16) & 0xffff);
    return this;
  }
}

function chunk(id: string, body: readonly number[]): number[] {
  const out = new Bytes().text(id, 4).u32(body.length).all;
  for (const byte of body) out.push(byte);
  if (body.length % 2) out.push(0);
  return out;
}

function list(kind: string, chunks: readonly (readonly number[])[]): number[] {
  const body = new Bytes().text(kind, 4).all;
  for (const each of chunks) for (const byte of each) body.push(byte);
  return chunk('LIST', body);
}

const GEN = { keyRange: 43, overridingRootKey: 58, sampleID: 53, instrument: 41 };
const GUARD = 46;

/** The bytes of the file: bank 128 (or another), program 0. */
export function soundFont(recordings: readonly Recording[], rate: number, bank = 128): Uint8Array {
  const pcm = new Bytes();
  const headers = new Bytes();
  for (const { key, samples } of recordings) {
    const start = pcm.all.length / 2;
    for (const sample of samples) pcm.u16(Math.round(sample * 32767) & 0xffff);
    const end = pcm.all.length / 2;
    for (let i = 0; i < GUARD; i += 1) pcm.u16(0);
    headers.text(`drum ${key}`, 20).u32(start, end, start, end, rate).u8(key, 0).u16(0, 1);
  }
  headers.text('EOS', 20).u32(0, 0, 0, 0, 0).u8(0, 0).u16(0, 0);
  const bags = new Bytes();
  const gens = new Bytes();
  recordings.forEach(({ key }, i) => {
    bags.u16(i * 3, 0);
    gens.u16(GEN.keyRange).u8(key, key).u16(GEN.overridingRootKey, key, GEN.sampleID, i);
  });
  bags.u16(recordings.length * 3, 0);
  gens.u16(0, 0);
  const modulator = new Bytes().u16(0, 0, 0, 0, 0).all;
  const body = [
    list('INFO', [
      chunk('ifil', new Bytes().u16(2, 4).all),
      chunk('isng', new Bytes().text('EMU8000', 8).all),
      chunk('INAM', new Bytes().text('Test', 6).all),
    ]),
    list('sdta', [chunk('smpl', pcm.all)]),
    list('pdta', [
      chunk(
        'phdr',
        new Bytes().text('Set', 20).u16(0, bank, 0).u32(0, 0, 0).text('EOP', 20).u16(0, 0, 1).u32(0, 0, 0)
          .all,
      ),
      chunk('pbag', new Bytes().u16(0, 0, 1, 0).all),
      chunk('pmod', modulator),
      chunk('pgen', new Bytes().u16(GEN.instrument, 0, 0, 0).all),
      chunk('inst', new Bytes().text('Set', 20).u16(0).text('EOI', 20).u16(recordings.length).all),
      chunk('ibag', bags.all),
      chunk('imod', modulator),
      chunk('igen', gens.all),
      chunk('shdr', headers.all),
    ]),
  ].flat();
  return Uint8Array.from(chunk('RIFF', [...new Bytes().text('sfbk', 4).all, ...body]));
}
