/** Writing down a recording: what the sound alone tells first, then the same with what was found in mind. */

import { hearFreely } from '../decide/evidence.ts';
import type { HeardEvent } from '../detect/events.ts';
import { HEARD_COUNT, outputOf } from '../network/heard-voices.data.ts';
import type { StrokeNetwork } from '../network/network.ts';
import { hearAsWritten } from './again.ts';
import { type EvidenceAt, underOthers } from './kept-time.ts';
import { settled } from './settle.ts';
import { strokesOf } from './sound.ts';
import { fromTheCount, type StruckVoice } from './struck.ts';
import { findBars, inBarsOf, type Known, type Transcribed, writeDown } from './transcribe.ts';

/** How often a take is heard again with what was found in mind. */
const ROUNDS = 2;

/**
 * So many events count: a take is longer than those of training, and with all that are in it voices were believed that
 * nobody played (of bars of a voice 0.53 were right so on takes of dev's kit, and 0.46 where all counted).
 */
const COUNTED = 400;

/** An event within this of a moment tells of it. */
const NEAR_SECONDS = 0.03;

/** Writes down the events of a recording. */
export function transcribeEvents(
  events: readonly HeardEvent[],
  network: StrokeNetwork,
  known: Known,
): Transcribed {
  const free = hearFreely(events, network, COUNTED);
  const strokes = fromTheCount(strokesOf(events, free));
  if (strokes.length === 0) return { transcript: null, refusal: { fact: 'no-drums-followed' } };
  const found = findBars(strokes, known);
  if (!found) return { transcript: null, refusal: { fact: 'no-beat-followed' } };
  let heard = strokes;
  for (let round = 0; round < ROUNDS; round += 1)
    heard = hearAsWritten({ events, free, network }, writeDown(heard, found));
  const beats = found.explained.inBar;
  const assumed = underOthers(inBarsOf(heard, found), beats, evidenceIn(events, free));
  return { transcript: writeDown(settled(inOrder([...heard, ...assumed])), found), refusal: null };
}

function inOrder(strokes: readonly StruckVoice[]): readonly StruckVoice[] {
  return strokes.toSorted((a, b) => a.timeSeconds - b.timeSeconds);
}

/** What the sound says of a voice near a moment, by either look. */
function evidenceIn(events: readonly HeardEvent[], free: Float64Array): EvidenceAt {
  return (voice, seconds) => {
    const index = outputOf(voice);
    const near = events.flatMap(({ timeSeconds, presence }, e) =>
      Math.abs(timeSeconds - seconds) < NEAR_SECONDS
        ? [Math.max(presence[index]!, free[e * HEARD_COUNT + index]!)]
        : [],
    );
    return near.length > 0 ? Math.max(...near) : Number.NEGATIVE_INFINITY;
  };
}
