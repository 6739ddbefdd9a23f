/**
 * Hearing the take again as a whole: what each voice sounds like on this kit, in this room, and what is written.
 *
 * The first look judges every event by itself, as kits in general sound. The second describes each voice of this
 * take by the events that the first look was sure of (a mean with and one without the voice, in a space of 20
 * dimensions that was learnt), and by those where the score says the voice should be; from the distances to these
 * means, the first look and the score's claim it judges anew. It was trained on scores that were often wrong
 * (another exercise, a limb that stays out, strokes left out and added), so it has learnt how far a score is to be
 * believed: where the sound does not bear it out, hardly.
 *
 * Conventions: logits; rows of HEARD_COUNT voices, one row an event. Source: our own training,
 * internal/listen-lab/train.py (`second`); means of the sure as in semi-supervised learning of templates, after
 * D. Fitzgerald, "Automatic Drum Transcription and Source Separation", 2004 (from memory).
 */
import { sigmoid } from '@shedbook/signal';
import type { HeardEvent } from '../detect/events.ts';
import { HEARD_COUNT } from '../network/heard-voices.data.ts';
import { runDense } from '../network/layer.ts';
import { DESCRIPTION, FACTS, type SecondLookWeights } from '../network/network.ts';

/** What the score claims. */
export interface Claim {
  /** For each event and voice how near a written stroke is: 1 at it, 0.6 at 25 ms, 0 far from any. */
  readonly near: Float64Array;
  /** 1 for each voice that the score has. */
  readonly expected: Float64Array;
}

/** How fast a claim fades with the distance from the written place; as in training. */
const CLAIM_SECONDS = 0.025;

/** What the score claims of an event at a distance in seconds from the nearest written stroke of a voice. */
export function claimAt(distanceSeconds: number): number {
  return Math.exp(-((distanceSeconds / CLAIM_SECONDS) ** 2) / 2);
}

/** A prior mean counts as this many events. */
const PRIOR = 2;
/** Counts of events over this tell no more. */
const MOST = 16;
const LIMIT = 8;
const LOGIT_UNIT = 4;

function clampLogit(value: number): number {
  return Math.max(-LIMIT, Math.min(LIMIT, value));
}

/** Means of the events with and without one voice, and what they say of a description. */
interface Sides {
  /** How much nearer a description is to the mean with the voice: `at` and its products with `slope`. */
  readonly at: number;
  readonly slope: Float64Array;
  /** How far the two means are apart. */
  readonly apart: number;
  /** Weight of the events with the voice. */
  readonly count: number;
}

/** The learnt means that count before anything was heard. */
interface Priors {
  readonly yes: Float64Array;
  readonly no: Float64Array;
}

/** A mean description, and the weight of the events that it is of. */
interface Mean {
  readonly mean: Float64Array;
  readonly count: number;
}

/** Four weights an event: for a voice and against it by the first look alone, and both again as the score says. */
function weigh(sure: Float64Array, claimed: Float64Array): Float64Array {
  const weights = new Float64Array(4 * sure.length);
  for (let e = 0; e < sure.length; e += 1) {
    const p = sure[e]!;
    const c = claimed[e]!;
    weights[4 * e] = p ** 2;
    weights[4 * e + 1] = (1 - p) ** 2;
    weights[4 * e + 2] = c * (p + 0.05);
    weights[4 * e + 3] = (1 - c) * (1.05 - p);
  }
  return weights;
}

