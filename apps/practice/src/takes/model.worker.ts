/** Renders strokes to sound beside everything else, with the kit that the player plays on. */
import type { Hertz, Seconds, SetUp } from '@shedbook/core';
import { createKit, render, type SoundingStroke } from '@shedbook/sound';
import { KIT_SEED } from '@shedbook/stand';

/** What is to be rendered. */
export interface RenderRequest {
  readonly strokes: readonly SoundingStroke[];
  readonly durationSeconds: Seconds;
  readonly sampleRateHz: Hertz;
  readonly setUp: SetUp;
}

/** Stereo, exactly as long as was asked. */
export interface Rendered {
  readonly left: Float32Array<ArrayBuffer>;
  readonly right: Float32Array<ArrayBuffer>;
}

self.onmessage = ({ data }: MessageEvent<RenderRequest>) => {
  const { strokes, durationSeconds, sampleRateHz, setUp } = data;
  const kit = createKit({ sampleRateHz, seed: KIT_SEED });
  const { left, right } = render({ strokes, durationSeconds }, { kit, setUp, tail: 'cut' });
  const rendered = { left, right } as Rendered;
  self.postMessage(rendered, { transfer: [rendered.left.buffer, rendered.right.buffer] });
  self.close();
};
