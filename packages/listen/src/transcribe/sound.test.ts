import { seededRandom } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { type HeardEvent, NO_ENERGY } from '../detect/events.ts';
import { HEARD_COUNT, outputOf } from '../network/heard-voices.data.ts';
import { DESCRIPTION } from '../network/network.ts';
import { strokesOf } from './sound.ts';

/** What an ear that hears a hat shyly says of moments a quarter of a second apart, and of nothing in between. */
function heard(hatAt: (moment: number) => number, count: number) {
  const events = Array.from({ length: count }, (_, moment): HeardEvent => {
    const row = () => new Float32Array(HEARD_COUNT);
    return {
      ...{ timeSeconds: moment / 4, presence: row(), offsetMs: row(), levelDb: row() },
      ...{ description: new Float32Array(DESCRIPTION), energyDb: NO_ENERGY },
    };
  });
  const free = new Float64Array(count * HEARD_COUNT).fill(-9);
  events.forEach((_, moment) => {
    free[moment * HEARD_COUNT + outputOf('hihat')] = hatAt(moment);
  });
  return strokesOf(events, free).map(({ voice, timeSeconds }) => ({ voice, moment: 4 * timeSeconds }));
}

describe('what the sound alone tells', () => {
  const random = seededRandom('a shy hat');
  const noise = () => 2 * random.next() - 1;

  it('[LI6303] a hat that is shy throughout is struck where it is parted from all other moments', () => {
    // definition: struck at every other moment, heard there under what other kits need
    const shy = heard((moment) => (moment % 2 === 0 ? 0.2 + 0.6 * noise() : -7 + noise()), 64);
    expect(shy).toEqual(Array.from({ length: 32 }, (_, i) => ({ voice: 'hihat', moment: 2 * i })));
  });

  it('[LI6303] what goes over into nothing bit by bit is no hat', () => {
    expect(heard((moment) => -8 + (8.5 * moment) / 64, 64)).toEqual([]);
  });
});
