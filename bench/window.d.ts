/** What benches keep in a page that they measure, and what the DOM's types do not know of the Event Timing API yet. */

interface Window {
  /** How long each interaction lasted until its paint, in milliseconds, by its number. */
  interactionsOfBench: Map<number, number>;
  /** When Play was pressed and when the first stroke left the loudspeaker, in milliseconds of the page's clock. */
  pressedAt: number;
  firstStrokeAt: number | undefined;
  /** Milliseconds from each stroke to the frame that showed it. */
  drawnOfBench: number[];
}

interface PerformanceEntry {
  readonly interactionId?: number;
}

interface PerformanceObserverInit {
  durationThreshold?: number;
}
