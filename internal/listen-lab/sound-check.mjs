/**
 * Prints what a sound check may be worth: how well voices are told in a take before and after the sound of its kit was
 * learnt from the first third of it (12 s at most), whose true strokes are given.
 *
 * Usage: node sound-check.mjs FOLDER...   (folders made by takes.py; build the packages first). ALONE=1 learns from
 * strokes with no other within 50 ms only, as where each limb plays alone.
 *
 * Told is meant of the sound alone: for each voice the share of pairs of moments, one with it and one with others only,
 * that its evidence orders rightly, and how many moments of each kind lie over 0. What is learnt is a ridge regression on
 * the description of each event and the evidence for all voices, both kinds of moment weighed alike; evidence is then
 * half of what it was and three times what the regression gives. The network is the one that learnt train alone.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Hertz } from '@shedbook/core';
import { ANALYSIS_RATE, EventExtractor, HEARD_VOICES, StrokeNetwork, unpackWeights } from '@shedbook/listen';
import { hearFreely } from '@shedbook/listen/lab';
import { Resampler } from '@shedbook/signal';
import { WEIGHTS } from './held-back.weights.mjs';
import { readWav } from './read-wav.mjs';

const network = new StrokeNetwork(unpackWeights(WEIGHTS));
const COUNT = HEARD_VOICES.length;
const NEAR_SECONDS = 0.03;
const RIDGE = 30;
const isAlone = process.env.ALONE === '1';

function eventsOf(file) {
  const samples = readWav(file);
  const resampler = new Resampler(Hertz(44_100), ANALYSIS_RATE);
  const extractor = new EventExtractor(network, { live: false });
  const events = [];
  for (let at = 0; at < samples.length; at += 65_536)
    events.push(...extractor.push(resampler.push(samples.subarray(at, at + 65_536))));
  events.push(...extractor.push(resampler.flush()), ...extractor.flush());
  return events.toSorted((a, b) => a.timeSeconds - b.timeSeconds);
}

/** Solves a symmetric positive system in place. */
function solve(matrix, right) {
  const size = right.length;
  for (let p = 0; p < size; p += 1)
    for (let r = p + 1; r < size; r += 1) {
      const share = matrix[r][p] / matrix[p][p];
      if (share === 0) continue;
      for (let c = p; c < size; c += 1) matrix[r][c] -= share * matrix[p][c];
      right[r] -= share * right[p];
    }
  const found = new Float64Array(size);
  for (let r = size - 1; r >= 0; r -= 1) {
    let rest = right[r];
    for (let c = r + 1; c < size; c += 1) rest -= matrix[r][c] * found[c];
    found[r] = rest / matrix[r][r];
  }
  return found;
}

/** Weights that tell rows with a voice from rows without it, or null where there are too few of either. */
function learn(rows, isThere) {
  const there = isThere.filter(Boolean).length;
  if (there < 3 || rows.length - there < 3) return null;
  const size = rows[0].length;
  const matrix = Array.from({ length: size }, (_, r) =>
    Float64Array.from({ length: size }, (_, c) => (r === c ? RIDGE : 0)),
  );
  const right = new Float64Array(size);
  rows.forEach((row, i) => {
    const weight = (rows.length / 2) * (isThere[i] ? 1 / there : 1 / (rows.length - there));
    for (let r = 0; r < size; r += 1) {
      right[r] += weight * row[r] * (isThere[i] ? 1 : -1);
      for (let c = 0; c < size; c += 1) matrix[r][c] += weight * row[r] * row[c];
    }
  });
  return solve(matrix, right);
}

function ordered(values, others) {
  let sum = 0;
  for (const value of values)
    for (const other of others) sum += value > other ? 1 : value === other ? 0.5 : 0;
  return sum / (values.length * others.length);
}

const over = (values) => values.filter((value) => value > 0).length / values.length;
const told = {};

function measure(file) {
  const take = JSON.parse(readFileSync(file.replace('.wav', '.json'), 'utf8'));
  const { strokes } = take.truth;
  const events = eventsOf(file);
  const free = hearFreely(events, network);
  const [first, last] = [strokes[0].t, strokes.at(-1).t];
  const cut = first + Math.min(12, (last - first) * 0.35);
  const rowOf = (e) => [
    ...events[e].description,
    ...Array.from({ length: COUNT }, (_, v) => Math.max(-6, Math.min(6, free[e * COUNT + v])) / 3),
    1,
  ];
  const distance = (e, voice) =>
    Math.min(
      ...strokes
        .filter((one) => voice === undefined || one.voice === voice)
        .map(({ t }) => Math.abs(t - events[e].timeSeconds)),
    );
  const near = (e) => strokes.filter(({ t }) => Math.abs(t - events[e].timeSeconds) < 0.05).length;
  const struck = events.map((_, e) => e).filter((e) => distance(e) < NEAR_SECONDS);
  const lesson = struck.filter((e) => events[e].timeSeconds < cut && (!isAlone || near(e) === 1));
  const rest = struck.filter((e) => events[e].timeSeconds > cut + 0.1);
  for (const voice of new Set(strokes.map((one) => one.voice))) {
    const v = HEARD_VOICES.indexOf(voice);
    const weights = learn(
      lesson.map(rowOf),
      lesson.map((e) => distance(e, voice) < NEAR_SECONDS),
    );
    const before = (e) => free[e * COUNT + v];
    const after = (e) =>
      weights ? before(e) / 2 + 3 * rowOf(e).reduce((sum, x, i) => sum + x * weights[i], 0) : before(e);
    const own = rest.filter((e) => distance(e, voice) < NEAR_SECONDS);
    const others = rest.filter((e) => distance(e, voice) > 2 * NEAR_SECONDS);
    if (own.length < 5 || others.length < 5) continue;
    told[voice] ??= [];
    told[voice].push(
      [before, after].flatMap((by) => [
        ordered(own.map(by), others.map(by)),
        over(own.map(by)),
        over(others.map(by)),
      ]),
    );
  }
}

for (const folder of process.argv.slice(2))
  for (const file of readdirSync(folder).filter((each) => each.endsWith('.wav'))) measure(join(folder, file));
console.log('voice        takes  before: ordered, own over 0, others over 0; after: the same');
for (const [voice, rows] of Object.entries(told)) {
  const means = rows[0].map((_, i) => (rows.reduce((sum, row) => sum + row[i], 0) / rows.length).toFixed(3));
  console.log(`${voice.padEnd(13)}${String(rows.length).padEnd(7)}${means.join('  ')}`);
}
