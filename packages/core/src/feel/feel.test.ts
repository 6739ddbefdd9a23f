import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SUBDIVISIONS } from '../rhythm/cell.ts';
import { fraction } from '../rhythm/fraction.ts';
import { meter } from '../rhythm/meter.ts';
import { Bpm } from '../units.ts';
import type { SwingRatio } from './feel.ts';
import { offBeatPhase, performedPhase, phaseToSwingRatio, rideSwingRatio, swingAt } from './swing.ts';
import { constantTempo, createTimeline } from './timeline.ts';

const eighths = (ratio: number): SwingRatio => ({ kind: 'ratio', ratio, of: 'eighths' });
const sixteenths = (ratio: number): SwingRatio => ({ kind: 'ratio', ratio, of: 'sixteenths' });

/** Float rounding of a few operations on numbers near 1. */
const ROUNDING = 12;

describe('swing ratio', () => {
  it('[FE1] puts the off-beat at r/(1 + r)', () => {
    // published: exact identities of the beat-upbeat ratio (Benadon 2006): phase of the off-beat for each ratio
    const table: readonly (readonly [number, number])[] = [
      [1, 0.5],
      [3 / 2, 0.6],
      [5 / 3, 0.625],
      [2, 0.6667],
      [3, 0.75],
      [3.5, 0.7778],
    ];
    for (const [ratio, phase] of table) {
      expect(offBeatPhase(ratio)).toBeCloseTo(phase, 4);
      expect(phaseToSwingRatio(offBeatPhase(ratio))).toBeCloseTo(ratio, ROUNDING);
    }
  });

  it('[FE2] leaves triplets at 2:1 and an even feel exactly as written', () => {
    for (const slot of [0, 1, 2]) {
      expect(performedPhase(slot, 3, false, eighths(2))).toBeCloseTo(slot / 3, ROUNDING);
    }
    for (const slots of SUBDIVISIONS) {
      for (let slot = 0; slot < slots; slot += 1) {
        expect(performedPhase(slot, slots, false, null)).toBe(slot / slots);
      }
    }
  });

  it('[FE3] keeps order and beats for any ratio', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...SUBDIVISIONS),
        fc.double({ min: 1, max: 4, noNaN: true }),
        fc.constantFrom('eighths' as const, 'sixteenths' as const),
        fc.boolean(),
        (slots, ratio, of, dotted) => {
          const phases = Array.from({ length: slots }, (_, slot) =>
            performedPhase(slot, slots, dotted, { kind: 'ratio', ratio, of }),
          );
          expect(phases[0]).toBe(0);
          phases.forEach((phase, i) => {
            expect(phase).toBeLessThan(1);
            if (i > 0) expect(phase).toBeGreaterThan(phases[i - 1] as number);
          });
        },
      ),
    );
  });

  it('[FE1][FE3] moves the written last triplet to r/(1 + r), later for a larger ratio', () => {
    const at = (ratio: number) => performedPhase(2, 3, false, eighths(ratio));
    expect(at(3)).toBeCloseTo(0.75, ROUNDING);
    expect(at(1)).toBeCloseTo(0.5, ROUNDING);
    expect(at(1.8)).toBeLessThan(at(1.9));
  });

  it('[FE4] swings straight eighths, and sixteenths within each eighth', () => {
    // definition: long : short = 2 : 1, so the off-beat is at 2/(2 + 1)
    expect(performedPhase(1, 2, false, eighths(2))).toBeCloseTo(2 / 3, ROUNDING);
    expect(performedPhase(2, 4, false, eighths(2))).toBeCloseTo(2 / 3, ROUNDING);
    // definition: with sixteenths swung 2 : 1 the "e" is at 1/2 · 2/3 and the "&" stays
    expect(performedPhase(1, 4, false, sixteenths(2))).toBeCloseTo(1 / 3, ROUNDING);
    expect(performedPhase(2, 4, false, sixteenths(2))).toBe(0.5);
    expect(performedPhase(3, 4, false, sixteenths(2))).toBeCloseTo(1 / 2 + 1 / 3, ROUNDING);
  });

  it('[FE7] leaves duplets and quadruplets of a dotted beat alone', () => {
    expect(performedPhase(1, 2, true, eighths(3))).toBe(0.5);
    expect(performedPhase(3, 4, true, eighths(3))).toBe(0.75);
    expect(performedPhase(2, 3, true, eighths(3))).toBeCloseTo(0.75, ROUNDING);
  });

  it('[FE5] follows the mean ride ratios measured in jazz trios, within one standard deviation', () => {
    // published: Cheston et al. 2024, data of the Cambridge Jazz Trio Database, mean ratio and deviation of the
    // drummers by tempo (centre of each 20 bpm bin)
    const measured: readonly (readonly [number, number, number])[] = [
      [110, 2.77, 0.41],
      [130, 2.59, 0.36],
      [150, 2.29, 0.45],
      [170, 2.28, 0.47],
      [190, 2.09, 0.32],
      [210, 1.93, 0.29],
      [230, 1.79, 0.26],
      [250, 1.5, 0.13],
      [270, 1.51, 0.16],
      [290, 1.38, 0.1],
    ];
    for (const [bpm, mean, deviation] of measured) {
      expect(Math.abs(rideSwingRatio(bpm) - mean), `${bpm}`).toBeLessThan(deviation);
    }
    expect(rideSwingRatio(40)).toBe(rideSwingRatio(100));
    expect(rideSwingRatio(400)).toBe(rideSwingRatio(300));
    expect(swingAt({ kind: 'by tempo' }, 200)?.ratio).toBe(rideSwingRatio(200));
    expect(swingAt({ kind: 'even' }, 200)).toBeNull();
  });
});

