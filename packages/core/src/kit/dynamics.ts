/**
 * One scale for every use of loudness: decibels relative to the lead voice, printed dynamics, MIDI velocity.
 *
 * Conventions: 0 dB is a plain stroke of the lead voice, printed forte and velocity 90.
 * Source: MusicXML 4.0, `dynamics` attribute: forte is velocity 90. The curve, amplitude ∝ velocity², is the
 * one of the DLS and SoundFont 2 specifications (40·log10(v/127) dB). The marks are equal steps of our own:
 * there is no standard, only that they are in order.
 */
import { LeadDb } from '../units.ts';

/** MIDI velocity of a plain stroke of the lead voice. */
export const FORTE_VELOCITY = 90;

/** Added to the level of an accented stroke, in dB. */
export const ACCENT_DB = 6;

/** Added to the level of a ghost note, in dB. */
export const GHOST_DB = -12;

/** The force of a level in dB: how many times the velocity of a plain stroke. @example levelDbToForce(LeadDb(0)) // 1 */
export function levelDbToForce(levelDb: LeadDb): number {
  return 10 ** (levelDb / 40);
}

/** The level in dB of a force over 0. @example forceToLevelDb(1) // 0 */
export function forceToLevelDb(force: number): LeadDb {
  return LeadDb(40 * Math.log10(force));
}

/** MIDI velocity, 1–127, of a level in dB. */
export function levelDbToVelocity(levelDb: LeadDb): number {
  return Math.min(127, Math.max(1, Math.round(FORTE_VELOCITY * levelDbToForce(levelDb))));
}

/** Level in dB of a MIDI velocity, 1–127. */
export function velocityToLevelDb(velocity: number): LeadDb {
  return forceToLevelDb(velocity / FORTE_VELOCITY);
}

/** Printed dynamics, softest first. */
export const DYNAMIC_MARKS = ['ppp', 'pp', 'p', 'mp', 'mf', 'f', 'ff', 'fff'] as const;
/** A mark such as `mf`. */
export type DynamicMark = (typeof DYNAMIC_MARKS)[number];

/** Level of each printed dynamic, in dB. */
export const DYNAMIC_LEVEL_DB: Readonly<Record<DynamicMark, number>> = {
  ppp: -24,
  pp: -18,
  p: -13,
  mp: -8,
  mf: -4,
  f: 0,
  ff: 4,
  fff: 8,
};

/** The printed dynamic nearest to a level in dB. */
export function levelDbToDynamic(levelDb: LeadDb): DynamicMark {
  const distance = (mark: DynamicMark) => Math.abs(DYNAMIC_LEVEL_DB[mark] - levelDb);
  return DYNAMIC_MARKS.reduce((best, mark) => (distance(mark) < distance(best) ? mark : best));
}