/** The mean descriptions by each of the four weights. */
function meansOf(
  descriptions: Float64Array,
  weights: Float64Array,
  { yes, no }: Priors,
): readonly [Mean, Mean, Mean, Mean] {
  const total = weights.length / 4;
  const countOf = (which: number) => {
    let count = 0;
    for (let e = 0; e < total; e += 1) count += weights[4 * e + which]!;
    return { mean: new Float64Array(DESCRIPTION), count };
  };
  const means = [countOf(0), countOf(1), countOf(2), countOf(3)] as const;
  for (let k = 0; k < DESCRIPTION; k += 1) {
    let s0 = PRIOR * yes[k]!;
    let s1 = PRIOR * no[k]!;
    let s2 = s0;
    let s3 = s1;
    for (let e = 0; e < total; e += 1) {
      const value = descriptions[k * total + e]!;
      s0 += weights[4 * e]! * value;
      s1 += weights[4 * e + 1]! * value;
      s2 += weights[4 * e + 2]! * value;
      s3 += weights[4 * e + 3]! * value;
    }
    means[0].mean[k] = s0 / (means[0].count + PRIOR);
    means[1].mean[k] = s1 / (means[1].count + PRIOR);
    means[2].mean[k] = s2 / (means[2].count + PRIOR);
    means[3].mean[k] = s3 / (means[3].count + PRIOR);
  }
  return means;
}

/**
 * Compares the mean with a voice to the one without.
 *
 * The mean squared distances of a description d to the means a and b differ by (b² − a² + 2d(a − b)) / DESCRIPTION,
 * which is a straight line, so that each event needs one pass over its description.
 */
function sidesOf(a: Mean, b: Mean): Sides {
  const slope = new Float64Array(DESCRIPTION);
  let [at, apart] = [0, 0];
  for (let k = 0; k < DESCRIPTION; k += 1) {
    const difference = a.mean[k]! - b.mean[k]!;
    slope[k] = (2 * difference) / DESCRIPTION;
    at -= (difference * (a.mean[k]! + b.mean[k]!)) / DESCRIPTION;
    apart += difference ** 2 / DESCRIPTION;
  }
  return { at, slope, apart, count: a.count };
}

function nearer({ at, slope }: Sides, descriptions: Float64Array, event: number): number {
  const total = descriptions.length / DESCRIPTION;
  let sum = at;
  for (let k = 0; k < DESCRIPTION; k += 1) sum += slope[k]! * descriptions[k * total + event]!;
  return sum;
}

const some = (count: number): number => Math.log1p(Math.min(MOST, count));

/** What is judged anew; the rest is left at the first look's. */
export interface Scope {
  /** Index of the first event; 0 when left out. */
  readonly from?: number;
  /** Indices of the voices; all when left out. */
  readonly voices?: readonly number[];
  /**
   * Training met takes of six seconds: what counts events is told as of a take with at most so many. As many as there are
   * when left out.
   */
  readonly events?: number;
}

const EVERY_VOICE = Array.from({ length: HEARD_COUNT }, (_, voice) => voice);

/** Presence of every voice at every event, judged with all of them in mind. */
export function hearAgain(
  events: readonly HeardEvent[],
  claim: Claim | null,
  weights: SecondLookWeights,
  { from = 0, voices = EVERY_VOICE, events: most = Number.POSITIVE_INFINITY }: Scope = {},
): Float64Array {
  const total = events.length * HEARD_COUNT;
  const logits = new Float64Array(total);
  const near = claim?.near ?? new Float64Array(total);
  events.forEach(({ presence }, e) => {
    for (let v = 0; v < HEARD_COUNT; v += 1) logits[e * HEARD_COUNT + v] = clampLogit(presence[v]!);
  });
  const descriptions = new Float64Array(events.length * DESCRIPTION);
  events.forEach(({ description }, e) => {
    for (let k = 0; k < DESCRIPTION; k += 1) descriptions[k * events.length + e] = description[k]!;
  });
  const again = logits.slice();
  const share = Math.min(1, most / events.length);
  const look = { logits, near, claim, descriptions, weights, from, share };
  const rows = inputRows(look);
  for (const voice of voices) {
    writeFacts(rows, voice, look);
    const hidden = runDense(weights.second, runDense(weights.first[voice]!, rows, true), true);
    const changes = runDense(weights.last, hidden, false);
    for (let e = from; e < events.length; e += 1) {
      const at = e * HEARD_COUNT + voice;
      again[at] = logits[at]! + changes[e - from]!;
    }
  }
  return again;
}

