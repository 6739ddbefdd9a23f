/**
 * How well the difficulty model orders rhythms that people have rated, set by set, with and without a groove.
 *
 * Conventions: Spearman's rank correlation, each pattern left out in turn; which set is for fitting and which for testing
 * is said where the ratings stand (`packages/composer/test/ratings.data.ts`, with their sources).
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { DEFAULT_GRADE_SETTINGS, gradePattern, readGround } from '@shedbook/composer';
import {
  counterEvidence,
  keithSyncopation,
  longuetHigginsLee,
  noteToBeatDistance,
  offBeatness,
  parsePattern,
  toNumber,
} from '@shedbook/core';
import { lessonOf } from './material.mjs';

const RATINGS = join(import.meta.dirname, '..', 'packages/composer/test/ratings.data.ts');

const GROOVES = {
  'no groove': '{ hihat-foot: . . . . }',
  'a pulse': '{ hihat-foot: x x x x }',
  'ride and feet': '{ ride: x. xx x. xx, hihat-foot: . x . x, bass: x x x x }',
};

/** Ratings and patterns of both sets, as they stand in the tests' data. */
function ratedSets() {
  const parts = readFileSync(RATINGS, 'utf8').split('export const ESSENS');
  const [fitting = [], testing = []] = parts.map((part) =>
    [...part.matchAll(/(\d(?:\.\d+)?) ([01]{16})/g)].map(([, rating, pattern = '']) => ({
      rating: Number(rating),
      text: (pattern.replaceAll('1', 'x').replaceAll('0', '.').match(/.{4}/g) ?? []).join(' '),
    })),
  );
  return { 'Shmulevich and Povel, for fitting': fitting, 'Essens, for testing': testing };
}

/**
 * Ranks from 1; equals share their mean rank.
 * @param {readonly number[]} values
 */
function ranks(values) {
  return values.map((value) => {
    const below = values.filter((each) => each < value).length;
    return below + (values.filter((each) => each === value).length + 1) / 2;
  });
}

/**
 * Spearman's rank correlation.
 * @param {readonly number[]} a
 * @param {readonly number[]} b
 */
function spearman(a, b) {
  const middle = (a.length + 1) / 2;
  const x = ranks(a).map((each) => each - middle);
  const y = ranks(b).map((each) => each - middle);
  const dot = (/** @type {number[]} */ p, /** @type {number[]} */ q) =>
    p.reduce((sum, each, i) => sum + each * (q[i] ?? 0), 0);
  return dot(x, y) / Math.sqrt(dot(x, x) * dot(y, y));
}

/** Slots of a beat, and how a bar of sixteen divides. */
const SLOTS = 4;
const HALVES = [2, 2, 2, 2];

/**
 * Intervals from each stroke to the next, in slots, the bar looped.
 * @param {readonly number[]} bits
 */
function intervals(bits) {
  const strokes = bits.flatMap((bit, slot) => (bit ? [slot] : []));
  return strokes.map((slot, i) => {
    const next = strokes[i + 1] ?? (strokes[0] ?? 0) + bits.length;
    return next - slot;
  });
}

/**
 * Steps in which a sequence is produced from what came before it (Lempel and Ziv 1976).
 * @param {readonly number[]} bits
 */
function productionSteps(bits) {
  const text = bits.join('');
  let steps = 0;
  for (let from = 0; from < text.length; steps += 1) {
    let length = 1;
    while (
      from + length <= text.length &&
      text.slice(0, from + length - 1).includes(text.slice(from, from + length))
    )
      length += 1;
    from += length;
  }
  return steps;
}

/**
 * Pairwise variability of neighbouring intervals, normalised (Grabe and Low 2002).
 * @param {readonly number[]} bits
 */
function variability(bits) {
  const found = intervals(bits);
  const pairs = found.map((each, i) => [each, found[(i + 1) % found.length] ?? each]);
  const shares = pairs.map(([a = 1, b = 1]) => Math.abs(a - b) / ((a + b) / 2));
  return (100 * shares.reduce((sum, share) => sum + share, 0)) / shares.length;
}

/**
 * Evidence against the clock that a listener would choose: the best of those of two, four and eight slots, wherever they
 * begin, for each of their beats (Povel and Essens 1985).
 * @param {readonly number[]} bits
 */
function bestClock(bits) {
  const turned = (/** @type {number} */ by) => bits.map((_, slot) => bits[(slot + by) % bits.length] ?? 0);
  const scores = [2, 4, 8].flatMap((unit) =>
    Array.from({ length: unit }, (_, by) => (counterEvidence(turned(by), unit).score * unit) / bits.length),
  );
  return Math.min(...scores);
}

/**
 * Published measures by themselves: what a set can be ordered by at all.
 * @type {Readonly<Record<string, (bits: readonly number[]) => number>>}
 */
const MEASURES = {
  'evidence against the pulse (Povel and Essens)': (bits) => counterEvidence(bits, SLOTS).score,
  'Longuet-Higgins and Lee': (bits) => longuetHigginsLee(bits, HALVES, 'same bar'),
  Keith: keithSyncopation,
  'off-beatness (Toussaint)': offBeatness,
  'distance to beats (Gómez and others)': (bits) => toNumber(noteToBeatDistance(bits, SLOTS).mean),
  'steps of production (Lempel and Ziv)': productionSteps,
  'variability of intervals (Grabe and Low)': variability,
  'evidence against the best clock (Povel and Essens)': bestClock,
};

/** Each published measure on each set. */
function measureRows() {
  return Object.entries(ratedSets()).flatMap(([set, rated]) =>
    Object.entries(MEASURES).map(([measure, of]) => ({
      what: `${set} (${rated.length}), by ${measure} alone`,
      value: spearman(
        rated.map(({ text }) => of([...text.replaceAll(' ', '')].map((mark) => (mark === 'x' ? 1 : 0)))),
        rated.map(({ rating }) => rating),
      ),
      unit: 'rank correlation',
    })),
  );
}

/** Rows of the bench: each set over each groove, the whole set and the worst and best with one pattern left out. */
export function ratingRows() {
  return [...modelRows(), ...measureRows()];
}

function modelRows() {
  return Object.entries(ratedSets()).flatMap(([set, rated]) =>
    Object.entries(GROOVES).map(([over, groove]) => {
      const lesson = lessonOf(
        `title: Ratings\ntempo: { start: 60, goal: 75 }\nfeel: even\ngroove: ${groove}\nvocabulary: [x...]\n`,
      );
      const ground = readGround(lesson, 1);
      const known = rated.map(({ rating }) => rating);
      const points = rated.map(
        ({ text }) => gradePattern(ground, parsePattern(text), DEFAULT_GRADE_SETTINGS).points,
      );
      const without = rated.map((_, left) =>
        spearman(
          points.filter((__, i) => i !== left),
          known.filter((__, i) => i !== left),
        ),
      );
      const span = `${Math.min(...without).toFixed(2)} to ${Math.max(...without).toFixed(2)} with one left out`;
      return {
        what: `${set} (${rated.length}), over ${over}`,
        value: spearman(points, known),
        unit: 'rank correlation',
        note: span,
      };
    }),
  );
}
