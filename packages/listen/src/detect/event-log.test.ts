import { seededRandom } from '@shedbook/core';
import { expect, it } from 'vitest';
import { HEARD_COUNT } from '../network/heard-voices.data.ts';
import { DESCRIPTION } from '../network/network.ts';
import { ENERGY_BANDS } from './energy.ts';
import { EventLog } from './event-log.ts';
import type { HeardEvent } from './events.ts';

/** definition: half of a step of 1/256 */
const HALF_STEP = 1 / 512;

function someEvents(count: number): readonly HeardEvent[] {
  const random = seededRandom('log');
  const numbers = (length: number) => Float32Array.from({ length }, () => 60 * (random.next() - 0.5));
  return Array.from({ length: count }, (_, i) => ({
    timeSeconds: i / 7,
    presence: numbers(HEARD_COUNT),
    offsetMs: numbers(HEARD_COUNT),
    levelDb: numbers(HEARD_COUNT),
    description: numbers(DESCRIPTION),
    energyDb: numbers(2 * ENERGY_BANDS),
  }));
}

it('[LI43] a log gives back its events, each number within half a step', () => {
  const events = someEvents(2100);
  const log = new EventLog();
  for (const event of events) log.push(event);
  expect(log.length).toBe(2100);
  const kept = log.between();
  expect(kept.map(({ timeSeconds }) => timeSeconds)).toEqual(events.map(({ timeSeconds }) => timeSeconds));
  let worst = 0;
  for (const [i, event] of kept.entries()) {
    for (const part of ['presence', 'offsetMs', 'levelDb', 'description'] as const) {
      const wanted = events[i]?.[part] ?? [];
      expect(event[part]).toHaveLength(wanted.length);
      event[part].forEach((value, k) => {
        worst = Math.max(worst, Math.abs(value - (wanted[k] as number)));
      });
    }
  }
  expect(worst).toBeLessThanOrEqual(HALF_STEP);
});

it('[LI43] a log gives the events of a stretch, its end left out', () => {
  const log = new EventLog();
  for (const event of someEvents(70)) log.push(event);
  expect(log.between(1, 3).map(({ timeSeconds }) => timeSeconds)).toEqual(
    Array.from({ length: 14 }, (_, i) => (7 + i) / 7),
  );
});
