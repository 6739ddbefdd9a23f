/**
 * Two voices exchanged: each plays the other's part. What the one should play is then told of the one, and nothing of it
 * as another exercise, missing or too many.
 */
import type { Voice } from '@shedbook/core';
import type { LoopTask } from '../loop/task.ts';
import { type HeardRound, hearRound, matchOf, type RoundStrokes, wholeMatch } from '../take/hearing.ts';
import { agreementOf, surfaceOf } from '../take/match.ts';
import type { Finding } from '../verdict/finding.ts';

/** Voices that agree this well as they are written are not exchanged. */
const AGREES = 0.6;
/** Exchanged, they must agree so well, each by itself, and by so much better. */
const EXCHANGED = 0.75;
const BETTER = 0.3;
/** Fewer strokes of a voice say nothing. */
const FEWEST = 3;

/** Two voices exchanged. */
export interface Exchange {
  readonly voices: readonly [Voice, Voice];
  readonly rounds: readonly HeardRound[];
  readonly findings: readonly Finding[];
}

function agreementAs(rounds: readonly HeardRound[], voices: readonly Voice[]): number {
  const surfaces = new Set(voices.map(surfaceOf));
  return agreementOf(matchOf(wholeMatch(rounds), (voice) => surfaces.has(surfaceOf(voice))));
}

function named(round: RoundStrokes, a: Voice, b: Voice): RoundStrokes {
  const other = (voice: Voice) =>
    surfaceOf(voice) === surfaceOf(a) ? b : surfaceOf(voice) === surfaceOf(b) ? a : voice;
  return {
    bars: round.bars,
    strokes: round.strokes.map((stroke) => ({ ...stroke, voice: other(stroke.voice) })),
  };
}

function pairsOf(task: LoopTask): readonly (readonly [Voice, Voice])[] {
  const voices = [...new Set(task.strokes.map(({ voice }) => surfaceOf(voice)))];
  return voices.flatMap((a, index) => voices.slice(index + 1).map((b) => [a, b] as const));
}

/** The two voices that were exchanged, with the rounds as they are then; null where none were. */
export function exchangedVoices(
  strokes: readonly RoundStrokes[],
  rounds: readonly HeardRound[],
  task: LoopTask,
  isAlongClick: boolean,
): Exchange | null {
  let best: { readonly exchange: Exchange; readonly agreement: number } | null = null;
  for (const [a, b] of pairsOf(task)) {
    const asked = agreementAs(rounds, [a, b]);
    if (asked >= AGREES) continue;
    const as = strokes.map((round) => hearRound(named(round, a, b), task, isAlongClick));
    const agreement = Math.min(agreementAs(as, [a]), agreementAs(as, [b]));
    if (agreement < Math.max(EXCHANGED, asked + BETTER) || agreement <= (best?.agreement ?? 0)) continue;
    const findings = [told(as, a, b), told(as, b, a)];
    if (findings.some(({ times = 0 }) => times < FEWEST)) continue;
    best = { exchange: { voices: [a, b], rounds: as, findings }, agreement };
  }
  return best?.exchange ?? null;
}

function told(rounds: readonly HeardRound[], voice: Voice, instead: Voice): Finding {
  const { pairs, missed } = matchOf(wholeMatch(rounds), (each) => surfaceOf(each) === voice);
  return {
    ...{ what: 'wrong-voice', voice, instead },
    ...{ times: pairs.length, of: pairs.length + missed.length, strength: 1 },
  };
}
