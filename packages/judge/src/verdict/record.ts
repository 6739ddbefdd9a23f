/**
 * What a practice log keeps of a round: its verdict by the names that logs have, and the faults that can be counted.
 *
 * Conventions: a round that was not judged leaves no fault behind, nor does one of another piece of music, nor a bar that
 * was not gone through: no limb did it.
 */
import type { FaultKind, LoopFault, LoopRecord, LoopVerdict, Voice } from '@shedbook/core';
import type { JudgedRound } from '../judge.ts';
import type { About, Verdict, VerdictName, What } from './verdict.ts';

/** The name of a verdict in a log. */
export const LOOP_VERDICT: Readonly<Record<VerdictName, LoopVerdict>> = {
  clean: 'clean',
  nearly: 'loose',
  'not yet': 'stumble',
  'not judged': 'unheard',
};

const KINDS: Readonly<Partial<Record<What, FaultKind>>> = {
  missing: 'missed',
  extra: 'extra',
  early: 'early',
  late: 'late',
  loud: 'loud',
  soft: 'quiet',
  slow: 'slow',
  fast: 'fast',
};

function amountOf({ ms, db, percent }: About): number {
  return Math.abs(ms ?? db ?? percent ?? 1);
}

function faultsOf(about: About): readonly LoopFault[] {
  const kind = KINDS[about.what];
  if (!kind || (kind === 'missed' && !about.voice)) return [];
  const fault = { kind, voice: about.voice ?? null, amount: amountOf(about) };
  if (!about.places || about.places.length === 0) return [{ ...fault, place: null }];
  return about.places.map((place) => ({ ...fault, place }));
}

/** The faults of a verdict, as logs count them. */
export function faultsIn({ is, about }: Verdict): readonly LoopFault[] {
  return is === 'not judged' ? [] : about.flatMap(faultsOf);
}

/** Voices that could not be told, so that nothing is known of them. */
function unheardIn({ about }: Verdict): readonly Voice[] {
  const isUntold = ({ what }: About) => what === 'too-little-heard' || what === 'only-loudspeaker';
  return about.filter(isUntold).flatMap(({ voice }) => voice ?? []);
}

/** What a log keeps of a round. */
export function recordRound({ bpm, verdict }: JudgedRound): LoopRecord {
  const unheard = unheardIn(verdict);
  const record = { bpm, verdict: LOOP_VERDICT[verdict.is], faults: faultsIn(verdict) };
  return unheard.length > 0 ? { ...record, unheard } : record;
}
