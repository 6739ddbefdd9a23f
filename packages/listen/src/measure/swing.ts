/**
 * The swing meter: beat–upbeat ratios of one voice against given beats.
 *
 * Conventions: seconds, ascending; a ratio is long : short, on-beat part over off-beat part.
 * Source: H. Cheston et al., Jazz Trio Database, TISMIR 2024 (`rhythm_features.py`): an onset belongs to a beat
 * when it is the nearest one within a 32nd note of it, and is then that beat's onset; a ratio counts only where
 * exactly three onsets lie in [beat, next beat]; values outside 0.25 to 4 are dropped. F. Benadon,
 * "Slicing the Beat", Ethnomusicology 50(1), 2006, for the ratio itself.
 */
import { median, spread } from '@shedbook/signal';

const LEAST = 0.25;
const MOST = 4;
/** Both ends count; differences of times are floats. */
const ROUNDING = 1e-9;

/** The onset that belongs to each beat, or null. */
export function matchBeats(
  beats: readonly number[],
  onsets: readonly number[],
  windowSeconds: number,
): readonly (number | null)[] {
  let from = 0;
  return beats.map((beat) => {
    while (from < onsets.length && onsets[from]! < beat - windowSeconds) from += 1;
    let best: number | null = null;
    for (let i = from; i < onsets.length && onsets[i]! <= beat + windowSeconds; i += 1) {
      if (best === null || Math.abs(onsets[i]! - beat) < Math.abs(best - beat)) best = onsets[i]!;
    }
    return best;
  });
}

/** The ratios of a voice, beat by beat where there is one. */
export function swingRatios(beats: readonly number[], onsets: readonly number[]): readonly number[] {
  const intervals = beats.slice(1).map((beat, i) => beat - beats[i]!);
  const matched = matchBeats(beats, onsets, median(intervals) / 8);
  const ratios: number[] = [];
  let from = 0;
  for (let i = 0; i + 1 < matched.length; i += 1) {
    const start = matched[i];
    const end = matched[i + 1];
    if (start == null || end == null || end <= start) continue;
    while (from < onsets.length && onsets[from]! < start) from += 1;
    let to = from;
    while (to < onsets.length && onsets[to]! <= end) to += 1;
    if (to - from !== 3) continue;
    const middle = onsets[from + 1]!;
    const ratio = (middle - start) / (end - middle);
    if (ratio >= LEAST - ROUNDING && ratio <= MOST + ROUNDING) ratios.push(ratio);
  }
  return ratios;
}

/** The summary of a report. */
export function summariseSwing(
  ratios: readonly number[],
): { median: number; spread: number; count: number } | null {
  if (ratios.length === 0) return null;
  return { median: median(ratios), spread: spread(ratios), count: ratios.length };
}
