/**
 * Learning a kit from a line check: each limb plays alone, and what they sound like together is made from that.
 *
 * Conventions: seconds; evidence as logits. How far the check is to be believed is told by itself, voice by voice: slopes are
 * learnt from one half of its strokes and tried on the other, and where none helps there the voice is left as it is.
 */
import type { Voice } from '@shedbook/core';
import { joined, Resampler } from '@shedbook/signal';
import type { HeardEvent } from '../detect/events.ts';
import { EventExtractor } from '../detect/extract.ts';
import {
  evidenceBefore,
  FACTS_OF_EVENT,
  factsOf,
  type KnownKit,
  type VoiceSlopes,
  weightsMark,
} from '../detect/known-kit.ts';
import { type Recording, strokeNetwork } from '../listen.ts';
import { HEARD_VOICES, outputOf } from '../network/heard-voices.data.ts';
import type { StrokeNetwork } from '../network/network.ts';
import { ANALYSIS_RATE } from '../signal/bands.data.ts';
import { fitSlope, type LabelledRows, lossOf } from './logistic.ts';
import { type Mixed, mix } from './mixtures.ts';
import { type Alone, FEWEST_ALONE, limbsApart, strokesBetween } from './strokes-alone.ts';

/** From when to when a limb was to play alone. */
export interface Limb {
  readonly voice: Voice;
  readonly fromSeconds: number;
  readonly toSeconds: number;
}

/** A kit that was learnt, and the voices of which too few strokes were heard. */
export interface LearntKit extends Omit<KnownKit, 'name'> {
  readonly unheard: readonly Voice[];
}

/** An event so near to a stroke is of it; one farther off than the second is not; what lies between tells nothing. */
const NEAR_SECONDS = 0.03;
const FAR_SECONDS = 0.07;
/** Ridges that are tried: how much a check is believed. */
const RIDGES = [1, 3, 10, 30, 100];
/**
 * So much of what was learnt is added: music is no sum of what was played alone where a device turns itself up and down. Of takes
 * of three kits by phone and in a room the whole of it invented twice as many strokes as half of it.
 */
const SHARE = 0.5;
/** Steps of what is kept. */
const STEP = 1e-4;

function eventsIn(samples: Float32Array, network: StrokeNetwork, live: boolean): readonly HeardEvent[] {
  const extractor = new EventExtractor(network, { live });
  return [...extractor.push(samples), ...extractor.flush()];
}

/** The rows of events that tell of a voice, of one half of the check or of both. */
function rowsOf(
  events: readonly HeardEvent[],
  mixed: Mixed,
  voice: Voice,
  half: number | null,
): LabelledRows {
  const strokes = mixed.strokes.filter((one) => one.voice === voice).map(({ seconds }) => seconds);
  const told = events.flatMap((event) => {
    if (half !== null && mixed.halfAt(event.timeSeconds) !== half) return [];
    const distance = strokes.reduce((least, at) => Math.min(least, Math.abs(at - event.timeSeconds)), 1);
    return distance > NEAR_SECONDS && distance < FAR_SECONDS
      ? []
      : [{ event, isThere: distance <= NEAR_SECONDS }];
  });
  const facts = new Float64Array(told.length * FACTS_OF_EVENT);
  told.forEach(({ event }, row) => {
    facts.set(factsOf(event), row * FACTS_OF_EVENT);
  });
  return {
    width: FACTS_OF_EVENT,
    facts,
    before: Float64Array.from(told, ({ event }) => evidenceBefore(event, outputOf(voice))),
    isThere: Uint8Array.from(told, ({ isThere }) => Number(isThere)),
  };
}

/** The slope for a voice, or null where none that one half teaches helps the other. */
function slopeFor(events: readonly HeardEvent[], mixed: Mixed, voice: Voice): readonly number[] | null {
  const [first, second] = [0, 1].map((half) => rowsOf(events, mixed, voice, half)) as [
    LabelledRows,
    LabelledRows,
  ];
  const nothing = new Float64Array(FACTS_OF_EVENT);
  let least = lossOf(first, nothing) + lossOf(second, nothing);
  let best: number | null = null;
  for (const ridge of RIDGES) {
    const loss = lossOf(second, fitSlope(first, ridge)) + lossOf(first, fitSlope(second, ridge));
    if (loss >= least) continue;
    least = loss;
    best = ridge;
  }
  if (best === null) return null;
  const slope = fitSlope(rowsOf(events, mixed, voice, null), best);
  return Array.from(slope, (value) => Math.round((SHARE * value) / STEP) * STEP);
}

function samplesOf({ samples, sampleRateHz }: Recording): Float32Array {
  const resampler = new Resampler(sampleRateHz, ANALYSIS_RATE);
  return joined([resampler.push(samples), resampler.flush()]);
}

function slopesFor(
  samples: Float32Array,
  alone: readonly Alone[],
  network: StrokeNetwork,
): KnownKit['slopes'] {
  const mixed = mix(samples, alone);
  const [patient, quick] = [false, true].map((live) => eventsIn(mixed.samples, network, live));
  const nothing = Array.from({ length: FACTS_OF_EVENT }, () => 0);
  const slopes = alone.flatMap(({ voice }): (readonly [string, VoiceSlopes])[] => {
    const found = [patient!, quick!].map((events) => slopeFor(events, mixed, voice));
    if (found.every((slope) => slope === null)) return [];
    return [[HEARD_VOICES[outputOf(voice)]!, { patient: found[0] ?? nothing, quick: found[1] ?? nothing }]];
  });
  return Object.fromEntries(slopes);
}

function learn(
  samples: Float32Array,
  events: readonly HeardEvent[],
  limbs: readonly Limb[],
  network: StrokeNetwork,
): LearntKit {
  const all = limbs.map(({ voice, fromSeconds, toSeconds }) => ({
    voice,
    strokes: strokesBetween(events, fromSeconds, toSeconds),
  }));
  const isEnough = ({ strokes }: Alone) => strokes.length >= FEWEST_ALONE;
  const alone = all.filter(isEnough);
  return {
    slopes: alone.length < 2 ? {} : slopesFor(samples, alone, network),
    weights: weightsMark(),
    unheard: all.filter((one) => !isEnough(one)).map(({ voice }) => voice),
  };
}

/** Learns a kit from a recording in which limbs play alone at known times. */
export function learnKit(
  check: Recording,
  limbs: readonly Limb[],
  network: StrokeNetwork = strokeNetwork(),
): LearntKit {
  const samples = samplesOf(check);
  return learn(samples, eventsIn(samples, network, false), limbs, network);
}

/**
 * Learns a kit from a recording in which limbs play one after another, with a rest between.
 * @returns null where they cannot be told apart
 */
export function learnKitInTurn(
  check: Recording,
  voices: readonly Voice[],
  network: StrokeNetwork = strokeNetwork(),
): LearntKit | null {
  const samples = samplesOf(check);
  const events = eventsIn(samples, network, false);
  const found = limbsApart(events, voices.length);
  if (!found) return null;
  return learn(
    samples,
    events,
    found.map((times, i) => ({ ...times, voice: voices[i]! })),
    network,
  );
}
