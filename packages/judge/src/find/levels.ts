/**
 * Loud and soft: each voice beside the lead voice, and its ghost notes beside its own accents, since a few soft strokes
 * among loud ones hardly move the whole.
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
/** Strokes this much softer than the loudest of their voice, as it is written, are ghost notes beside accents. */
const GHOST_DB = 6;

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

/** How much louder some strokes are than others, each beside what was asked. */
function loudness(voice: Voice, db: number, allowedDb: number): Finding {
  return { what: db > 0 ? 'loud' : 'soft', voice, db: Math.abs(db), strength: Math.abs(db) / allowedDb };
}

/** The ghost notes of a voice that are too loud beside its own accents, whatever the lead voice does. */
function ghostFindings(voice: Voice, own: readonly Pair[], allowedDb: number): readonly Finding[] {
  const loudest = Math.max(...own.map(({ due }) => due.asked.levelDb));
  const ghosts = own.filter(({ due }) => due.asked.levelDb <= loudest - GHOST_DB);
  const accents = own.filter(({ due }) => due.asked.levelDb > loudest - GHOST_DB);
  if (ghosts.length < FEWEST || accents.length < FEWEST) return [];
  const found = loudness(voice, louderDb(ghosts) - louderDb(accents), allowedDb);
  return found.what === 'loud' ? [{ ...found, places: ghosts.map(({ due }) => due.asked.written) }] : [];
}

/** Voices out of balance; beside the lead voice none where that was not heard. */
export function levelFindings(
  match: Match,
  lead: Voice,
  limits: Allowance,
  kind: 'audio' | 'midi',
): readonly Finding[] {
  const byVoice = groupBy(kind === 'audio' ? ownLevels(match) : match.pairs, ({ due }) => due.voice);
  const allowedDb = allowedBalanceDb(limits, kind);
  const leading = byVoice.get(lead) ?? [];
  const leadDb = leading.length < FEWEST ? null : louderDb(leading);
  return [...byVoice].flatMap(([voice, own]) => {
    const ghosts = ghostFindings(voice, own, allowedDb);
    if (voice === lead || leadDb === null || own.length < FEWEST) return ghosts;
    const whole = loudness(voice, louderDb(own) - leadDb, allowedDb);
    const softer = ghosts.find(({ strength }) => strength > whole.strength);
    return [softer ?? whole];
  });
}
