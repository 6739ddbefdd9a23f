import { describe, expect, it } from 'vitest';
import type { HeardEvent } from '../detect/events.ts';
import { strokeNetwork } from '../listen.ts';
import { LiveMemory } from '../live/memory.ts';
import { HEARD_COUNT, HEARD_VOICES } from '../network/heard-voices.data.ts';
import { DESCRIPTION } from '../network/network.ts';
import { claimAt, hearAgain } from './second-look.ts';
import { WORKED } from './worked.data.ts';

const network = strokeNetwork();
const { secondLook } = network;
const COUNT = WORKED.again.length / HEARD_COUNT;

const row = (values: readonly number[], e: number, width: number) =>
  Float32Array.from(values.slice(e * width, (e + 1) * width));

const events = Array.from(
  { length: COUNT },
  (_, e): HeardEvent => ({
    timeSeconds: e,
    presence: row(WORKED.presence, e, HEARD_COUNT),
    description: row(WORKED.description, e, DESCRIPTION),
    energyDb: new Float32Array(),
    offsetMs: new Float32Array(HEARD_COUNT),
    levelDb: new Float32Array(HEARD_COUNT),
  }),
);
const claim = { near: Float64Array.from(WORKED.near), expected: Float64Array.from(WORKED.expected) };

describe('hearing again with the whole take in mind', () => {
  it('[LI16] gives what the network gave in training', () => {
    const again = hearAgain(events, claim, secondLook);
    // library: PyTorch on the same numbers, with weights that were not yet rounded to bytes
    expect(again.length).toBe(WORKED.again.length);
    for (const [i, logit] of again.entries()) expect(Math.abs(logit - WORKED.again[i]!)).toBeLessThan(0.2);
  });

  it('[LI16] leaves the first look where it is not asked', () => {
    const again = hearAgain(events, claim, secondLook, { from: COUNT - 1 });
    const last = (COUNT - 1) * HEARD_COUNT;
    // definition: rows before `from` are the first look's, held within 8 units
    const first = WORKED.presence.slice(0, last).map((logit) => Math.max(-8, Math.min(8, logit)));
    for (const [i, logit] of first.entries()) expect(again[i]).toBeCloseTo(logit, 5);
    const whole = hearAgain(events, claim, secondLook);
    expect(again.slice(last)).toEqual(whole.slice(last));
    const some = hearAgain(events, claim, secondLook, { voices: [4, 0] });
    for (const [i, logit] of some.entries()) {
      // definition: two voices are judged anew, the others are not
      if ([4, 0].includes(i % HEARD_COUNT)) expect(logit).toBe(whole[i]);
      else expect(logit).toBeCloseTo(Math.max(-8, Math.min(8, WORKED.presence[i]!)), 5);
    }
  });

  it('[LI38] a live listener judges an event as if the take ended there, by its last 128 events', () => {
    const asked = HEARD_VOICES.filter((voice) => voice !== 'click');
    const long = Array.from({ length: 140 }, (_, i) => events[i % COUNT]!);
    const distance = (voice: string, i: number) => ((i * 7 + voice.length * 3) % 11) * 0.01;
    const memory = new LiveMemory(network, asked);
    let heard: ReturnType<LiveMemory['hear']> = { told: new Float64Array(), free: new Float64Array() };
    long.forEach((event, i) => {
      heard = memory.hear(event, (voice) => distance(voice, i));
    });
    const near = Float64Array.from({ length: long.length * HEARD_COUNT }, (_, k) => {
      const voice = HEARD_VOICES[k % HEARD_COUNT]!;
      return voice === 'click' ? 0 : claimAt(distance(voice, Math.floor(k / HEARD_COUNT)));
    });
    const expected = Float64Array.from(HEARD_VOICES, (voice) => (voice === 'click' ? 0 : 1));
    const kept = long.slice(-128);
    const claimed = { near: near.slice(-128 * HEARD_COUNT), expected };
    // definition: the second look over what is remembered, with the score and without it
    expect(heard.told).toEqual(hearAgain(kept, claimed, secondLook).slice(-HEARD_COUNT));
    expect(heard.free).toEqual(hearAgain(kept, null, secondLook).slice(-HEARD_COUNT));
  });
});
