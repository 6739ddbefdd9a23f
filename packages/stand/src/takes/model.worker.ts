/** Renders strokes to sound beside everything else, with sounds of the kit that the player plays on. */
import type { Hertz, Seconds, SetUp } from '@shedbook/core';
import { type Kit, render, type SoundingStroke } from '@shedbook/sound';
import { KIT_SEED, type KitSound } from '../sound/messages.ts';

/** What is to be rendered. */
export interface RenderRequest {
  readonly strokes: readonly SoundingStroke[];
  readonly durationSeconds: Seconds;
  readonly setUp: SetUp;
  readonly sampleRateHz: Hertz;
  /** Every sound that the strokes need, at that rate. */
  readonly sounds: readonly KitSound[];
}

/** Stereo, exactly as long as was asked. */
export interface Rendered {
  readonly left: Float32Array<ArrayBuffer>;
  readonly right: Float32Array<ArrayBuffer>;
}

function kitOf({ sampleRateHz, sounds }: RenderRequest): Kit {
  const byName = new Map(sounds.map(({ name, sound }) => [name, sound]));
  const sound: Kit['sound'] = (name) => {
    const found = byName.get(name);
    if (!found) throw new RangeError(`Internal error: no ${name} came with the strokes`);
    return found;
  };
  return { sampleRateHz, seed: KIT_SEED, sound, prepare: () => {} };
}

self.onmessage = ({ data }: MessageEvent<RenderRequest>) => {
  const { strokes, durationSeconds, setUp } = data;
  const { left, right } = render({ strokes, durationSeconds }, { kit: kitOf(data), setUp, tail: 'cut' });
  const rendered = { left, right } as Rendered;
  self.postMessage(rendered, { transfer: [rendered.left.buffer, rendered.right.buffer] });
  self.close();
};
