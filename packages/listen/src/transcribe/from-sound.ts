/** Writing down a recording: what the sound alone tells first, then the same with what was found in mind. */

import { hearFreely } from '../decide/evidence.ts';
import type { HeardEvent } from '../detect/events.ts';
import type { StrokeNetwork } from '../network/network.ts';
import { hearAsWritten } from './again.ts';
import { strokesOf } from './sound.ts';
import { fromTheCount } from './struck.ts';
import { findBars, type Known, type Transcribed, writeDown } from './transcribe.ts';

/** How often a take is heard again with what was found in mind. */
const ROUNDS = 2;

/**
 * So many events count: a take is longer than those of training, and with all that are in it voices were believed that
 * nobody played (of bars of a voice 0.53 were right so on takes of dev's kit, and 0.46 where all counted).
 */
const COUNTED = 400;

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
  let transcript = writeDown(strokes, found);
  for (let round = 0; round < ROUNDS; round += 1)
    transcript = writeDown(hearAsWritten({ events, free, network }, transcript), found);
  return { transcript, refusal: null };
}
