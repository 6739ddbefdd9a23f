import { expect, it } from 'vitest';
import type { CapturedBlock } from '../device/capture-messages.ts';
import { recordSpan } from './record-span.ts';

/** A microphone of a hundred samples a second that hears its own frame numbers. */
function microphone() {
  const listeners = new Set<(block: CapturedBlock) => void>();
  return {
    rateHz: 100,
    listeners,
    listen: (listener: (block: CapturedBlock) => void) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    hear: (frame: number, length: number) => {
      const samples = Float32Array.from({ length }, (_, i) => frame + i);
      for (const listener of listeners) listener({ frame, samples });
    },
  };
}

const SPAN = { fromSeconds: 1, toSeconds: 1.1 };

it('[ST8802] records from the first count to the last stroke to the sample, a lost block as silence', async () => {
  const heard = microphone();
  const recording = recordSpan(heard, SPAN, new AbortController().signal);
  heard.hear(90, 8);
  heard.hear(98, 4);
  // the block at 102 is lost
  heard.hear(106, 8);
  expect([...((await recording) ?? [])]).toEqual([100, 101, 0, 0, 0, 0, 106, 107, 108, 109]);
  expect(heard.listeners.size).toBe(0);
});

it('[ST8802] broken off, nothing is recorded and nothing listens any more', async () => {
  const heard = microphone();
  const leaving = new AbortController();
  const recording = recordSpan(heard, SPAN, leaving.signal);
  heard.hear(98, 4);
  leaving.abort();
  expect(await recording).toBeNull();
  expect(heard.listeners.size).toBe(0);
});
