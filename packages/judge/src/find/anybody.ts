/** Whether anybody played: nobody's sounds are no verdict on the playing. */
import { groupBy, type Voice } from '@shedbook/core';
import { median } from '@shedbook/signal';
import { type HeardRound, latenessIn, wholeMatch } from '../take/hearing.ts';
import { type Match, type Pair, surfaceOf } from '../take/match.ts';
import { spreadOf } from '../take/own-pulse.ts';
import type { Finding } from '../verdict/finding.ts';
import { atLeast } from './chance.ts';
import type { Known } from './known.ts';
import type { Reading } from './readings.ts';
import { SURE } from './strokes.ts';

/** Fewest strokes by which a voice is known to be played, and the share of them that must be written ones. */
const FEWEST = 4;
const MOSTLY = 0.6;
/** Strokes that scatter over more than this share of their reach are there by chance. */
const BY_CHANCE = 0.45;
/** A sound this close, as a share of a stroke's reach, is no accident where many are. */
const CLOSE = 1 / 3;
/** Lateness that is tried before the best is taken, and how unlikely the best of all tries must be for sounds at any time. */
const LATENESSES = 60;
const UNLIKELY = 0.01;
/** Fewer sounds than this share of what was due, none of them in time, are nobody's playing. */
const FEW_SHARE = 0.3;

/** How late each pair is beside the lateness of its round. */
function latenessBeside(
  rounds: readonly HeardRound[],
): readonly { readonly pair: Pair; readonly late: number }[] {
  return rounds.flatMap((round) => {
    const at = latenessIn(round);
    return round.match.pairs.map((pair) => ({ pair, late: pair.lateSeconds - at(pair.due) }));
  });
}

/** Whether a voice is played where it is written, and not only struck there by chance. */
function isPlayed(voice: Voice, match: Match, rounds: readonly HeardRound[]): boolean {
  const own = match.pairs.filter(({ due }) => due.voice === voice);
  const extra = match.extra.filter((stroke) => surfaceOf(stroke.voice) === surfaceOf(voice)).length;
  const due = own.length + match.missed.filter((one) => one.voice === voice).length;
  if (own.length < Math.min(FEWEST, due) || own.length < MOSTLY * (own.length + extra)) return false;
  const late = latenessBeside(rounds).flatMap((one) => (one.pair.due.voice === voice ? [one.late] : []));
  return spreadOf(late) < BY_CHANCE * median(own.map((pair) => pair.due.reachSeconds));
}

/** Sounds of one surface: how many, how many of them close to what was due, and how likely that is for one of them. */
interface Sounds {
  readonly all: number;
  readonly close: number;
  readonly chance: number;
}

function soundsOf(rounds: readonly HeardRound[]): readonly Sounds[] {
  const seconds = rounds.reduce(
    (sum, { bars }) => sum + bars.reduce((own, { barSeconds }) => own + barSeconds, 0),
    0,
  );
  const due = groupBy(
    rounds.flatMap((round) => round.due),
    ({ voice }) => surfaceOf(voice),
  );
  const pairs = latenessBeside(rounds);
  const strokes = rounds.flatMap((round) => round.strokes);
  return [...due].map(([surface, own]) => ({
    all: strokes.filter(({ voice }) => surfaceOf(voice) === surface).length,
    close: pairs.filter(
      ({ pair, late }) =>
        surfaceOf(pair.due.voice) === surface && Math.abs(late) <= CLOSE * pair.due.reachSeconds,
    ).length,
    chance: Math.min(1, own.reduce((sum, { reachSeconds }) => sum + 2 * CLOSE * reachSeconds, 0) / seconds),
  }));
}

/**
 * Whether what a microphone heard is so close to what was due that sounds at any time are not: of one surface, or of all
 * together. The lateness was searched for, so that each try counts (Bonferroni).
 */
function isNoChance(rounds: readonly HeardRound[], isSomebody: boolean): boolean {
  const each = soundsOf(rounds);
  const all = each.reduce((sum, one) => sum + one.all, 0);
  const together: Sounds = {
    all,
    close: each.reduce((sum, one) => sum + one.close, 0),
    chance: each.reduce((sum, one) => sum + one.all * one.chance, 0) / Math.max(1, all),
  };
  // how late somebody is that plays in other rounds is known from there
  const tries = (isSomebody ? 1 : LATENESSES) * (each.length + 1);
  return [...each, together].some(
    (one) => one.close > 0 && tries * atLeast(one.close, one.all, one.chance) < UNLIKELY,
  );
}

function isAnyPlayed(rounds: readonly HeardRound[], { kind, isSomebody }: Known): boolean {
  const match = wholeMatch(rounds);
  const voices = new Set(match.pairs.map(({ due }) => due.voice));
  const isAny = [...voices].some((voice) => isPlayed(voice, match, rounds));
  return isAny && (kind === 'midi' || isNoChance(rounds, isSomebody));
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
  if (isOther || isAnyPlayed(reading.rounds, known)) return null;
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
  'swung-feel',
  'wrong-voice',
]);
