/**
 * Strokes that an ear takes for a voice where another one was struck: far softer than that voice's own strokes, and at
 * the very moment of another's. What sounds like a soft snare under every ride stroke was not struck.
 *
 * Conventions: decibels relative to the lead voice; seconds.
 */
import { groupBy } from '@shedbook/core';
import { median } from '@shedbook/signal';
import type { PlayedStroke } from './played.ts';

/** So much softer than the louder half of its voice, in dB; a hand's plain strokes differ by a few. */
const SOFTER_DB = 8;
/** So near to another voice's stroke. */
const NEAR_SECONDS = 0.006;
/** Fewer strokes say nothing of what is usual. */
const FEWEST = 4;

/** The level of the louder half of some strokes. */
function usualDb(strokes: readonly PlayedStroke[]): number {
  const middle = median(strokes.map(({ levelDb }) => levelDb));
  return median(strokes.flatMap(({ levelDb }) => (levelDb >= middle ? [levelDb] : [])));
}

function isNearOther(stroke: PlayedStroke, all: readonly PlayedStroke[]): boolean {
  return all.some(
    (other) => other.voice !== stroke.voice && Math.abs(other.seconds - stroke.seconds) < NEAR_SECONDS,
  );
}

/**
 * The strokes without such shadows.
 * @param isPlain whether a voice is asked for at one level throughout: ghost notes and accents differ by themselves
 */
export function withoutShadows(
  strokes: readonly PlayedStroke[],
  isPlain: (voice: PlayedStroke['voice']) => boolean,
): readonly PlayedStroke[] {
  const shadows = new Set<PlayedStroke>();
  for (const [voice, own] of groupBy(strokes, (stroke) => stroke.voice)) {
    if (own.length < FEWEST || !isPlain(voice)) continue;
    const usual = usualDb(own);
    for (const stroke of own)
      if (stroke.levelDb < usual - SOFTER_DB && isNearOther(stroke, strokes)) shadows.add(stroke);
  }
  return strokes.filter((stroke) => !shadows.has(stroke));
}
