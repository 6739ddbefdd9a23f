/**
 * The way from the loudspeaker to the microphone (or from the click to the kit's message), from a few clicks.
 *
 * Conventions: seconds of the audio context; a round trip is how much later a click is heard than it was played,
 * in milliseconds. Its spread is the median absolute deviation.
 */
import { median, medianDeviation } from '@shedbook/signal';

/** What a check found. */
export interface RoundTrip {
  readonly medianMs: number;
  readonly spreadMs: number;
  /** How many clicks were heard. */
  readonly heard: number;
  /** How many clicks were played. */
  readonly played: number;
}

/** How early and how late a click may be heard, in ms: a hand can be ahead of a click, a loudspeaker cannot. */
export interface Reach {
  readonly earliestMs: number;
  readonly latestMs: number;
}

/** For clicks that a microphone hears: wireless loudspeakers take up to about 0.4 s. */
export const HEARD_REACH: Reach = { earliestMs: 0, latestMs: 450 };

/** For clicks that a person plays along with. */
export const PLAYED_REACH: Reach = { earliestMs: -150, latestMs: 450 };

/** Fewer clicks than this share, and nothing is known. */
const FEWEST_SHARE = 0.5;

/** Further from the first median than this, in ms, is something else than the click. */
const OUTLIER_MS = 40;

/**
 * The round trip of clicks and what was heard of them, each click at most once.
 * @returns null when fewer than half of the clicks were heard near each other.
 */
export function measureRoundTrip(
  clicks: readonly number[],
  onsets: readonly number[],
  reach: Reach,
): RoundTrip | null {
  const lags = clicks.flatMap((click) => {
    const first = onsets.find((onset) => {
      const lag = (onset - click) * 1000;
      return lag >= reach.earliestMs && lag <= reach.latestMs;
    });
    return first === undefined ? [] : [(first - click) * 1000];
  });
  const rough = median(lags);
  const near = lags.filter((lag) => Math.abs(lag - rough) <= OUTLIER_MS);
  if (near.length === 0 || near.length < FEWEST_SHARE * clicks.length) return null;
  return {
    medianMs: median(near),
    spreadMs: medianDeviation(near),
    heard: near.length,
    played: clicks.length,
  };
}
