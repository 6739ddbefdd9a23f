/**
 * The guided latency check: clicks out, and when they come back.
 *
 * Conventions: seconds of the audio context.
 */
import type { CapturedBlock } from './capture-messages.ts';
import { CLICK_SECONDS, findClick, makeClick } from './click-finder.ts';
import type { Kit } from './kit.ts';
import { HEARD_REACH, measureRoundTrip, PLAYED_REACH, type RoundTrip } from './latency.ts';
import type { Microphone } from './microphone.ts';

/** How many clicks, and how far apart: for the microphone no two may overlap on their way. */
const HEARD_CLICKS = { count: 10, apartSeconds: 0.6 } as const;
const PLAYED_CLICKS = { count: 16, apartSeconds: 0.6 } as const;

/** Before the first click, so that nobody is surprised. */
const LEAD_SECONDS = 0.5;

const CLICK_GAIN = 0.6;

/** When the clicks of a check are played. */
export function clickTimes(
  first: number,
  { count, apartSeconds }: typeof HEARD_CLICKS | typeof PLAYED_CLICKS,
) {
  return Array.from({ length: count }, (_, index) => first + index * apartSeconds);
}

function playClicks(context: AudioContext, times: readonly number[]): void {
  const click = makeClick(context.sampleRate);
  const buffer = new AudioBuffer({ length: click.length, sampleRate: context.sampleRate });
  buffer.copyToChannel(click as Float32Array<ArrayBuffer>, 0);
  const gain = new GainNode(context, { gain: CLICK_GAIN });
  gain.connect(context.destination);
  for (const time of times) {
    const source = new AudioBufferSourceNode(context, { buffer });
    source.connect(gain);
    source.start(time);
  }
}

function until(context: AudioContext, seconds: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, Math.max(0, seconds - context.currentTime) * 1000));
}

/** Everything that a microphone hears from `from` to `to`, as one stretch of samples. */
async function record(
  context: AudioContext,
  microphone: Microphone,
  from: number,
  to: number,
): Promise<Float32Array> {
  const rate = microphone.rateHz;
  const samples = new Float32Array(Math.ceil((to - from) * rate));
  const stop = microphone.listen(({ frame, samples: block }: CapturedBlock) => {
    const at = frame - Math.round(from * rate);
    if (at >= 0 && at + block.length <= samples.length) samples.set(block, at);
  });
  await until(context, to + 0.1);
  stop();
  return samples;
}

/** Plays clicks and hears them by the microphone. @returns null when too few of them were heard. */
export async function checkMicrophone(
  context: AudioContext,
  microphone: Microphone,
): Promise<RoundTrip | null> {
  const rate = microphone.rateHz;
  const from = context.currentTime;
  const clicks = clickTimes(from + LEAD_SECONDS, HEARD_CLICKS);
  const reach = HEARD_REACH.latestMs / 1000 + CLICK_SECONDS;
  playClicks(context, clicks);
  const samples = await record(context, microphone, from, (clicks.at(-1) as number) + reach + 0.1);
  const click = makeClick(rate);
  const onsets = clicks.flatMap((time) => {
    const at = (time - from) * rate;
    const found = findClick(samples, at, at + reach * rate, click);
    return found === null ? [] : [from + found / rate];
  });
  return measureRoundTrip(clicks, onsets, HEARD_REACH);
}

/** Plays clicks that somebody plays along with on a kit. @returns null when too few were played along. */
export async function checkKit(context: AudioContext, kit: Kit): Promise<RoundTrip | null> {
  const clicks = clickTimes(context.currentTime + LEAD_SECONDS, PLAYED_CLICKS);
  const onsets: number[] = [];
  playClicks(context, clicks);
  const stop = kit.listen(({ seconds }) => onsets.push(seconds));
  await until(context, (clicks.at(-1) as number) + PLAYED_REACH.latestMs / 1000);
  stop();
  return measureRoundTrip(clicks, onsets, PLAYED_REACH);
}
