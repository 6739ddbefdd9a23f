/**
 * Loud and soft, beside the lead voice.
 *
 * Conventions: decibels relative to the lead voice. A microphone has a margin of its own.
 */
import { groupBy, type Voice } from '@shedbook/core';
import { median } from '@shedbook/signal';
import type { Allowance } from '../level/levels.data.ts';
import { allowedBalanceDb } from '../perception/perception.ts';
import type { Match, Pair } from '../take/match.ts';
import type { Finding } from '../verdict/finding.ts';

/** Fewer strokes say nothing about a level. */
const FEWEST = 3;

/**
 * A microphone tells the level of a stroke from what sounds just after it: another voice that follows this closely, and
 * not at the same moment, is in it.
 */
const FOLLOWS_SECONDS = { from: 0.02, to: 0.08 } as const;

/** The pairs whose level is their own. */
function ownLevels({ pairs, extra }: Match): readonly Pair[] {
  const strokes = [...pairs.map(({ stroke }) => stroke), ...extra];
  return pairs.filter(
    ({ stroke }) =>
      !strokes.some((other) => {
        const after = other.seconds - stroke.seconds;
        return other.voice !== stroke.voice && after > FOLLOWS_SECONDS.from && after < FOLLOWS_SECONDS.to;
      }),
  );
}

function louderDb(pairs: readonly Pair[]): number {
  return median(pairs.map(({ due, stroke }) => stroke.levelDb - due.asked.levelDb));
}

/** Voices out of balance; nothing where the lead voice was not heard. */
export function levelFindings(
  match: Match,
  lead: Voice,
  limits: Allowance,
  kind: 'audio' | 'midi',
): readonly Finding[] {
  const byVoice = groupBy(kind === 'audio' ? ownLevels(match) : match.pairs, ({ due }) => due.voice);
  const leading = byVoice.get(lead) ?? [];
  if (leading.length < FEWEST) return [];
  const leadDb = louderDb(leading);
  return [...byVoice].flatMap(([voice, own]): Finding[] => {
    if (voice === lead || own.length < FEWEST) return [];
    const db = louderDb(own) - leadDb;
    const strength = Math.abs(db) / allowedBalanceDb(limits, kind);
    return [{ what: db > 0 ? 'loud' : 'soft', voice, db: Math.abs(db), strength }];
  });
}
