/**
 * The right rhythm on another drum: of a written voice that can hardly be told or stayed out, whether a voice that is
 * written nowhere sounds at its places and at no other.
 *
 * Conventions: evidence as logits; only what does not know the score speaks, since the score claims nothing of an
 * unwritten voice. Where it is found, its strokes are told as strokes too many and the written ones as missed: what
 * they were is for others to say.
 */
import type { Voice } from '@shedbook/core';
import { median, sigmoid } from '@shedbook/signal';
import type { HeardEvent } from '../detect/events.ts';
import { HEARD_VOICES, outputOf } from '../network/heard-voices.data.ts';
import { APART_SECONDS, candidatesOf } from './candidates.ts';
import { type Evidence, freeEvidence } from './evidence.ts';
import type { HeardStroke } from './heard-stroke.ts';
import { momentsFor, type WrittenMoment, writtenMoments } from './moments.ts';
import type { Place } from './places.ts';
import { type Moment, shareThere } from './plays.ts';
import type { HeardDecision } from './strokes.ts';

/**
 * The least mean share and the least median evidence of another drum where the written one stays out: of eight takes
 * with another drum each had 1.00 and 3.4, of those without none had a median over 0.
 */
const THERE = 0.9;
const CLEAR = 2;
/** Fewer written strokes tell nothing. */
const FEWEST = 3;
/** By so much must another drum sound more than the written one does there. */
const MORE = 2;
/** Its strokes are those this near to the written places. */
const NEAR_SECONDS = 0.08;

/** What is looked at. */
export interface InsteadInput {
  readonly events: readonly HeardEvent[];
  /** As by `hearFreely`. */
  readonly free: Float64Array;
  readonly evidence: readonly Evidence[];
  /** Of all voices, in order of time. */
  readonly places: readonly Place[];
}

/**
 * Ways of striking one thing that nobody calls another drum: a fast hand on some closed hats sounds like the foot that closes
 * them, and is one pair of plates.
 */
const ALIKE: readonly (readonly Voice[])[] = [
  ['snare', 'rimshot'],
  ['hihat', 'hihat-open', 'hihat-foot'],
];

function isAlike(one: Voice, other: Voice): boolean {
  return ALIKE.some((voices) => voices.includes(one) && voices.includes(other));
}

/** The voices that are written nowhere and are no other way to strike this one; a rim shot is told as the snare. */
function unwritten(voice: Voice, { evidence }: InsteadInput): readonly Voice[] {
  const written = new Set<string>(evidence.map((one) => one.voice));
  return HEARD_VOICES.filter(
    (other): other is Exclude<typeof other, 'click'> =>
      other !== 'click' && other !== 'rimshot' && !written.has(other),
  ).filter((other) => outputOf(other) !== outputOf(voice) && !isAlike(voice, other));
}

/** The median evidence of the sound alone where a voice is written. */
function middleOf(moments: readonly Moment[]): number {
  return median(moments.filter(({ isOwn }) => isOwn).map(({ free }) => free));
}

/** What is looked at for one voice after the other. */
interface Search {
  readonly written: readonly WrittenMoment[];
  /** What the sound alone says of the voices that are written nowhere. */
  readonly others: ReadonlyMap<Voice, Evidence>;
}

function searchIn(input: InsteadInput): Search {
  const { events, free, places, evidence } = input;
  const voices = new Set(evidence.flatMap(({ voice }) => unwritten(voice, input)));
  return {
    written: writtenMoments(events, places),
    others: new Map(freeEvidence(events, free, [...voices]).map((one) => [one.voice, one])),
  };
}

/** The drum that sounds where a voice is written, and nowhere else; null where none does. */
function drumInstead(one: Evidence, input: InsteadInput, { written, others }: Search): Evidence | null {
  let most = Math.max(CLEAR, MORE + middleOf(momentsFor(one, written)));
  let best: Evidence | null = null;
  for (const other of unwritten(one.voice, input)) {
    const evidence = others.get(other)!;
    const moments = momentsFor({ ...evidence, voice: one.voice }, written);
    const middle = middleOf(moments);
    const isAlone = moments.every(({ isOwn }) => isOwn) || shareThere(moments) >= THERE;
    if (middle < most || !isAlone) continue;
    most = middle;
    best = evidence;
  }
  return best;
}

function isNear(seconds: number, others: readonly { readonly timeSeconds: number }[]): boolean {
  return others.some(({ timeSeconds }) => Math.abs(timeSeconds - seconds) < APART_SECONDS);
}

function replaced(decision: HeardDecision, voice: Voice, struck: readonly HeardStroke[]): HeardDecision {
  const gone = new Set(
    decision.strokes.filter((stroke) => stroke.voice === voice && isNear(stroke.timeSeconds, struck)),
  );
  const strokes = [...decision.strokes.filter((stroke) => !gone.has(stroke)), ...struck];
  return {
    ...decision,
    strokes: strokes.toSorted((a, b) => a.timeSeconds - b.timeSeconds),
    missed: [...decision.missed, ...[...gone].flatMap(({ place }) => place ?? [])],
  };
}

/** The decision with what was struck instead of voices that stayed out. */
export function withInstead(decision: HeardDecision, input: InsteadInput): HeardDecision {
  let left = decision;
  const search = searchIn(input);
  for (const one of input.evidence) {
    const own = input.places.filter(({ expected }) => expected.voice === one.voice);
    const drum = own.length < FEWEST ? null : drumInstead(one, input, search);
    if (!drum) continue;
    const struck = candidatesOf(input.events, drum, 0).filter(({ timeSeconds }) =>
      own.some(({ likelySeconds }) => Math.abs(likelySeconds - timeSeconds) < NEAR_SECONDS),
    );
    left = replaced(
      left,
      one.voice,
      struck.map(({ timeSeconds, levelDb, evidence }) => ({
        ...{ voice: drum.voice, timeSeconds, levelDb, place: null, confidence: sigmoid(evidence) },
      })),
    );
  }
  return left;
}
