/**
 * A tempo from taps.
 *
 * Conventions: moments in milliseconds; tempi in beats a minute.
 */

/** A pause this long begins anew. */
const PAUSE_MS = 2500;

/** Taps that are averaged at most. */
const MOST_TAPS = 6;

/** The taps with one more; only the last few that belong together are kept. */
export function withTap(taps: readonly number[], now: number): readonly number[] {
  const last = taps.at(-1);
  const going = last !== undefined && now - last < PAUSE_MS && now > last;
  return going ? [...taps, now].slice(-MOST_TAPS) : [now];
}

/** The tempo of the taps, or null while there is only one. */
export function tappedTempo(taps: readonly number[]): number | null {
  const [first] = taps;
  const last = taps.at(-1);
  if (first === undefined || last === undefined || taps.length < 2) return null;
  return (60_000 * (taps.length - 1)) / (last - first);
}
