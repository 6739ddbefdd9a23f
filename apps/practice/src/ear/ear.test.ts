import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import type { KitPort } from '../device/kit.ts';
import { forbidMicrophoneWhere } from '../device/microphone-forbidden.ts';
import { Ear } from './ear.ts';
import type { EarOrder } from './ear-messages.ts';

const orders: EarOrder[] = [];
const workers: ToldWorker[] = [];

/** A worker that keeps what it is told. */
class ToldWorker {
  onmessage: ((event: { readonly data: unknown }) => void) | null = null;
  onerror: (() => void) | null = null;
  constructor() {
    workers.push(this);
  }
  postMessage(order: EarOrder): void {
    orders.push(order);
  }
  terminate(): void {}
}

beforeEach(() => {
  orders.length = 0;
  workers.length = 0;
  vi.useFakeTimers();
  vi.stubGlobal('Worker', ToldWorker);
  forbidMicrophoneWhere(() => false);
});

afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

it('[ST131] hears the strokes of a kit before the moments that they belong to, also after the page was too busy', async () => {
  const port: KitPort = { name: 'Kit', onmidimessage: null };
  vi.stubGlobal('navigator', { requestMIDIAccess: async () => ({ inputs: new Map([['1', port]]) }) });
  const clock = { currentTime: 5, outputLatency: 0.03 };
  let toldMs = performance.now();
  const getOutputTimestamp = () => ({ contextTime: clock.currentTime, performanceTime: toldMs });
  const context = Object.assign(clock, { getOutputTimestamp }) as unknown as AudioContext;
  const ear = new Ear(async () => null);
  await ear.open('kit', context, {} as AudioNode);
  vi.advanceTimersByTime(100);
  // definition: the page stood still for 400 ms; a stroke of the middle of it waits, and the browser may look at its
  // timers before it hands the stroke over
  clock.currentTime = 5.4;
  vi.advanceTimersByTime(50);
  toldMs = performance.now();
  port.onmidimessage?.({ data: new Uint8Array([0x99, 38, 100]), timeStamp: toldMs - 200 });
  vi.advanceTimersByTime(50);
  ear.close();
  const told = orders.filter((order) => order.kind === 'time' || order.kind === 'note');
  const stroke = told.findIndex((order) => order.kind === 'note');
  expect(told[stroke]).toMatchObject({ note: { voice: 'snare', seconds: 5.2 } });
  const before = told.slice(0, stroke).flatMap((order) => (order.kind === 'time' ? [order.seconds] : []));
  expect(Math.max(...before)).toBeLessThan(5.2);
  expect(told.at(-1)).toMatchObject({ kind: 'time', seconds: 5.4 });
});

/** A microphone whose light is on until it is let go. */
function litMicrophone() {
  const track = { isOn: true, label: 'Phone', stop: () => Object.assign(track, { isOn: false }) };
  const stream = { getTracks: () => [track], getAudioTracks: () => [track] };
  return { track, stream };
}

it('[ST243] lets the microphone go where the browser gives it and then fails to open it', async () => {
  const { track, stream } = litMicrophone();
  // A browser without the nodes of Web Audio: opening fails behind the permission.
  vi.stubGlobal('navigator', { mediaDevices: { getUserMedia: async () => stream } });
  const ear = new Ear(async () => null);
  await ear.open('microphone', {} as AudioContext, {} as AudioNode);
  expect(track.isOn).toBe(false);
  expect(ear.state()).toMatchObject({ phase: 'off', refusal: 'not here' });
});

it('[ST243] stays off where it was switched off while the browser still asked', async () => {
  const { track, stream } = litMicrophone();
  let allow = (_: unknown) => {};
  const asked = new Promise((resolve) => {
    allow = resolve;
  });
  vi.stubGlobal('navigator', { mediaDevices: { getUserMedia: () => asked } });
  const ear = new Ear(async () => null);
  const opening = ear.open('microphone', {} as AudioContext, {} as AudioNode);
  ear.close();
  allow(stream);
  await opening;
  expect(track.isOn).toBe(false);
  expect(ear.state()).toMatchObject({ phase: 'off', refusal: null });
  expect(workers).toEqual([]);
});

it('[ST1600] opens no microphone for a minor before a guardian has consented', async () => {
  const { stream } = litMicrophone();
  const getUserMedia = vi.fn(async () => stream);
  vi.stubGlobal('navigator', { mediaDevices: { getUserMedia } });
  const open = async () => {
    const ear = new Ear(async () => null);
    await ear.open('microphone', {} as AudioContext, {} as AudioNode);
    return ear.state().refusal;
  };
  forbidMicrophoneWhere(() => true);
  expect([await open(), getUserMedia.mock.calls.length]).toEqual(['no consent', 0]);
  forbidMicrophoneWhere(() => false);
  expect([await open(), getUserMedia.mock.calls.length]).toEqual(['not here', 1]);
});

