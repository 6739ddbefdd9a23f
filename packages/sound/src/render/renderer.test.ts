import { Hertz, LeadDb, Seconds, seededRandom, VOICES } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { createKit } from '../kit/kit.ts';
import { render } from './render.ts';
import { createRenderer, type RendererOptions } from './renderer.ts';
import type { SoundingStroke } from './sound-of.ts';

const RATE = Hertz(22050);
const kit = createKit({ sampleRateHz: RATE });

const stroke = (voice: SoundingStroke['voice'], timeSeconds: number, levelDb = 0): SoundingStroke => ({
  voice,
  articulation: 'normal',
  mark: 'x',
  timeSeconds: Seconds(timeSeconds),
  levelDb: LeadDb(levelDb),
});

const SOUNDING = [...VOICES, 'click' as const];

/** Four busy bars: rides, open and closing hi-hats, drums, a flam and a click. */
const groove: readonly SoundingStroke[] = [
  stroke('click', 0.0313, -3),
  stroke('ride', 0.5),
  stroke('bass', 0.5, -14),
  stroke('hihat-open', 0.7, -4),
  stroke('ride', 0.83, -2),
  { ...stroke('snare', 1.001, -6), articulation: 'flam' },
  stroke('hihat-foot', 1.13, -6),
  stroke('crash', 1.5, 4),
  stroke('tom-low', 1.7, -3),
  stroke('ride', 1.9, 1),
];

function inBlocks(options: RendererOptions, total: number, next: () => number) {
  const renderer = createRenderer(options);
  renderer.schedule(groove);
  const [left, right] = [new Float32Array(total), new Float32Array(total)];
  for (let at = 0; at < total; ) {
    const frames = Math.min(total - at, next());
    renderer.render(left.subarray(at, at + frames), right.subarray(at, at + frames), frames);
    at += frames;
  }
  return { left, right };
}

describe('the renderer', () => {
  it('[SO20] gives the same samples in blocks of any size as in one file', () => {
    const whole = render({ strokes: groove, durationSeconds: Seconds(2.5) }, { kit, tail: 'cut' });
    const random = seededRandom('blocks');
    // 128 is the block of an audio worklet
    for (const next of [() => 128, () => 1 + random.below(3000), () => 100000]) {
      const { left, right } = inBlocks({ kit }, whole.left.length, next);
      expect(left).toEqual(whole.left);
      expect(right).toEqual(whole.right);
    }
  });

  it('[SO20] gives the same samples when strokes are scheduled just before they sound', () => {
    const whole = render({ strokes: groove, durationSeconds: Seconds(2.5) }, { kit, tail: 'cut' });
    const renderer = createRenderer({ kit });
    const [left, right] = [new Float32Array(128), new Float32Array(128)];
    const waiting = [...groove];
    expect(Math.max(...whole.left)).toBeGreaterThan(0.01);
    for (let at = 0; at + 128 <= whole.left.length; at += 128) {
      const ahead = (at + 128) / RATE + 0.1;
      const due = waiting.filter((each) => each.timeSeconds < ahead);
      renderer.schedule(due);
      waiting.splice(0, due.length);
      renderer.render(left, right, 128);
      expect(left).toEqual(whole.left.subarray(at, at + 128));
    }
  });

  it.each(SOUNDING)('[SO21] lets a %s sound from the sample that was asked for', (voice) => {
    const at = 0.1234;
    const { left } = render(
      { strokes: [stroke(voice, at, -2)], durationSeconds: Seconds(1) },
      { kit, tail: 'cut' },
    );
    const first = left.findIndex((sample) => sample !== 0 && Math.abs(sample) > 1e-12);
    expect(Math.abs(first - at * RATE)).toBeLessThanOrEqual(1);
  });

  it('[SO22] plays a stroke that comes too late at once', () => {
    const renderer = createRenderer({ kit, room: false });
    const [left, right] = [new Float32Array(1000), new Float32Array(1000)];
    renderer.render(left, right, 1000);
    renderer.schedule([stroke('snare', 0.001)]);
    renderer.render(left, right, 1000);
    expect(left.slice(0, 3).some((sample) => sample !== 0)).toBe(true);
  });
});
