/**
 * Voices that a kit has by another name than their sound: known by what else is struck.
 *
 * Conventions: levels in dB on the source's own scale. Source: common practice; the bounds are ours.
 */
import type { Voice } from '@shedbook/core';
import { median } from '@shedbook/signal';
import type { StruckVoice } from './struck.ts';

/** Of the strokes of the hand on the hi-hat fewer closed ones than this share are none. */
const CLOSED = 0.1;
/** The hand keeps time on the hat where it plays so many times as often as the foot. */
const KEEPS = 3;
/** A crash is at least so much louder than the hi-hat foot, in dB. */
const OVER_THE_FOOT_DB = 3;

/** A hat that is open all the time is how this hat sounds closed: open is told beside closed. */
function withPlainHat(strokes: readonly StruckVoice[]): readonly StruckVoice[] {
  const count = (voice: Voice) => strokes.filter((one) => one.voice === voice).length;
  const [open, closed] = [count('hihat-open'), count('hihat')];
  if (open === 0 || closed >= CLOSED * (open + closed)) return strokes;
  return strokes.map((one) => (one.voice === 'hihat-open' ? { ...one, voice: 'hihat' } : one));
}

/** What sounds like a crash and is as soft as the hi-hat foot is a brush that begins to be drawn. */
function withoutSweeps(strokes: readonly StruckVoice[]): readonly StruckVoice[] {
  const levels = (voice: Voice) => strokes.filter((one) => one.voice === voice).map(({ levelDb }) => levelDb);
  const [crash, foot] = [levels('crash'), levels('hihat-foot')];
  if (foot.length === 0 || median(crash) >= median(foot) + OVER_THE_FOOT_DB) return strokes;
  return strokes.filter(({ voice }) => voice !== 'crash');
}

/** A hand that keeps time on closed hats leaves the foot nothing to close: what sounds like it there is the hat itself. */
function withoutIdleFoot(strokes: readonly StruckVoice[]): readonly StruckVoice[] {
  const count = (voice: Voice) => strokes.filter((one) => one.voice === voice).length;
  if (count('hihat-open') > 0 || count('hihat') < KEEPS * count('hihat-foot')) return strokes;
  return strokes.filter(({ voice }) => voice !== 'hihat-foot');
}

/** The strokes by the names that their kit has for them. */
export function settled(strokes: readonly StruckVoice[]): readonly StruckVoice[] {
  return withoutIdleFoot(withPlainHat(withoutSweeps(strokes)));
}
