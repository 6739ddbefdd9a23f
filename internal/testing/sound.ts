/**
 * For browser tests: what the sound thread was told to play, and every sample that came out of it.
 *
 * A second worklet is put behind the player, in the same audio context, and keeps each block with its frame; so what
 * is compared is what would have been heard, on the audio clock and not on the wall's.
 *
 * Conventions: samples count from the start of the audio context, at its rate.
 */

import type { TimedStroke } from '@shedbook/stand';
import type { Browser, Page } from 'playwright-core';
import { onTestFinished } from 'vitest';
import { PATIENCE_MS } from './browser.ts';
import { drawEveryFrame, drawFewFrames } from './few-frames.ts';
import { newWindow, type WindowOptions } from './kit-at-hand.ts';

/** Sound that came out of the player, from the sample `from` on, without a hole. */
export interface Recording {
  readonly from: number;
  readonly sampleRate: number;
  readonly left: Float32Array;
  readonly right: Float32Array;
}

/** What a frame showed, and what left the loudspeaker before and after it was drawn. */
export interface BallFrame {
  readonly before: number;
  readonly after: number;
  /** The ball's place in its drawing; null while it is not shown. */
  readonly x: number | null;
  readonly y: number;
}

/** What the page keeps for us, under `window.heardByTest`. */
interface Kept {
  strokes: TimedStroke[];
  sampleRate: number;
  heardSample: () => number;
  context: AudioContext | null;
  frames: BallFrame[];
  blocks: { readonly frame: number; readonly left: Float32Array; readonly right: Float32Array }[];
}

declare global {
  interface Window {
    heardByTest: Kept;
  }
}

/** Blocks are handed over by the hundred: a message for each would disturb what is measured. */
const RECORDER = `
registerProcessor('test-recorder', class extends AudioWorkletProcessor {
  blocks = [];
  process([input]) {
    const [left, right] = input;
    if (left) this.blocks.push({ frame: currentFrame, left: left.slice(), right: (right ?? left).slice() });
    if (this.blocks.length >= 100) this.port.postMessage(this.blocks.splice(0));
    return true;
  }
});
`;

/** Runs in the page before anything of the desk does. */
function keepWhatIsHeard(recorder: string): void {
  const kept: Kept = {
    strokes: [],
    sampleRate: 0,
    heardSample: () => 0,
    context: null,
    frames: [],
    blocks: [],
  };
  window.heardByTest = kept;
  window.addEventListener('shedbook:strokes', (event) => {
    const { strokes, sampleRate, heardSample } = (event as CustomEvent).detail;
    kept.strokes.push(...strokes);
    Object.assign(kept, { sampleRate, heardSample });
  });
  const url = URL.createObjectURL(new Blob([recorder], { type: 'text/javascript' }));
  const addModule = AudioWorklet.prototype.addModule;
  AudioWorklet.prototype.addModule = async function (...args) {
    await addModule.call(this, url);
    await addModule.apply(this, args);
  };
  const connect = AudioWorkletNode.prototype.connect as (target: AudioNode) => AudioNode;
  AudioWorkletNode.prototype.connect = function (this: AudioWorkletNode, target: AudioNode) {
    const context = this.context as AudioContext;
    kept.context = context;
    const node = new AudioWorkletNode(context, 'test-recorder', { channelCount: 2 });
    node.port.onmessage = ({ data }) => kept.blocks.push(...data);
    connect.call(this, node);
    connect.call(node, new GainNode(context, { gain: 0 })).connect(context.destination);
    return connect.call(this, target);
  } as typeof AudioWorkletNode.prototype.connect;
}

/** A window whose sound is kept. */
export async function openListening(
  browser: Browser,
  url: string,
  options: WindowOptions = {},
): Promise<Page> {
  // The recorder is no file of the desk's, which its content security policy would refuse.
  const context = await newWindow(browser, { bypassCSP: true, ...options });
  onTestFinished(() => context.close());
  await drawFewFrames(context);
  await context.addInitScript(keepWhatIsHeard, RECORDER);
  const page = await context.newPage();
  page.setDefaultTimeout(PATIENCE_MS);
  await page.goto(url);
  return page;
}

