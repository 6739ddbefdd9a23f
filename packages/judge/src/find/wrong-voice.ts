/**
 * The right rhythm on the wrong drum.
 *
 * Conventions: a voice whose strokes are mostly missing, while another one has strokes at those very moments that are
 * written for nobody.
 */
import { groupBy, type Voice } from '@shedbook/core';
import { type HeardRound, latenessIn } from '../take/hearing.ts';
import { type Match, matchStrokes } from '../take/match.ts';
import type { Finding } from '../verdict/finding.ts';

/** A voice is elsewhere when so much of it is missing, and found on the other voice, of which this much is nothing else. */
const MISSING = 0.5;
const FOUND = 0.6;
const NOTHING_ELSE = 0.6;
const FEWEST = 2;

/** A voice that is played on another, and what is left to be told once that is said. */
export interface WrongVoice {
  readonly findings: readonly Finding[];
  readonly match: Match;
}

function moved(match: Match, voice: Voice, rounds: readonly HeardRound[]): WrongVoice | null {
  const missed = match.missed.filter((one) => one.voice === voice);
  const due = missed.length + match.pairs.filter((pair) => pair.due.voice === voice).length;
  if (missed.length < FEWEST || missed.length < MISSING * due) return null;
  const byVoice = groupBy(match.extra, (stroke) => stroke.voice);
  for (const [instead, strokes] of byVoice) {
    const wanted = missed.map((one) => ({ ...one, voice: instead }));
    const found = matchStrokes(wanted, strokes, (one) => {
      const round = rounds.find(({ bars }) => bars.includes(one.bar));
      return round ? latenessIn(round)(one) : 0;
    });
    const times = found.pairs.length;
    if (times < FOUND * missed.length || times < NOTHING_ELSE * strokes.length) continue;
    const at = new Set(
      found.pairs.map(
        ({ due: one }) =>
          `${one.bar.round} ${one.asked.written.bar}.${one.asked.written.beat}.${one.asked.written.slot}`,
      ),
    );
    const taken = new Set(found.pairs.map(({ stroke }) => stroke));
    return {
      findings: [{ what: 'wrong-voice', voice, instead, times, of: due, strength: 1 }],
      match: {
        pairs: match.pairs,
        missed: match.missed.filter(
          (one) =>
            one.voice !== voice ||
            !at.has(
              `${one.bar.round} ${one.asked.written.bar}.${one.asked.written.beat}.${one.asked.written.slot}`,
            ),
        ),
        extra: match.extra.filter((stroke) => !taken.has(stroke)),
      },
    };
  }
  return null;
}

/** The voices that were played on others. */
export function wrongVoices(match: Match, rounds: readonly HeardRound[]): WrongVoice {
  let left: WrongVoice = { findings: [], match };
  for (const voice of new Set(match.missed.map((one) => one.voice))) {
    const found = moved(left.match, voice, rounds);
    if (found) left = { findings: [...left.findings, ...found.findings], match: found.match };
  }
  return left;
}
