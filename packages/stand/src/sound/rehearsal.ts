/**
 * The beginning of a program, played to nobody: a browser takes many times as long for code that it runs for the first
 * time, which whoever presses Play would wait for.
 */
import { Bpm, Samples, samplesToSeconds } from '@shedbook/core';
import type { Program } from '@shedbook/playing';
import { createRenderer, type Kit } from '@shedbook/sound';
import { Sequencer } from './sequencer.ts';

/** So much is gone through, in seconds: a stroke or two, and the room around them. */
const LENGTH_SECONDS = 0.4;

const SETTINGS = { bpm: Bpm(240), click: true, mute: [], trimDb: {} };

/** Goes through the beginning of a program block by block. @returns a step of `frames`, which says whether it was the last */
export function rehearsalOf(program: Program, kit: Kit): (frames: number) => boolean {
  const { sampleRateHz } = kit;
  const renderer = createRenderer({ kit });
  const sequencer = new Sequencer(program, SETTINGS, sampleRateHz, 0);
  return (frames) => {
    const strokes = sequencer.until(renderer.position() + frames);
    renderer.schedule(
      strokes.map(({ sample, stroke }) => ({
        ...stroke,
        timeSeconds: samplesToSeconds(Samples(sample), sampleRateHz),
      })),
    );
    renderer.render(new Float32Array(frames), new Float32Array(frames), frames);
    return renderer.position() >= LENGTH_SECONDS * sampleRateHz;
  };
}
