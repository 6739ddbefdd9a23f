/** Figures of what is more than a stroke: grace notes before it, and the bounces of a roll after it. */
import type { Articulation } from './voice.ts';

/** Grace notes before a stroke, by how it is struck. */
export const GRACE_NOTES: Readonly<Record<Articulation, 0 | 1 | 2>> = {
  normal: 0,
  bell: 0,
  splash: 0,
  buzz: 0,
  tap: 0,
  sweep: 0,
  flam: 1,
  drag: 2,
};

/**
 * How long before its stroke each grace note falls, in seconds, first to last, by how many there are.
 * Source: common practice for what a flam and a drag are; the times and the level are ours, no standard gives any.
 */
export const GRACES_BEFORE_SECONDS = { 0: [], 1: [0.028], 2: [0.085, 0.042] } as const;

/** Level of a grace note beside its stroke, in dB. */
export const GRACE_DB = -9;

/**
 * Bounces of a roll: from one to the next in seconds, and the level of each beside the stroke that it began with, in dB.
 * Source: common practice for what a buzz roll is, many bounces of a pressed stick; the figures are ours.
 */
export const BOUNCES = { everySeconds: 0.03, levelDb: -12 } as const;
