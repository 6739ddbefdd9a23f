import { expect, it } from 'vitest';
import { scattered } from '../test/scattered.ts';
import { Resampler } from './resample.ts';

const TO = 22_050;

function tone(hz: number, rate: number, seconds = 0.5): Float32Array {
  return Float32Array.from({ length: rate * seconds }, (_, n) => Math.sin((2 * Math.PI * hz * n) / rate));
}

function expectTone(out: Float32Array, hz: number, rate: number): void {
  for (let m = 200; m < out.length - 200; m += 1) {
    // definition: the same sine at the new rate, not delayed; 1 % is the filter's ripple
    expect(Math.abs((out[m] as number) - Math.sin((2 * Math.PI * hz * m) / rate))).toBeLessThan(0.01);
  }
}

it.each([8000, 22_050, 44_100, 48_000, 96_000])(
  '[SI2] keeps a tone of 1 kHz in level and time, and takes out what would fold, from %i Hz',
  (rate) => {
    expectTone(new Resampler(rate, TO).push(tone(1000, rate)), 1000, TO);
    if (rate < 44_100) return;
    const folded = new Resampler(rate, TO).push(tone(15_000, rate)).subarray(200);
    expect(Math.max(...folded.map(Math.abs))).toBeLessThan(0.002);
  },
);

it('[SI2] brings any rate to any other, up as well', () => {
  const out = new Resampler(44_100, 48_000).push(tone(5000, 44_100));
  expect(out.length).toBeGreaterThan(23_900);
  expectTone(out, 5000, 48_000);
});

it('[SI2] does not depend on how the input is cut, and ends with all of it', () => {
  const whole = scattered(9000);
  const [once, pieces] = [new Resampler(48_000, TO), new Resampler(48_000, TO)];
  const asOne = [...once.push(whole), ...once.flush()];
  const cut = [0, 1, 700, 5000, 9000].flatMap((from, i, at) => [
    ...pieces.push(whole.subarray(from, at[i + 1])),
  ]);
  expect([...cut, ...pieces.flush()]).toEqual(asOne);
  // definition: 9000 samples at 48 kHz last as long as 4134.4 at 22.05 kHz
  expect(asOne.length).toBeGreaterThanOrEqual(4135);
});

it('[SI2] refuses rates that it cannot bring together', () => {
  for (const [from, to] of [
    [44_100.5, TO],
    [0, TO],
    [48_000, Number.NaN],
    [500_000, TO],
  ] as const)
    expect(() => new Resampler(from, to), `${from} to ${to}`).toThrow(RangeError);
});