/** What the take shows and the score claims. */
interface Look {
  readonly logits: Float64Array;
  readonly near: Float64Array;
  readonly claim: Claim | null;
  /** One number an event, for each dimension in turn. */
  readonly descriptions: Float64Array;
  readonly weights: SecondLookWeights;
  /** The first event that is judged. */
  readonly from: number;
  /** Share of the events that counts. */
  readonly share: number;
}

/** Numbers in a row of inputs: logits, claims and description of the event, then the facts of one voice. */
const WIDTH = 2 * HEARD_COUNT + DESCRIPTION + FACTS;

/** The rows of the events that are judged, the facts still 0. */
function inputRows({ logits, near, descriptions, from }: Look): Float64Array {
  const total = logits.length / HEARD_COUNT;
  const rows = new Float64Array((total - from) * WIDTH);
  for (let e = from; e < total; e += 1) {
    const to = (e - from) * WIDTH;
    for (let v = 0; v < HEARD_COUNT; v += 1) {
      rows[to + v] = logits[e * HEARD_COUNT + v]! / LOGIT_UNIT;
      rows[to + HEARD_COUNT + v] = near[e * HEARD_COUNT + v]!;
    }
    for (let k = 0; k < DESCRIPTION; k += 1) {
      rows[to + 2 * HEARD_COUNT + k] = descriptions[k * total + e]!;
    }
  }
  return rows;
}

/** Writes what is known of one voice at each event into its row, in the order in which training had it. */
function writeFacts(rows: Float64Array, voice: number, look: Look): void {
  const { logits, near, claim, descriptions, weights, from, share } = look;
  const logit = columnOf(logits, voice);
  const claimed = columnOf(near, voice);
  const sure = logit.map(sigmoid);
  const meanAt = (index: number) => weights.means.subarray(index * DESCRIPTION, (index + 1) * DESCRIPTION);
  const priors = { yes: meanAt(voice), no: meanAt(HEARD_COUNT + voice) };
  const means = meansOf(descriptions, weigh(sure, claimed), priors);
  const own = sidesOf(means[0], means[1]);
  const told = sidesOf(means[2], means[3]);
  let [mean, highest, heard, asked, both] = [0, -LIMIT, 0, 0, 0];
  for (let e = 0; e < logit.length; e += 1) {
    mean += logit[e]! / logit.length;
    highest = Math.max(highest, logit[e]!);
    heard += share * sure[e]!;
    asked += share * claimed[e]!;
    both += share * sure[e]! * claimed[e]!;
  }
  for (let e = from; e < logit.length; e += 1) {
    const at = (e - from + 1) * WIDTH - FACTS;
    rows[at] = logit[e]! / LOGIT_UNIT;
    rows[at + 1] = mean / LOGIT_UNIT;
    rows[at + 2] = highest / LOGIT_UNIT;
    rows[at + 3] = nearer(own, descriptions, e);
    rows[at + 4] = own.apart;
    rows[at + 5] = some(share * own.count);
    rows[at + 6] = claimed[e]!;
    rows[at + 7] = claim ? 1 : 0;
    rows[at + 8] = claim ? claim.expected[voice]! : 0;
    rows[at + 9] = nearer(told, descriptions, e);
    rows[at + 10] = told.apart;
    rows[at + 11] = both / (asked + 1);
    rows[at + 12] = both / (heard + 1);
    rows[at + 13] = some(asked);
  }
}

/** One voice's number at each event. @param voice its index */
export function columnOf(rows: Float64Array, voice: number): Float64Array {
  const column = new Float64Array(rows.length / HEARD_COUNT);
  for (let e = 0; e < column.length; e += 1) column[e] = rows[e * HEARD_COUNT + voice]!;
  return column;
}
