import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import type { KitPort } from '../device/kit.ts';
import { Ear } from './ear.ts';
import type { EarOrder } from './ear-messages.ts';

const orders: EarOrder[] = [];

/** A worker that keeps what it is told. */
class ToldWorker {
  onmessage = null;
  postMessage(order: EarOrder): void {
    orders.push(order);
  }
  terminate(): void {}
}

beforeEach(() => {
  orders.length = 0;
  vi.useFakeTimers();
  vi.stubGlobal('Worker', ToldWorker);
});

afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

it('[ST131] hears the strokes of a kit before the moments that they belong to, also after the page was too busy', async () => {
  const port: KitPort = { name: 'Kit', onmidimessage: null };
  vi.stubGlobal('navigator', { requestMIDIAccess: async () => ({ inputs: new Map([['1', port]]) }) });
  const clock = { currentTime: 5, outputLatency: 0.03 };
  const getOutputTimestamp = () => ({ contextTime: clock.currentTime, performanceTime: 5000 });
  const context = Object.assign(clock, { getOutputTimestamp }) as unknown as AudioContext;
  const ear = new Ear(async () => null);
  await ear.open('kit', context, {} as AudioNode);
  vi.advanceTimersByTime(100);
  // definition: the page stood still for 400 ms; a stroke of the middle of it waits, and the browser may look at its
  // timers before it hands the stroke over
  clock.currentTime = 5.4;
  vi.advanceTimersByTime(50);
  port.onmidimessage?.({ data: new Uint8Array([0x99, 38, 100]), timeStamp: 4800 });
  vi.advanceTimersByTime(50);
  ear.close();
  const told = orders.filter((order) => order.kind === 'time' || order.kind === 'note');
  const stroke = told.findIndex((order) => order.kind === 'note');
  expect(told[stroke]).toMatchObject({ note: { voice: 'snare', seconds: 5.2 } });
  const before = told.slice(0, stroke).flatMap((order) => (order.kind === 'time' ? [order.seconds] : []));
  expect(Math.max(...before)).toBeLessThan(5.2);
  expect(told.at(-1)).toMatchObject({ kind: 'time', seconds: 5.4 });
});
