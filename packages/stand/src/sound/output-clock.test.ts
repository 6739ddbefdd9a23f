import { expect, it } from 'vitest';
import { clocksOf, OutputClock, type OutputContext, outputLatencyOf } from './output-clock.ts';

const RATE = 44_100;

/** A context that has made `madeSeconds` of sound and whose output told, at a moment, how much of it was heard. */
function context(madeSeconds: number, heardSeconds: number, atMs: number) {
  const told = { contextTime: heardSeconds, performanceTime: atMs };
  const facts = { baseLatency: 0.01, outputLatency: 0.03, sampleRate: RATE, currentTime: madeSeconds };
  return { ...facts, getOutputTimestamp: () => told } satisfies OutputContext;
}

it('[ST130] goes on between two tellings of the output', () => {
  const clock = new OutputClock(context(2, 1.5, 1000));
  // definition: 200 ms after 1.5 s were heard, 1.7 s are
  expect(clock.sampleAt(1200)).toBeCloseTo(1.7 * RATE, 6);
});

it('[ST130] does not run back when the output tells that it was slower than guessed', () => {
  const slow = context(2, 1.5, 1000);
  const clock = new OutputClock(slow);
  const before = clock.sampleAt(1200);
  // definition: at 1210 ms it tells 1.68 s, less than the 1.7 s that were guessed 10 ms before
  Object.assign(slow.getOutputTimestamp(), { contextTime: 1.68, performanceTime: 1210 });
  expect(clock.sampleAt(1210)).toBe(before);
  expect(clock.sampleAt(1250)).toBeCloseTo(1.72 * RATE, 6);
});

it('[ST130] does not run ahead of what was made', () => {
  const clock = new OutputClock(context(2, 1.5, 1000));
  // definition: two seconds and the buffer that is being made, of 10 ms, were made; the output hangs for a minute
  expect(clock.sampleAt(61_000)).toBeCloseTo(2.01 * RATE, 6);
});

it('[ST130] takes the latency off where the output tells nothing', () => {
  // definition: one second was made, and 30 ms of it are on their way
  expect(new OutputClock(context(1, 0, 0)).sampleAt(500)).toBeCloseTo(0.97 * RATE, 6);
});

it('[ST130] does not follow a stamp of the output that runs at twice the rate', () => {
  // by trying: WebKitGTK 2.50.6 stamps 24.427 s with 51,310 ms where the page's clock shows 26,885 ms
  const double = context(24.43, 24.427, 51_310);
  // definition: of what was made 30 ms are on their way
  expect(new OutputClock(double).sampleAt(26_885)).toBeCloseTo(24.4 * RATE, 6);
  // definition: nothing is heard before it is made
  expect(new OutputClock(context(2, 4, 2000)).sampleAt(2010)).toBeCloseTo(1.97 * RATE, 6);
});

it('[ST130] goes by what was made where a browser tells neither stamp nor latency', () => {
  const old = { currentTime: 2, sampleRate: RATE } satisfies OutputContext;
  expect(new OutputClock(old).sampleAt(5000)).toBe(2 * RATE);
  // documentation: `outputLatency` is missing in Safari before 18.4 (MDN, browser compatibility)
  expect(outputLatencyOf({ outputLatency: 0 })).toBe(0);
  expect(outputLatencyOf({ baseLatency: 0.01 })).toBe(0.01);
});

it('[ST1001] does not ask Firefox on a Linux desktop, which a question may stop for good', () => {
  const asked = () => {
    throw new Error('asked');
  };
  const context: OutputContext = {
    ...{ currentTime: 2, sampleRate: RATE, baseLatency: 0, getOutputTimestamp: asked },
    get outputLatency() {
      return asked();
    },
  };
  // standard: Firefox user agent string reference (MDN)
  const linux = 'Mozilla/5.0 (X11; Linux x86_64; rv:140.0) Gecko/20100101 Firefox/140.0';
  expect(outputLatencyOf(context, linux)).toBe(0.042);
  expect(clocksOf(context, 500, linux)).toEqual({ contextSeconds: 2 - 0.042, pageMs: 500 });
  const phone = 'Mozilla/5.0 (Android 15; Mobile; rv:140.0) Gecko/140.0 Firefox/140.0';
  for (const other of [phone, linux.replace('X11; Linux x86_64', 'Windows NT 10.0; Win64; x64'), ''])
    expect(() => outputLatencyOf(context, other)).toThrow('asked');
});
