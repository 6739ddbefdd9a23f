import { describe, expect, it } from 'vitest';
import { both, sines } from '../../test/signals.ts';
import { encodeWav, type WavFormat } from './wav.ts';

const RATE = 44100;
const hex = (bytes: Uint8Array) => [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join(' ');

describe('WAV files', () => {
  it('[SO9] begin as the specification lays them out', () => {
    const bytes = encodeWav(both(new Float32Array(2), RATE), { format: 'int16' });
    // standard: RIFF WAVE (1991): RIFF size WAVE fmt_ 16, format 1, 2 channels, rate, bytes a second, 4, 16 bits
    const header =
      '52 49 46 46 2c 00 00 00 57 41 56 45 66 6d 74 20 10 00 00 00 01 00 02 00 44 ac 00 00 10 b1 02 00';
    expect(hex(bytes.subarray(0, 44))).toBe(`${header} 04 00 10 00 64 61 74 61 08 00 00 00`);
    expect(bytes.length).toBe(52);
  });

  it('[SO9] keep floating-point samples exactly, with a `fact` chunk', () => {
    const samples = sines([[-6, 0.01]], 440, RATE);
    const bytes = encodeWav(both(samples, RATE), { format: 'float32' });
    const view = new DataView(bytes.buffer);
    // standard: WAVEFORMATEX: format 3 is IEEE float and has a fact chunk with the number of frames
    expect(view.getUint16(20, true)).toBe(3);
    expect(view.getUint32(46, true)).toBe(samples.length);
    samples.forEach((sample, i) => {
      expect(view.getFloat32(58 + 8 * i, true)).toBe(sample);
    });
  });

  it.each<[WavFormat, number, number]>([
    ['int16', 2, 15],
    ['int24', 3, 23],
  ])('[SO10] %s samples differ from the sound by less than two steps', (format, size, bits) => {
    const samples = sines([[-3, 0.05]], 1000, RATE);
    const view = new DataView(encodeWav(both(samples, RATE), { format }).buffer);
    expect(samples.length).toBe(Math.round(0.05 * RATE));
    samples.forEach((sample, i) => {
      const at = 44 + 2 * size * i;
      const low = view.getUint16(at, true);
      const value = size === 2 ? view.getInt16(at, true) : low | (view.getInt8(at + 2) << 16);
      // definition: triangular dither lies within ±1 step, rounding within ±½
      expect(Math.abs(value - sample * (2 ** bits - 1))).toBeLessThan(1.5001);
    });
  });

  it('[SO10] dither makes a tone below one step audible, and the same seed the same file', () => {
    const soft = Float32Array.from(
      { length: RATE },
      (_, i) => (0.4 / 32767) * Math.sin((2 * Math.PI * 441 * i) / RATE),
    );
    const file = (seed: string) => encodeWav(both(soft, RATE), { format: 'int16', seed });
    const view = new DataView(file('a').buffer);
    let sum = 0;
    for (let i = 0; i < RATE; i += 1)
      sum += view.getInt16(44 + 4 * i, true) * Math.sin((2 * Math.PI * 441 * i) / RATE);
    // definition: the correlation of a sine of amplitude 0.4 with itself; without dither every sample is 0
    expect((2 * sum) / RATE).toBeCloseTo(0.4, 1);
    expect(file('a')).toEqual(file('a'));
    expect(file('a')).not.toEqual(file('b'));
  });

  it('[SO10] holds what is beyond full scale at full scale', () => {
    const view = new DataView(encodeWav(both(Float32Array.from([3, -3]), RATE), { format: 'int16' }).buffer);
    expect([view.getInt16(44, true), view.getInt16(48, true)]).toEqual([32767, -32768]);
  });
});
