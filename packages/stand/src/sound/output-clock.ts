/**
 * The clock of what is heard: the sample that leaves the loudspeaker now, output latency included.
 *
 * It never runs back, and never ahead of what was made. On a busy machine the browser's own clock does both: its
 * moments are guessed on from the last one that the output told, and the next telling corrects the guess. A bar line
 * that were passed twice would be counted twice.
 *
 * A browser's word is taken only where its other clock bears it out: in some the moment of the stamp runs at twice the
 * rate of the page's clock (WebKitGTK), in some the latency is not told (Safari before 18.4).
 *
 * Conventions: samples from the start of the audio context; milliseconds of the page's clock.
 * Source: Web Audio API, `getOutputTimestamp`, by which the output is never ahead of `currentTime`; until sound comes
 * out, `currentTime` less `outputLatency`.
 */
import { Seconds } from '@shedbook/core';

/** What is read of an audio context to know its latency. */
export type LatencyContext = Partial<Pick<AudioContext, 'baseLatency' | 'outputLatency'>>;

/** What is read of an audio context. */
export type OutputContext = LatencyContext &
  Pick<AudioContext, 'currentTime' | 'sampleRate'> &
  Partial<Pick<AudioContext, 'getOutputTimestamp'>>;

/** One moment on both clocks. */
export interface ClockPair {
  /** Seconds of the audio context that leave the loudspeaker … */
  readonly contextSeconds: number;
  /** … at this moment of the page's clock, in milliseconds. */
  readonly pageMs: number;
}

/** The stamp of the output is at most this far behind what was made, in seconds: a long buffer, a loudspeaker by radio. */
const FARTHEST_SECONDS = 1;
/** The moment of a stamp is past; it is at most this far ahead of the page's clock, in milliseconds. */
const AHEAD_MS = 200;

/** How the browser names itself. */
const agentHere = () => globalThis.navigator?.userAgent ?? '';

/**
 * Whether a browser must not be asked for the latency of its output: Firefox on a Linux desktop. Its page waits for the
 * sound server while it holds what the sound thread waits for, so that a question at the wrong moment stops it for good;
 * both `outputLatency` and `getOutputTimestamp` ask.
 */
function locksUp(agent: string): boolean {
  return /Linux/.test(agent) && /Firefox\//.test(agent) && !/Android/.test(agent);
}

/** What is taken for the latency there, in seconds: the median of eight starts of Firefox 140 on PulseAudio. */
const UNASKED_SECONDS = 0.042;

/**
 * What the browser says of its output's latency, in seconds; 0 where it says nothing.
 * @param agent how the browser names itself
 */
export function outputLatencyOf(context: LatencyContext, agent = agentHere()): Seconds {
  return Seconds(locksUp(agent) ? UNASKED_SECONDS : context.outputLatency || context.baseLatency || 0);
}

/** The latency of the output as the browser tells it, in seconds; undefined where it does not, or must not be asked. */
export function toldLatency(context: LatencyContext, agent = agentHere()): number | undefined {
  return locksUp(agent) ? undefined : context.outputLatency;
}

/** The second of the context that the output says it is at; null where it does not say, or must not be asked. */
export function stampOf(
  context: Partial<Pick<AudioContext, 'getOutputTimestamp'>>,
  agent = agentHere(),
): number | null {
  return locksUp(agent) ? null : (context.getOutputTimestamp?.().contextTime ?? null);
}

/**
 * Where both clocks stand.
 * @param pageMs this moment of the page's clock, in milliseconds
 * @param agent how the browser names itself
 */
export function clocksOf(context: OutputContext, pageMs: number, agent = agentHere()): ClockPair {
  const { baseLatency, currentTime } = context;
  if (locksUp(agent)) return { contextSeconds: currentTime - UNASKED_SECONDS, pageMs };
  const { contextTime = 0, performanceTime = 0 } = context.getOutputTimestamp?.() ?? {};
  const isBorneOut =
    contextTime <= currentTime + (baseLatency || 0) &&
    contextTime > currentTime - FARTHEST_SECONDS &&
    performanceTime < pageMs + AHEAD_MS;
  if (contextTime > 0 && performanceTime > 0 && isBorneOut) {
    return { contextSeconds: contextTime, pageMs: performanceTime };
  }
  return { contextSeconds: currentTime - outputLatencyOf(context), pageMs };
}

/** The clock of an audio context. */
export class OutputClock {
  readonly #context: OutputContext;
  #latest = 0;

  constructor(context: OutputContext) {
    this.#context = context;
  }

  /**
   * The sample that leaves the loudspeaker; never less than it was.
   * @param pageMs the moment of the page's clock, in milliseconds
   */
  sampleAt(pageMs: number): number {
    const { baseLatency, currentTime, sampleRate } = this.#context;
    // `currentTime` steps from buffer to buffer, each as long as the base latency.
    const made = currentTime + (baseLatency || 0);
    const { contextSeconds, pageMs: atMs } = clocksOf(this.#context, pageMs);
    const told = contextSeconds + (pageMs - atMs) / 1000;
    this.#latest = Math.max(this.#latest, Math.min(told, made) * sampleRate);
    return this.#latest;
  }
}
