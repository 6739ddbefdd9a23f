/**
 * Where the strokes of one round of a take stand on the page of its exercise: at the head that each belongs to, moved
 * by its lateness.
 *
 * Conventions: units of the drawing, ten a staff space; lateness in ms, positive is late and to the right; bars from 0.
 */
import {
  type Bpm,
  type FullReport,
  isVoice,
  type Meter,
  type Voice,
  type WrittenPlace,
} from '@shedbook/core';
import { LATENESS_DRAWN, type Program } from '@shedbook/playing';
import type { PlayedTake, TakeLoop } from '@shedbook/stand/takes';
import { beatEdges, QUARTER_WIDTH, slotX } from '../notation/layout.ts';

/** Farthest that a head is moved: beyond, it would look like another note. */
export const FARTHEST = 28;

/** A stroke this long before the first bar line belongs to the round already, in seconds. */
const EARLY_SECONDS = 0.15;

/** A stroke on the page. */
export interface HeardPlace {
  readonly bar: number;
  readonly voice: Voice;
  /** Where it is written: tenths of a staff space from the left end of its bar. */
  readonly x: number;
  /** How far it is drawn from there, in tenths of a staff space; null where it did not come. */
  readonly dx: number | null;
}

/** How far a head is moved at a tempo. */
function moved(offsetMs: number, bpm: Bpm): number {
  const dx = (offsetMs / 1000) * (bpm / 60) * QUARTER_WIDTH * LATENESS_DRAWN;
  return Math.max(-FARTHEST, Math.min(FARTHEST, dx));
}

/** Where a written stroke stands; null where the page does not show it. */
function placeOf(
  program: Program,
  meter: Meter,
  voice: Voice,
  { bar, beat, slot }: WrittenPlace,
): Pick<HeardPlace, 'bar' | 'x'> | null {
  const played = program.bars[(bar - 1) % program.bars.length];
  const stroke = program.strokes.find(
    (each) =>
      each.voice === voice &&
      each.role === 'pattern' &&
      each.written.bar === played?.bar &&
      each.written.beat === beat &&
      each.written.slot === slot,
  );
  if (!stroke || stroke.patternBar === null) return null;
  const x = slotX(beatEdges(meter), beat - 1, (slot - 1) / stroke.slots);
  return { bar: stroke.patternBar, x };
}

/** What is drawn of a round: every stroke of the exercise that was heard in it, and every one that did not come. */
export function heardPlaces(
  { report, latencySeconds }: Pick<PlayedTake, 'report' | 'latencySeconds'>,
  { startSeconds, endSeconds, bpm }: TakeLoop,
  program: Program,
  meter: Meter,
): readonly HeardPlace[] {
  if (!report) return [];
  const isIn = (seconds: number) => {
    const at = seconds - latencySeconds + EARLY_SECONDS;
    return at >= startSeconds && at < endSeconds;
  };
  const struck = report.strokes.flatMap(({ timeSeconds, voice, written, offsetMs }): HeardPlace[] => {
    if (!written || offsetMs === null || !isVoice(voice) || !isIn(timeSeconds)) return [];
    const place = placeOf(program, meter, voice, written);
    return place ? [{ ...place, voice, dx: moved(offsetMs, bpm) }] : [];
  });
  const place = (voice: Voice, at: WrittenPlace) => placeOf(program, meter, voice, at);
  return [...struck, ...missedPlaces(report, isIn, place)];
}

function missedPlaces(
  report: FullReport,
  isIn: (seconds: number) => boolean,
  place: (voice: Voice, at: WrittenPlace) => Pick<HeardPlace, 'bar' | 'x'> | null,
): readonly HeardPlace[] {
  return report.missed.flatMap(({ voice, ...at }, index): HeardPlace[] => {
    const seconds = report.missedSeconds[index];
    if (seconds === undefined || !isVoice(voice) || !isIn(seconds)) return [];
    const found = place(voice, at);
    return found ? [{ ...found, voice, dx: null }] : [];
  });
}