it('[ST1801] lets a kit whose cable was pulled hand over what it heard first', async () => {
  const port = { name: 'Kit', onmidimessage: null, state: 'connected', onstatechange: () => {} };
  vi.stubGlobal('navigator', { requestMIDIAccess: async () => ({ inputs: new Map([['1', port]]) }) });
  const ear = new Ear(async () => null);
  const context = { currentTime: 5, getOutputTimestamp: () => ({}) } as unknown as AudioContext;
  await ear.open('kit', context, {} as AudioNode);
  ear.ask('a', {} as never, null);
  port.state = 'disconnected';
  port.onstatechange();
  expect(ear.state().phase).toBe('on');
  // definition: what was played is over before the moment that the ear is told of
  expect(orders.slice(-3 * workers.length).map(({ kind }) => kind)).toEqual(
    ['break off', 'finish', 'time'].flatMap((kind) => workers.map(() => kind)),
  );
  // however slow the device is; and nothing else is listened for meanwhile
  vi.advanceTimersByTime(60_000);
  expect([ear.state().phase, ear.ask('b', {} as never, null)]).toEqual(['on', null]);
  workers.at(-1)?.onmessage?.({ data: { kind: 'take', id: 'a' } });
  expect(ear.state()).toMatchObject({ phase: 'off', input: 'kit', refusal: 'none' });
});

it('[ST1801] waits for no take of a kit that nobody was listened to with', async () => {
  const port = { name: 'Kit', onmidimessage: null, state: 'disconnected', onstatechange: () => {} };
  vi.stubGlobal('navigator', { requestMIDIAccess: async () => ({ inputs: new Map([['1', port]]) }) });
  const ear = new Ear(async () => null);
  const context = { currentTime: 5, getOutputTimestamp: () => ({}) } as unknown as AudioContext;
  await ear.open('kit', context, {} as AudioNode);
  port.onstatechange();
  vi.advanceTimersByTime(1);
  expect(ear.state()).toMatchObject({ phase: 'off', input: 'kit', refusal: 'none' });
});

it('[ST243] says so where the thread that listens did not come', async () => {
  const port: KitPort = { name: 'Kit', onmidimessage: null };
  vi.stubGlobal('navigator', { requestMIDIAccess: async () => ({ inputs: new Map([['1', port]]) }) });
  const ear = new Ear(async () => null);
  await ear.open(
    'kit',
    { currentTime: 0, getOutputTimestamp: () => ({}) } as unknown as AudioContext,
    {} as AudioNode,
  );
  expect(ear.state().phase).toBe('on');
  workers[0]?.onerror?.();
  expect(ear.state()).toMatchObject({ phase: 'off', input: 'kit', refusal: 'broken' });
});

it('[ST8807] asks without a line check where an electronic kit sends its strokes', async () => {
  const port: KitPort = { name: 'Kit', onmidimessage: null };
  vi.stubGlobal('navigator', { requestMIDIAccess: async () => ({ inputs: new Map([['1', port]]) }) });
  const kit = { name: 'Cellar', weights: '00000000', slopes: {} };
  const ear = new Ear(
    async () => null,
    async () => kit,
  );
  const context = { currentTime: 0, getOutputTimestamp: () => ({}) } as unknown as AudioContext;
  await ear.open('kit', context, {} as AudioNode);
  expect(ear.ask('a', {} as never, null)).not.toHaveProperty('kit');
  ear.close();
});

it('[ST8805] says that a line check is an old one until another is chosen', async () => {
  const port: KitPort = { name: 'Kit', onmidimessage: null };
  vi.stubGlobal('navigator', { requestMIDIAccess: async () => ({ inputs: new Map([['1', port]]) }) });
  const ear = new Ear(async () => null);
  const context = { currentTime: 0, getOutputTimestamp: () => ({}) } as unknown as AudioContext;
  await ear.open('kit', context, {} as AudioNode);
  workers.at(-1)?.onmessage?.({ data: { kind: 'old line check', name: 'Cellar' } });
  expect(ear.state().oldLineCheck).toBe('Cellar');
  ear.hearWith(null);
  expect(ear.state().oldLineCheck).toBeNull();
  ear.close();
});
