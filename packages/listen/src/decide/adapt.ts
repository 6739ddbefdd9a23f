/**
 * Learning the student's own kit from the take: which sound goes with which voice here.
 *
 * The network knows kits in general. Where the score says a voice should sound, and where not, gives labels,
 * mostly right; a ridge regression on the network's description of each event learns how that voice sounds on
 * this kit. It is cross-fitted: what is said of a bar comes from the other bars, so a stroke is never heard
 * because it was written there. A voice that the score predicts but no sound does gets no evidence from this.
 *
 * Conventions: evidence is a log-likelihood ratio (natural), stroke against no stroke of the voice at an event.
 */
import type { Voice } from '@shedbook/core';
import { EMBEDDING_STEP, type HeardEvent } from '../detect/events.ts';
import { EMBEDDING, HEARD_COUNT, HEARD_VOICES } from '../network/network.ts';
import { fitLogistic } from './logistic.ts';
import type { Place } from './places.ts';
import { addSample, combine, emptyMoments, type Moments, solveRidge } from './ridge.ts';

/** Evidence for one voice at every event. */
export interface Evidence {
  readonly voice: Voice;
  readonly logRatio: Float64Array;
  /** How well sound predicts where the voice is written: area under the curve, 0.5 to 1. */
  readonly separation: number;
}

const FOLDS = 4;
const PENALTY = 6;
const FEATURES = EMBEDDING + HEARD_COUNT + 1;
/** A written stroke belongs to an event at most this far from it. */
const REACH_SECONDS = 0.06;
const BLUR_SECONDS = 0.03;

function featuresOf(event: HeardEvent, into: Float64Array): void {
  for (let i = 0; i < EMBEDDING; i += 1) into[i] = event.embedding[i]! * EMBEDDING_STEP;
  for (let v = 0; v < HEARD_COUNT; v += 1)
    into[EMBEDDING + v] = Math.max(-8, Math.min(8, event.presence[v]!)) / 4;
  into[FEATURES - 1] = 1;
}

/** For each event: 1 where the voice is written, 0 where not, −1 where it cannot be said. */
export function labelEvents(
  events: readonly HeardEvent[],
  places: readonly Place[],
  voice: Voice,
): Int8Array {
  const labels = new Int8Array(events.length);
  const index = HEARD_VOICES.indexOf(voice);
  let from = 0;
  for (const place of places) {
    if (place.expected.voice !== voice) continue;
    const at = place.likelySeconds;
    while (from < events.length && events[from]!.timeSeconds < at - 0.2) from += 1;
    let best = -1;
    let bestScore = Number.NEGATIVE_INFINITY;
    for (let i = from; i < events.length && events[i]!.timeSeconds < at + 0.2; i += 1) {
      const event = events[i]!;
      const distance = Math.abs(event.timeSeconds + event.offsetMs[index]! / 1000 - at);
      if (Math.min(distance, Math.abs(event.timeSeconds - at)) > REACH_SECONDS) continue;
      const score = event.presence[index]! - (distance / 0.02) ** 2 / 2;
      if (score > bestScore) {
        bestScore = score;
        best = i;
      }
    }
    if (best < 0) continue;
    for (let i = from; i < events.length && events[i]!.timeSeconds < at + 0.2; i += 1) {
      if (Math.abs(events[i]!.timeSeconds - events[best]!.timeSeconds) < BLUR_SECONDS && labels[i] === 0)
        labels[i] = -1;
    }
    labels[best] = 1;
  }
  return labels;
}

/** Area under the curve of scores for positives over negatives. */
export function separationOf(scores: Float64Array, labels: Int8Array): number {
  const order = Array.from(scores.keys())
    .filter((i) => labels[i]! >= 0)
    .toSorted((a, b) => scores[a]! - scores[b]!);
  let positives = 0;
  let rankSum = 0;
  order.forEach((i, rank) => {
    if (labels[i] !== 1) return;
    positives += 1;
    rankSum += rank + 1;
  });
  const negatives = order.length - positives;
  if (positives === 0 || negatives === 0) return 0.5;
  return (rankSum - (positives * (positives + 1)) / 2) / (positives * negatives);
}

/** Cross-fitted ridge scores for each voice. */
function crossScores(
  events: readonly HeardEvent[],
  labels: readonly Int8Array[],
  folds: Uint8Array,
): readonly Float64Array[] {
  const row = new Float64Array(FEATURES);
  const parts: Moments[] = Array.from({ length: FOLDS }, () => emptyMoments(FEATURES, labels.length));
  events.forEach((event, i) => {
    featuresOf(event, row);
    const targets = labels.map((label) => (label[i] === 1 ? 1 : 0));
    addSample(parts[folds[i]!]!, row, targets);
  });
  const whole = parts.reduce((a, b) => combine(a, b, 1));
  const solved = parts.map((part) => solveRidge(combine(whole, part, -1), PENALTY));
  return labels.map((_, v) =>
    Float64Array.from(events, (event, i) => {
      featuresOf(event, row);
      const weights = solved[folds[i]!]![v]!;
      let sum = 0;
      for (let k = 0; k < FEATURES; k += 1) sum += weights[k]! * row[k]!;
      return sum;
    }),
  );
}

/** Evidence for each voice at each event. */
export function gatherEvidence(
  events: readonly HeardEvent[],
  places: readonly Place[],
  voices: readonly Voice[],
): readonly Evidence[] {
  const labels = voices.map((voice) => labelEvents(events, places, voice));
  const folds = foldsOf(events, places);
  const scores = crossScores(events, labels, folds);
  return voices.map((voice, v) => {
    const index = HEARD_VOICES.indexOf(voice);
    const rows: Float64Array[] = [];
    const truth: number[] = [];
    const known = labels[v]!;
    events.forEach((event, i) => {
      if (known[i]! < 0) return;
      rows.push(Float64Array.of(clampLogit(event.presence[index]!), 4 * (scores[v]![i]! - 0.5), 1));
      truth.push(known[i]!);
    });
    const positives = truth.reduce((a, b) => a + b, 0);
    const prior = Math.log((positives + 1) / (truth.length - positives + 1));
    const [a, b, c] = fitLogistic(rows, truth, { prior: [0.7, 0.5, 0], penalty: 4 }) as [
      number,
      number,
      number,
    ];
    const logRatio = Float64Array.from(events, (event, i) => {
      const logit =
        Math.max(0, a) * clampLogit(event.presence[index]!) + Math.max(0, b) * 4 * (scores[v]![i]! - 0.5) + c;
      return logit - prior;
    });
    return { voice, logRatio, separation: separationOf(logRatio, known) };
  });
}

function clampLogit(value: number): number {
  return Math.max(-7, Math.min(7, value));
}

/** Folds by bars of the take, so that neighbours in time help each other less. */
function foldsOf(events: readonly HeardEvent[], places: readonly Place[]): Uint8Array {
  const folds = new Uint8Array(events.length);
  let at = 0;
  events.forEach((event, i) => {
    while (at + 1 < places.length && places[at + 1]!.likelySeconds <= event.timeSeconds + 0.03) at += 1;
    folds[i] = (places[at]?.takeBar ?? 0) % FOLDS;
  });
  return folds;
}
