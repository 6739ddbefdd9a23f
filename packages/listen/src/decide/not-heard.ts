/**
 * What the recording cannot tell, and what its figures rest on.
 *
 * Conventions: a voice that is hard to tell in this recording is named, so that its misses are read with care.
 */
import type { Bpm, Unheard, Voice } from '@shedbook/core';
import { isTap } from '../align/brushed.ts';
import type { Evidence } from './evidence.ts';
import type { Place } from './places.ts';
import { FEWEST_SURE } from './plays.ts';
import type { HeardDecision } from './strokes.ts';

/** What is looked at. */
export interface NotHeardInput {
  readonly evidence: readonly Evidence[];
  readonly decision: HeardDecision;
  /** Of what is reported on. */
  readonly places: readonly Place[];
  /** The same of all that it is told by, in the report of a bar those before it too. */
  readonly learntFrom: readonly Place[];
  /** Quarter notes a minute that were asked. */
  readonly askedBpm: Bpm;
  /** Quarter notes a minute that were played. */
  readonly bpm: Bpm;
  /** 0 to 1. */
  readonly confidence: number;
}

/**
 * Share of a voice's strokes that may be wrong before its figures are called a guess. It is counted from evidence round 0 and
 * says nothing of a voice whose places hardly mix with others: on takes of dev's kit 0.06 of the places of such voices were
 * decided wrongly, of the rest that were called a guess 0.13, and 0.29 where nobody can say whether the limb plays.
 */
const BLURRED = 0.3;
/** A tempo this far from the asked one is said: 8 %. */
const TEMPO_OFF = 0.08;
/** Under this confidence only part of the exercise was recognised. */
const PARTLY = 0.5;

/** The tempo, where it is clearly not the one that was asked. Quarter notes a minute. */
export function otherTempo(bpm: Bpm, askedBpm: Bpm): readonly Unheard[] {
  return Math.abs(Math.log(bpm / askedBpm)) > TEMPO_OFF ? [{ reason: 'other-tempo', bpm, askedBpm }] : [];
}

const isBrushed = ({ expected }: Place) => isTap(expected);

function unheardVoice(voice: Voice, doubt: number, input: NotHeardInput): readonly Unheard[] {
  const places = input.places.filter((place) => place.expected.voice === voice);
  if (places.length === 0) return [];
  const playing = input.decision.playing.get(voice);
  const isHeard = input.decision.strokes.some((stroke) => stroke.voice === voice && stroke.place);
  // an accent of two places under a crash is lost as easily as left out
  const count = input.learntFrom.filter(({ expected }) => expected.voice === voice).length;
  const isKnown = playing !== 'perhaps' && count >= FEWEST_SURE;
  const covered = (input.decision.covered ?? []).filter((place) => place.expected.voice === voice).length;
  if (!isHeard && covered === places.length)
    return places.every(isBrushed) ? [{ reason: 'hard-to-tell', voice }] : [];
  if (!isHeard) return [{ reason: isKnown ? 'not-heard' : 'hard-to-tell', voice }];
  const isBlurred = doubt > BLURRED && !input.decision.clear.has(voice);
  return playing !== 'yes' || isBlurred ? [{ reason: 'hard-to-tell', voice }] : [];
}

/** What cannot be told, but for what lies under other strokes: voices first, then what holds for the whole take. */
export function unheardOf(input: NotHeardInput): readonly Unheard[] {
  return [
    ...input.evidence.flatMap(({ voice, doubt }) => unheardVoice(voice, doubt, input)),
    ...otherTempo(input.bpm, input.askedBpm),
    ...(input.confidence < PARTLY ? [{ reason: 'partly-recognised' } as const] : []),
  ];
}
