import { Hertz } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { both, type Part, sines } from '../../test/signals.ts';
import { measureChannels, measureLoudness } from './measure.ts';

const RATE = Hertz(48000);
/** The long signals are told at a lower rate, which the formulae of other rates allow. */
const LOW_RATE = Hertz(16000);
/** EBU Tech 3341: ±0.1 LU. */
const TOLERANCE_LU = 0.1;

const tone = (parts: readonly Part[], rate: number = RATE) => both(sines(parts, 1000, rate), rate);

const INTEGRATED: readonly (readonly [string, readonly Part[], number])[] = [
  // standard: EBU Tech 3341 table 1, cases 1 to 5
  ['case 1', [[-23, 20]], -23],
  ['case 2', [[-33, 20]], -33],
  [
    'case 3',
    [
      [-36, 10],
      [-23, 60],
      [-36, 10],
    ],
    -23,
  ],
  [
    'case 4',
    [
      [-72, 10],
      [-36, 10],
      [-23, 60],
      [-36, 10],
      [-72, 10],
    ],
    -23,
  ],
  [
    'case 5',
    [
      [-26, 20],
      [-20, 20.1],
      [-26, 20],
    ],
    -23,
  ],
];

const RANGES: readonly (readonly [string, readonly Part[], number])[] = [
  // standard: EBU Tech 3342 table 1, cases 1 to 4
  [
    'case 1',
    [
      [-20, 20],
      [-30, 20],
    ],
    10,
  ],
  [
    'case 2',
    [
      [-20, 20],
      [-15, 20],
    ],
    5,
  ],
  [
    'case 3',
    [
      [-40, 20],
      [-20, 20],
    ],
    20,
  ],
  [
    'case 4',
    [
      [-50, 20],
      [-35, 20],
      [-20, 20],
      [-35, 20],
      [-50, 20],
    ],
    15,
  ],
];

describe('integrated loudness', () => {
  it('[SO2] of a 997 Hz sine at full scale is −3.01 LUFS in one channel and 0.0 in two', () => {
    const sine = sines([[0, 5]], 997, RATE);
    const one = measureChannels([{ samples: sine, weight: 1 }], RATE);
    // standard: ITU-R BS.1770-4 Annex 1: 0 dB FS, 997 Hz, one front channel: −3.01 LKFS
    expect(one.integratedLufs).toBeCloseTo(-3.01, 2);
    expect(measureLoudness(both(sine, RATE)).integratedLufs).toBeCloseTo(0, 2);
  });

  it.each(INTEGRATED)('[SO2] is right for EBU Tech 3341 %s', (_, parts, expected) => {
    const found = measureLoudness(tone(parts, LOW_RATE)).integratedLufs;
    expect(Math.abs(found - expected)).toBeLessThan(TOLERANCE_LU);
  });

  it('[SO2] weighs surround channels as EBU Tech 3341 case 6 asks', () => {
    // standard: EBU Tech 3341 table 1, case 6; weights of ITU-R BS.1770-4 table 3
    const levels = [
      [-28, 1],
      [-28, 1],
      [-24, 1],
      [-30, 1.41],
      [-30, 1.41],
    ] as const;
    const channels = levels.map(([db, weight]) => ({ samples: sines([[db, 20]], 1000, RATE), weight }));
    expect(Math.abs(measureChannels(channels, RATE).integratedLufs + 23)).toBeLessThan(TOLERANCE_LU);
  });

  it('[SO2] of silence is −Infinity', () => {
    expect(measureLoudness(both(new Float32Array(RATE), RATE)).integratedLufs).toBe(Number.NEGATIVE_INFINITY);
  });
});

describe('momentary and short-term loudness', () => {
  it.each([44100, 48000])('[SO3] of a steady tone are its integrated loudness at %i Hz', (rate) => {
    const found = measureLoudness(tone([[-23, 20]], rate));
    // standard: EBU Tech 3341 table 1, case 1: M, S and I = −23.0
    expect(Math.abs(found.momentaryLufs + 23)).toBeLessThan(TOLERANCE_LU);
    expect(Math.abs(found.shortTermLufs + 23)).toBeLessThan(TOLERANCE_LU);
  });
});

describe('loudness range', () => {
  it.each(RANGES)('[SO4] is right for EBU Tech 3342 %s', (_, parts, expected) => {
    // standard: EBU Tech 3342: ±1 LU
    expect(Math.abs(measureLoudness(tone(parts, LOW_RATE)).rangeLu - expected)).toBeLessThan(1);
  });
});