describe('timeline', () => {
  const four = meter('4/4');

  it('[FE6] counts a constant tempo in quarter notes', () => {
    const timeline = createTimeline(four, { kind: 'even' }, constantTempo(Bpm(120)));
    // definition: at 120 quarter notes a minute a bar of 4/4 lasts two seconds
    expect(timeline.barSeconds(3)).toBe(6);
    expect(timeline.barSeconds(-1)).toBe(-2);
    expect(timeline.slotSeconds({ bar: 1, beat: 2, slot: 1, slots: 2 })).toBe(3.25);
    const compound = createTimeline(meter('12/8'), { kind: 'even' }, constantTempo(Bpm(90)));
    // definition: 12/8 is six quarter notes long: 6 · 60/90 = 4 s, also in a compound meter
    expect(compound.barSeconds(1)).toBe(4);
  });

  it('[FE6] walks tempo changes, also in the middle of a beat', () => {
    const map = [
      { at: fraction(0), bpm: Bpm(60) },
      { at: fraction(1, 8), bpm: Bpm(120) },
      { at: fraction(1), bpm: Bpm(240) },
    ];
    const timeline = createTimeline(four, { kind: 'even' }, map);
    // definition: an eighth at 60 is 0.5 s; the other seven eighths at 120 are 1.75 s; then 240 is 1 s a bar
    expect(timeline.slotSeconds({ bar: 0, beat: 0, slot: 1, slots: 2 })).toBe(0.5);
    expect(timeline.barSeconds(1)).toBe(2.25);
    expect(timeline.barSeconds(2)).toBe(3.25);
    expect(timeline.barSeconds(-1)).toBe(-4);
    expect(timeline.bpmAt(fraction(1, 2))).toBe(120);
  });

  it('[FE6] refuses a tempo map that is empty, out of order or not positive', () => {
    const make = (map: Parameters<typeof createTimeline>[2]) => () =>
      createTimeline(four, { kind: 'even' }, map);
    expect(make([])).toThrow(RangeError);
    expect(make([{ at: fraction(0), bpm: Bpm(0) }])).toThrow(RangeError);
    expect(make([{ at: fraction(0), bpm: Bpm(Number.NaN) }])).toThrow(RangeError);
    const late = { at: fraction(1), bpm: Bpm(90) };
    expect(make([late, { at: fraction(0), bpm: Bpm(90) }])).toThrow(RangeError);
  });
});
