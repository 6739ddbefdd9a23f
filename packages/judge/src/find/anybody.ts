/** Whether anybody played: nobody's sounds are no verdict on the playing. */
import type { Voice } from '@shedbook/core';
import { median } from '@shedbook/signal';
import { type HeardRound, latenessIn, wholeMatch } from '../take/hearing.ts';
import { type Match, surfaceOf } from '../take/match.ts';
import { spreadOf } from '../take/own-pulse.ts';
import type { Finding } from '../verdict/finding.ts';
import type { Known } from './known.ts';
import type { Reading } from './readings.ts';
import { SURE } from './strokes.ts';

/** Fewest strokes by which a voice is known to be played, and the share of them that must be written ones. */
const FEWEST = 4;
const MOSTLY = 0.6;
/** Strokes that scatter over more than this share of their reach are there by chance. */
const BY_CHANCE = 0.45;
/** Fewer sounds than this share of what was due, none of them in time, are nobody's playing. */
const FEW_SHARE = 0.3;

/** Whether a voice is played where it is written, and not only struck there by chance. */
function isPlayed(voice: Voice, match: Match, rounds: readonly HeardRound[]): boolean {
  const own = match.pairs.filter(({ due }) => due.voice === voice);
  const extra = match.extra.filter((stroke) => surfaceOf(stroke.voice) === surfaceOf(voice)).length;
  const due = own.length + match.missed.filter((one) => one.voice === voice).length;
  if (own.length < Math.min(FEWEST, due) || own.length < MOSTLY * (own.length + extra)) return false;
  const late = rounds.flatMap((round) => {
    const at = latenessIn(round);
    return round.match.pairs
      .filter((pair) => pair.due.voice === voice)
      .map((pair) => pair.lateSeconds - at(pair.due));
  });
  return spreadOf(late) < BY_CHANCE * median(own.map((pair) => pair.due.reachSeconds));
}

function isAnyPlayed(rounds: readonly HeardRound[]): boolean {
  const match = wholeMatch(rounds);
  const voices = new Set(match.pairs.map(({ due }) => due.voice));
  return [...voices].some((voice) => isPlayed(voice, match, rounds));
}

/** What is to be said where no stroke can be the student's. */
export function nobody(known: Known): Finding {
  return { what: known.isLoudspeakerHeard ? 'only-loudspeaker' : 'nobody-played', strength: 1 };
}

/** Whether anything was played at all; else what is to be said. */
export function unplayed(
  reading: Reading,
  findings: readonly Finding[],
  known: Known,
): readonly Finding[] | null {
  const isOther = findings.some(({ what }) => INSTEAD.has(what));
  if (isOther || isAnyPlayed(reading.rounds)) return null;
  const sure = reading.rounds
    .flatMap(({ strokes }) => strokes)
    .filter(({ confidence }) => confidence >= SURE);
  const due = reading.rounds.reduce((sum, round) => sum + round.due.length, 0);
  if (sure.length < FEW_SHARE * due) return [nobody(known)];
  return known.kind === 'audio' ? [{ what: 'too-little-heard', strength: 1 }] : null;
}

const INSTEAD: ReadonlySet<Finding['what']> = new Set([
  'other-exercise',
  'shifted',
  'straight-feel',
  'wrong-voice',
]);
