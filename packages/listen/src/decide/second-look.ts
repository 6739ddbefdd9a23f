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
import type { HeardEvent } from '../detect/events.ts';
import { runLayer } from '../network/layer.ts';
import {
  DESCRIPTION,
  FACTS,
  HEARD_COUNT,
  HIDDEN_1,
  HIDDEN_2,
  type SecondLookWeights,
} from '../network/network.ts';
import { sigmoid } from './logit.ts';

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

/** Means of the events with and without one voice, and how far each event is from them. */
interface Sides {
  /** How much nearer an event is to the mean with the voice than to the one without, as mean squared distance. */
  readonly nearer: (event: HeardEvent) => number;
  /** How far the two means are apart. */
  readonly apart: number;
  /** Weight of the events with the voice. */
  readonly count: number;
}

/** Squared distance to a mean over the dimensions. */
function farFrom(event: HeardEvent, mean: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < DESCRIPTION; k += 1) sum += (event.description[k]! - mean[k]!) ** 2;
  return sum / DESCRIPTION;
}

function meanOf(
  events: readonly HeardEvent[],
  weightOf: (event: number) => number,
  prior: Float64Array,
): { readonly mean: Float64Array; readonly count: number } {
  const mean = prior.map((value) => PRIOR * value);
  let count = 0;
  events.forEach((event, e) => {
    const weight = weightOf(e);
    count += weight;
    for (let k = 0; k < DESCRIPTION; k += 1) mean[k] = mean[k]! + weight * event.description[k]!;
  });
  return { mean: mean.map((value) => value / (count + PRIOR)), count };
}

/** The learnt means that count before anything was heard. */
interface Priors {
  readonly yes: Float64Array;
  readonly no: Float64Array;
}

function sidesOf(
  events: readonly HeardEvent[],
  yes: (event: number) => number,
  no: (event: number) => number,
  priors: Priors,
): Sides {
  const a = meanOf(events, yes, priors.yes);
  const b = meanOf(events, no, priors.no);
  let apart = 0;
  for (let k = 0; k < DESCRIPTION; k += 1) apart += (a.mean[k]! - b.mean[k]!) ** 2 / DESCRIPTION;
  const nearer = (event: HeardEvent) => farFrom(event, b.mean) - farFrom(event, a.mean);
  return { nearer, apart, count: a.count };
}

const some = (count: number): number => Math.log1p(Math.min(MOST, count));

/** What is judged anew; the rest is left at the first look's. */
export interface Scope {
  /** The first event; 0 when left out. */
  readonly from?: number;
  /** Indices of the voices; all when left out. */
  readonly voices?: readonly number[];
}

const EVERY_VOICE = Array.from({ length: HEARD_COUNT }, (_, voice) => voice);

/** Presence of every voice at every event, judged with all of them in mind. */
export function hearAgain(
  events: readonly HeardEvent[],
  claim: Claim | null,
  weights: SecondLookWeights,
  { from = 0, voices = EVERY_VOICE }: Scope = {},
): Float64Array {
  const total = events.length * HEARD_COUNT;
  const logits = new Float64Array(total);
  const near = claim?.near ?? new Float64Array(total);
  events.forEach(({ presence }, e) => {
    for (let v = 0; v < HEARD_COUNT; v += 1) logits[e * HEARD_COUNT + v] = clampLogit(presence[v]!);
  });
  const again = logits.slice();
  const rows = inputRows(events, logits, near, from);
  for (const voice of voices) {
    const facts = voiceFacts(events, { logits, near, claim, voice, weights });
    const hidden = hiddenRows(rows, voice, weights);
    for (let e = from; e < events.length; e += 1) {
      const at = e * HEARD_COUNT + voice;
      again[at] = logits[at]! + change(facts(e), hidden, (e - from) * HIDDEN_1, weights);
    }
  }
  return again;
}

/** Numbers in a row of inputs. */
const WIDTH = 2 * HEARD_COUNT + DESCRIPTION;