/** Every stroke that was given out so far, in order. */
export function strokesOf(page: Page): Promise<readonly TimedStroke[]> {
  return page.evaluate(() => window.heardByTest.strokes);
}

/** Waits until so many strokes were given out and have been heard. */
export async function waitForStrokes(page: Page, count: number): Promise<void> {
  const heard = (least: number) => {
    const { strokes, heardSample } = window.heardByTest;
    const last = strokes[least - 1];
    return last !== undefined && heardSample() > last.sample + 8000;
  };
  await page.waitForFunction(heard, count, { timeout: PATIENCE_MS, polling: 50 });
}

/**
 * The sound so far. While it sets up, a browser may leave out blocks: the recording begins after those. A worklet may
 * also read a frame that is a block or two old; blocks are therefore counted, and frames only say where counting began.
 */
export async function recordingOf(page: Page): Promise<Recording> {
  const { from, sampleRate, texts } = await page.evaluate(() => {
    const all = window.heardByTest.blocks;
    const begins = all.map(({ frame }, i) => frame - i * 128);
    const begin = Math.max(...begins);
    const blocks = all.slice(begins.indexOf(begin));
    const joined = (side: 'left' | 'right') => {
      const samples = new Float32Array(blocks.length * 128);
      for (const [i, block] of blocks.entries()) samples.set(block[side], i * 128);
      const bytes = new Uint8Array(samples.buffer);
      const parts: string[] = [];
      for (let at = 0; at < bytes.length; at += 0x8000) {
        parts.push(String.fromCharCode(...bytes.subarray(at, at + 0x8000)));
      }
      return btoa(parts.join(''));
    };
    return {
      from: blocks[0]?.frame ?? 0,
      sampleRate: window.heardByTest.sampleRate,
      texts: [joined('left'), joined('right')],
    };
  });
  const [left, right] = texts.map((text) => {
    const bytes = Buffer.from(text, 'base64');
    return new Float32Array(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length));
  }) as [Float32Array, Float32Array];
  return { from, sampleRate, left, right };
}

/**
 * Watches the ball, frame by frame, until {@link ballFrames}; to be called before anything plays, so that one look
 * comes before the desk draws and one after.
 */
export async function watchBall(page: Page): Promise<void> {
  await drawEveryFrame(page);
  await page.evaluate(() => {
    const kept = window.heardByTest;
    let latest = 0;
    // Web Audio API, getOutputTimestamp: the sample that the output device plays at a moment of the page's clock. It is
    // guessed on from what the device told last; on a busy machine the guess can pass what was made by then, or be
    // corrected backwards, and a loudspeaker does neither.
    const now = () => {
      if (!kept.context) return 0;
      const { currentTime, baseLatency, sampleRate } = kept.context;
      const { contextTime = 0, performanceTime = 0 } = kept.context.getOutputTimestamp();
      const told = contextTime + (performance.now() - performanceTime) / 1000;
      latest = Math.max(latest, Math.min(told, currentTime + baseLatency) * sampleRate);
      return latest;
    };
    let before = 0;
    const lookBefore = () => {
      requestAnimationFrame(lookBefore);
      before = now();
    };
    const lookAfter = () => {
      requestAnimationFrame(lookAfter);
      const shown = [...document.querySelectorAll<SVGElement>('[data-ball]')].filter(
        (ball) => ball.style.visibility === 'visible',
      );
      const place = /translate\(([-\d.]+) ([-\d.]+)\)/.exec(shown[0]?.getAttribute('transform') ?? '');
      const x = shown.length === 1 && place ? Number(place[1]) : null;
      kept.frames.push({ before, after: now(), x, y: Number(place?.[2]) });
    };
    lookBefore();
    // The desk asks for its frame when it begins to play, and so before this one does.
    window.addEventListener('shedbook:strokes', () => setTimeout(lookAfter, 100), { once: true });
  });
}

/** What was seen of the ball, as soon as so many frames have shown it; a busy machine draws fewer in the same time. */
export async function ballFrames(page: Page, least: number): Promise<readonly BallFrame[]> {
  const seen = (count: number) =>
    window.heardByTest.frames.filter((frame) => frame.x !== null).length >= count;
  await page.waitForFunction(seen, least, { timeout: PATIENCE_MS, polling: 200 });
  return page.evaluate(() => window.heardByTest.frames);
}
