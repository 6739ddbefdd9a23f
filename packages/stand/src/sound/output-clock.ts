/**
 * The clock of what is heard: the sample that leaves the loudspeaker now, output latency included.
 *
 * It never runs back, and never ahead of what was made. On a busy machine the browser's own clock does both: its
 * moments are guessed on from the last one that the output told, and the next telling corrects the guess. A bar line
 * that were passed twice would be counted twice.
 *
 * Conventions: samples from the start of the audio context; milliseconds of the page's clock.
 * Source: Web Audio API, `getOutputTimestamp`; until sound comes out, `currentTime` less `outputLatency`.
 */

/** What is read of an audio context. */
export type OutputContext = Pick<
  AudioContext,
  'baseLatency' | 'currentTime' | 'getOutputTimestamp' | 'outputLatency' | 'sampleRate'
>;

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
    this.#latest = Math.max(this.#latest, Math.min(this.#told(pageMs), made) * sampleRate);
    return this.#latest;
  }

  /** What the browser says, in seconds: its clock of the output, which does not step as `currentTime` does. */
  #told(pageMs: number): number {
    const { contextTime = 0, performanceTime = 0 } = this.#context.getOutputTimestamp();
    if (contextTime > 0 && performanceTime > 0) return contextTime + (pageMs - performanceTime) / 1000;
    const { baseLatency, currentTime, outputLatency } = this.#context;
    return currentTime - (outputLatency || baseLatency || 0);
  }
}