/** The logits, claims and description of each event from one on. */
function inputRows(
  events: readonly HeardEvent[],
  logits: Float64Array,
  near: Float64Array,
  from: number,
): Float64Array {
  const rows = new Float64Array((events.length - from) * WIDTH);
  for (let e = from; e < events.length; e += 1) {
    const to = (e - from) * WIDTH;
    for (let v = 0; v < HEARD_COUNT; v += 1) {
      rows[to + v] = logits[e * HEARD_COUNT + v]! / LOGIT_UNIT;
      rows[to + HEARD_COUNT + v] = near[e * HEARD_COUNT + v]!;
    }
    rows.set(events[e]!.description, to + 2 * HEARD_COUNT);
  }
  return rows;
}

/** The voice's own part of the first hidden layer, before the facts are added. */
function hiddenRows(rows: Float64Array, voice: number, { ofVoice }: SecondLookWeights): Float64Array {
  const count = rows.length / WIDTH;
  const output = new Float64Array(count * HIDDEN_1);
  runLayer(ofVoice[voice]!, {
    input: rows,
    inputAt: 0,
    step: WIDTH,
    count,
    output,
    outputAt: 0,
    outputStep: HIDDEN_1,
    rectify: false,
  });
  return output;
}

interface Look {
  readonly logits: Float64Array;
  readonly near: Float64Array;
  readonly voice: number;
  readonly weights: SecondLookWeights;
}

/** What is known of one voice at an event, in the order in which training had it. */
function voiceFacts(
  events: readonly HeardEvent[],
  look: Look & { readonly claim: Claim | null },
): (event: number) => Float64Array {
  const { logits, near, voice, weights, claim } = look;
  const count = Math.max(1, events.length);
  const logit = (e: number) => logits[e * HEARD_COUNT + voice]!;
  const claimed = (e: number) => near[e * HEARD_COUNT + voice]!;
  const sure = events.map((_, e) => sigmoid(logit(e)));
  const priors = {
    yes: weights.means.subarray(voice * DESCRIPTION, (voice + 1) * DESCRIPTION),
    no: weights.means.subarray((HEARD_COUNT + voice) * DESCRIPTION, (HEARD_COUNT + voice + 1) * DESCRIPTION),
  };
  const own = sidesOf(
    events,
    (e) => sure[e]! ** 2,
    (e) => (1 - sure[e]!) ** 2,
    priors,
  );
  const told = sidesOf(
    events,
    (e) => claimed(e) * (sure[e]! + 0.05),
    (e) => (1 - claimed(e)) * (1.05 - sure[e]!),
    priors,
  );
  let [mean, highest, heard, asked, both] = [0, -LIMIT, 0, 0, 0];
  for (let e = 0; e < events.length; e += 1) {
    mean += logit(e) / count;
    highest = Math.max(highest, logit(e));
    heard += sure[e]!;
    asked += claimed(e);
    both += sure[e]! * claimed(e);
  }
  const facts = new Float64Array(FACTS);
  return (e) => {
    facts[0] = logit(e) / LOGIT_UNIT;
    facts[1] = mean / LOGIT_UNIT;
    facts[2] = highest / LOGIT_UNIT;
    facts[3] = own.nearer(events[e]!);
    facts[4] = own.apart;
    facts[5] = some(own.count);
    facts[6] = claimed(e);
    facts[7] = claim ? 1 : 0;
    facts[8] = claim ? claim.expected[voice]! : 0;
    facts[9] = told.nearer(events[e]!);
    facts[10] = told.apart;
    facts[11] = both / (asked + 1);
    facts[12] = both / (heard + 1);
    facts[13] = some(asked);
    return facts;
  };
}

/** How much an event's logit changes, from the facts and the voice's own part of the first hidden layer. */
function change(
  facts: Float64Array,
  hidden: Float64Array,
  at: number,
  { shared, second, last }: SecondLookWeights,
): number {
  for (let h = 0; h < HIDDEN_1; h += 1) {
    let sum = hidden[at + h]!;
    for (let k = 0; k < FACTS; k += 1) sum += shared.weights[h * FACTS + k]! * facts[k]!;
    hidden[at + h] = Math.max(0, sum);
  }
  let result = last.bias[0]!;
  for (let h = 0; h < HIDDEN_2; h += 1) {
    let sum = second.bias[h]!;
    for (let k = 0; k < HIDDEN_1; k += 1) sum += second.weights[h * HIDDEN_1 + k]! * hidden[at + k]!;
    result += last.weights[h]! * Math.max(0, sum);
  }
  return result;
}
