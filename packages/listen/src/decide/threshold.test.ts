import { seededRandom } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import type { ExpectedStroke } from '../align/form-grid.ts';
import type { HeardEvent } from '../detect/events.ts';
import type { Place } from './places.ts';
import { needsOf } from './threshold.ts';

const nothing = new Float32Array();

/** Forty strokes a second apart, another voice between each two, an event at each, evidence around two middles. */
function takeOf(there: number, elsewhere: number, options: { share?: number; free?: number } = {}) {
  const { share = 1, free = there } = options;
  const random = seededRandom('kit');
  const around = (middle: number) => middle + 2 * random.next() - 1;
  const all = Array.from(
    { length: 80 },
    (_, i): Place => ({
      expected: { voice: i % 2 === 0 ? 'ride' : 'snare' } as ExpectedStroke,
      takeBar: 0,
      idealSeconds: i / 2,
      likelySeconds: i / 2,
    }),
  );
  const places = { own: all.filter((_, i) => i % 2 === 0), all };
  const events = Array.from(
    { length: 80 },
    (_, i): HeardEvent => ({
      timeSeconds: i / 2,
      presence: nothing,
      offsetMs: nothing,
      levelDb: nothing,
      description: nothing,
      energyDb: nothing,
    }),
  );
  const logits = (middle: number) =>
    Float64Array.from(events, (_, i) => around(i % 2 === 0 && i < 80 * share ? middle : elsewhere));
  const evidence = { voice: 'ride', logit: logits(there), free: logits(free), doubt: 0 } as const;
  return { events, evidence, places };
}

function needed(...asked: Parameters<typeof takeOf>): number {
  const { events, evidence, places } = takeOf(...asked);
  return needsOf(events, evidence, places).written;
}

describe('how sure the evidence must be', () => {
  it('[LI19] a voice with clear evidence needs what lies between', () => {
    // definition: halfway between 6 and −6, spreads alike
    expect(Math.abs(needed(6, -6))).toBeLessThan(0.35);
    // definition: 0 and −6 have −3 between them, two spreads of 0.8 under 0 are −1.6, and no voice needs less than −0.8
    expect(needed(0, -6)).toBe(-0.8);
  });

  it('[LI19] a voice that sounds nowhere as written is not believed for being written', () => {
    // definition: evidence over 0 is struck likelier than not; what the sound alone denies must be likelier than that
    expect(needed(-5, -5)).toBeGreaterThan(1);
    expect(needed(-3, -8)).toBeGreaterThan(1);
    // definition: only the score tells its places from the others
    expect(needed(-1, -8, { free: -7.5 })).toBeGreaterThan(1);
    // definition: it sounds where others are written as it does where it is
    expect(needed(2, 2)).toBeGreaterThan(1);
  });

  it('[LI19] strokes that were left out do not move it', () => {
    // definition: twelve units lie between the middles; medians hold while fewer than half are missing
    expect(Math.abs(needed(6, -6, { share: 0.7 }) - needed(6, -6))).toBeLessThan(1);
  });

  it('[LI19] a stroke that only the score sees is none where the sound alone tells the voice', () => {
    const least = (there: number, elsewhere: number) => {
      const { events, evidence, places } = takeOf(there, elsewhere);
      return needsOf(events, evidence, places).alone;
    };
    // definition: halfway between 6 and −6, spreads alike
    expect(Math.abs(least(6, -6))).toBeLessThan(0.35);
    // definition: middles one unit apart do not tell
    expect(least(1, 0)).toBe(Number.NEGATIVE_INFINITY);
  });
});
