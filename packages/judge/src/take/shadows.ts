/**
 * Strokes that an ear takes for a voice where another one was struck: far softer than that voice's own strokes, and at
 * the very moment of another's. What sounds like a soft snare under every ride stroke was not struck.
 *
 * Conventions: decibels relative to the lead voice; seconds.
 */
import { groupBy, type Voice } from '@shedbook/core';
import { median } from '@shedbook/signal';
import type { PlayedStroke } from './played.ts';

/** So much softer than the louder half of its voice, in dB; a hand's plain strokes differ by a few. */
const SOFTER_DB = 8;
/** So near to another voice's stroke. */
const NEAR_SECONDS = 0.006;
/**
 * So sure must the ear be of a stroke that much softer, and surer by so much with each dB more, up to what is struck
 * however soft: of a stroke under another it hardly knows the level.
 */
const SURE_AT_SOFTER = 0.75;
const SURER_PER_DB = 0.035;
const SURE = 0.98;
/** Fewer strokes say nothing of what is usual. */
const FEWEST = 4;

/** The level of the louder half of some strokes. */
function usualDb(strokes: readonly PlayedStroke[]): number {
  const middle = median(strokes.map(({ levelDb }) => levelDb));
  return median(strokes.flatMap(({ levelDb }) => (levelDb >= middle ? [levelDb] : [])));
}

/** What is asked of voices, and how far the ear is believed. */
export interface ShadowsOf {
  /** Whether a voice is asked for at one level throughout: ghost notes and accents differ by themselves. */
  readonly isPlain: (voice: Voice) => boolean;
  /** Whether what the ear is sure of is the student's. */
  readonly isTrusted: (voice: Voice) => boolean;
}

/** How sure the ear must be of a stroke so much softer than its voice is struck. */
function surenessFor(softerDb: number): number {
  return Math.min(SURE, SURE_AT_SOFTER + SURER_PER_DB * (softerDb - SOFTER_DB));
}

function isNearOther(stroke: PlayedStroke, all: readonly PlayedStroke[]): boolean {
  return all.some(
    (other) => other.voice !== stroke.voice && Math.abs(other.seconds - stroke.seconds) < NEAR_SECONDS,
  );
}

/**
 * The strokes without such shadows.
 * @param before strokes of rounds before these, which tell too how loud a voice is struck
 */
export function withoutShadows(
  strokes: readonly PlayedStroke[],
  { isPlain, isTrusted }: ShadowsOf,
  before: readonly PlayedStroke[] = [],
): readonly PlayedStroke[] {
  const shadows = new Set<PlayedStroke>();
  const known = groupBy([...before, ...strokes], (stroke) => stroke.voice);
  for (const [voice, own] of groupBy(strokes, (stroke) => stroke.voice)) {
    const all = known.get(voice) ?? own;
    if (all.length < FEWEST || !isPlain(voice)) continue;
    const usual = usualDb(all);
    for (const stroke of own) {
      const softerDb = usual - stroke.levelDb;
      if (softerDb <= SOFTER_DB || !isNearOther(stroke, strokes)) continue;
      if (!isTrusted(voice) || stroke.confidence < surenessFor(softerDb)) shadows.add(stroke);
    }
  }
  return strokes.filter((stroke) => !shadows.has(stroke));
}
