import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ByteFault, ByteReader } from './byte-reader.ts';
import { encodeVlq, VLQ_MAX } from './vlq.ts';

// standard: RP-001 (SMF 1.0), table of variable-length quantities
const TABLE: readonly (readonly [number, readonly number[]])[] = [
  [0x00, [0x00]],
  [0x40, [0x40]],
  [0x7f, [0x7f]],
  [0x80, [0x81, 0x00]],
  [0x2000, [0xc0, 0x00]],
  [0x3fff, [0xff, 0x7f]],
  [0x4000, [0x81, 0x80, 0x00]],
  [0x100000, [0xc0, 0x80, 0x00]],
  [0x1fffff, [0xff, 0xff, 0x7f]],
  [0x200000, [0x81, 0x80, 0x80, 0x00]],
  [0x08000000, [0xc0, 0x80, 0x80, 0x00]],
  [0x0fffffff, [0xff, 0xff, 0xff, 0x7f]],
];

function decodeVlq(bytes: readonly number[]): number {
  return new ByteReader(Uint8Array.from(bytes)).vlq('midi-event-data');
}

describe('variable-length quantities', () => {
  it.each(TABLE)('[EX1] writes and reads %i as the standard does', (value, bytes) => {
    expect(encodeVlq(value)).toEqual(bytes);
    expect(decodeVlq(bytes)).toBe(value);
  });

  it('[EX1] reads every number that it wrote', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: VLQ_MAX }), (value) => {
        expect(decodeVlq(encodeVlq(value))).toBe(value);
      }),
    );
  });

  it.each([-1, 0.5, Number.NaN, 0x10000000])('[EX2] does not write %f', (value) => {
    expect(() => encodeVlq(value)).toThrow(RangeError);
  });

  it('[EX2] refuses a quantity of five bytes, with its place', () => {
    // standard: RP-001: "the largest number which is allowed is 0FFFFFFF", so four bytes at most
    const reader = new ByteReader(Uint8Array.of(0x00, 0x81, 0x80, 0x80, 0x80, 0x00), 1);
    expect(() => reader.vlq('midi-delta-time')).toThrow(ByteFault);
    try {
      new ByteReader(Uint8Array.of(0x00, 0x81, 0x80, 0x80, 0x80, 0x00), 1).vlq('midi-delta-time');
    } catch (fault) {
      expect((fault as ByteFault).problem.offset).toBe(1);
    }
  });
});
