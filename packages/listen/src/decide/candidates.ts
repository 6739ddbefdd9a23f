/** The moments at which a voice may have been struck. Seconds; evidence as logits; levels in dB. */
import type { HeardEvent } from '../detect/events.ts';
import { outputOf } from '../network/heard-voices.data.ts';
import { type Evidence, outputsOf } from './evidence.ts';

/** What hardly any stroke lies under, on whatever kit and under whatever others: a logit. */
const LEAST = -6;
/** Two strokes of a voice are at least this far apart. */
export const APART_SECONDS = 0.045;

/** A moment at which a voice may have been struck. */
export interface Candidate {
  readonly timeSeconds: number;
  readonly levelDb: number;
  /** A logit. */
  readonly evidence: number;
  /** Whether the output of the voice itself tells of it, and not that of another way to strike the same thing. */
  readonly isOwn: boolean;
}

/**
 * The moments at which a voice may have been struck, one for each stroke, strongest evidence kept.
 * @param least evidence of the sound alone that is needed
 */
export function candidatesOf(
  events: readonly HeardEvent[],
  evidence: Evidence,
  least = Number.NEGATIVE_INFINITY,
): readonly Candidate[] {
  const all: Candidate[] = [];
  events.forEach((event, i) => {
    const strength = evidence.logit[i]!;
    const index = evidence.output[i]!;
    if (strength < LEAST || evidence.free[i]! < least) return;
    const offset = Math.max(-25, Math.min(25, event.offsetMs[index]!));
    all.push({
      timeSeconds: event.timeSeconds + offset / 1000,
      levelDb: Math.max(...outputsOf(evidence.voice).map((output) => event.levelDb[output]!)),
      evidence: strength - Math.max(0, Math.abs(offset) - 12) * 0.08,
      isOwn: index === outputOf(evidence.voice),
    });
  });
  const kept: Candidate[] = [];
  for (const candidate of all.toSorted((a, b) => b.evidence - a.evidence)) {
    if (!kept.some((other) => Math.abs(other.timeSeconds - candidate.timeSeconds) < APART_SECONDS))
      kept.push(candidate);
  }
  return kept.toSorted((a, b) => a.timeSeconds - b.timeSeconds);
}
