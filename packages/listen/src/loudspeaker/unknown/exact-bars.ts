/**
 * Bars that come again exactly: what a machine plays lies one bar later to a fraction of a millisecond, which no hand does,
 * and tells the length of the machine's bars to a few millionths.
 *
 * Conventions: samples at ANALYSIS_RATE, evened; a bar's length is looked for near the one that the take was followed by.
 */
import { ComplexFft, fitLine, median, rootMeanSquare } from '@shedbook/signal';
import type { TrackedBar } from '../../align/match-bar.ts';
import { ANALYSIS_RATE } from '../../signal/bands.data.ts';
import { findPeak, type Products } from '../products.ts';
import { HIGHEST_HZ } from './evened.ts';

/** Bars are compared with those up to so many later, and no more bars than these are looked at. */
const FARTHEST = 8;
const MOST_BARS = 16;
const FEWEST_BARS = 4;
/** So far may a bar's length lie from the one that was followed, either way. */
const REACH_SECONDS = 0.02;
/** Lengths that are tried lie so many samples apart at the farthest bar. */
const STEP = 0.5;
/**
 * Bars come again exactly where their likeness at one length is so many times what it is at others. Hands on a kit of recorded
 * strokes, each of which sounds as the one before, came to 7.1 at most (32 takes of two kits); a machine 10 dB under them to 19
 * and more, and one that is 30 dB under and heard between their strokes to 9 and more.
 */
const FOUND = 9;

/** Bars of a machine: the first begins at `fromSeconds`, the next ones a length later each. */
export interface ExactBars {
  readonly fromSeconds: number;
  readonly barSeconds: number;
}

const lastBin = (size: number) => Math.ceil((HIGHEST_HZ * size) / ANALYSIS_RATE);

const emptyOf = (bins: number) => ({ re: new Float64Array(bins), im: new Float64Array(bins) });

/** Spectra of bars that begin a whole number of samples apart, up to the highest frequency that is looked at. */
function spectraOf(fft: ComplexFft, even: Float32Array, starts: readonly number[], length: number) {
  const { size } = fft;
  const last = lastBin(size);
  const put = (to: Float64Array, start: number | undefined) => {
    if (start !== undefined)
      to.set(even.subarray(Math.max(0, start), Math.max(0, start + length)), Math.max(0, -start));
  };
  const spectra: Products[] = [];
  // two bars at once, since a transform of complex numbers holds two sounds
  for (let n = 0; n < starts.length; n += 2) {
    const [re, im] = [new Float64Array(size), new Float64Array(size)];
    put(re, starts[n]);
    put(im, starts[n + 1]);
    fft.forward(re, im);
    const [one, other] = [emptyOf(last), emptyOf(last)];
    for (let k = 1; k < last; k += 1) {
      const x = re[k]!;
      const y = im[k]!;
      const u = re[size - k]!;
      const v = im[size - k]!;
      one.re[k] = (x + u) / 2;
      one.im[k] = (y - v) / 2;
      other.re[k] = (y + v) / 2;
      other.im[k] = (u - x) / 2;
    }
    spectra.push(one, ...(n + 1 < starts.length ? [other] : []));
  }
  return spectra;
}

/** Adds up the products of bars that lie so many apart, up to the highest frequency that is looked at. */
function addProductsOf(spectra: readonly Products[], apart: number, { re, im }: Products): void {
  for (const [i, { re: xr, im: xi }] of spectra.slice(0, -apart).entries()) {
    const { re: yr, im: yi } = spectra[i + apart]!;
    for (let k = 1; k < re.length; k += 1) {
      re[k] = re[k]! + xr[k]! * yr[k]! + xi[k]! * yi[k]!;
      im[k] = im[k]! + xr[k]! * yi[k]! - xi[k]! * yr[k]!;
    }
  }
}

/**
 * How alike bars are that lie so many apart, and how alike those that lie one more, by how much later the second one is, in
 * samples; negative ones at the end. Both are real, and go through one transform.
 */
function likeness(
  fft: ComplexFft,
  spectra: readonly Products[],
  apart: number,
): readonly [Float64Array, Float64Array] {
  const { size } = fft;
  const last = lastBin(size);
  const [one, other] = [emptyOf(last), emptyOf(last)];
  addProductsOf(spectra, apart, one);
  addProductsOf(spectra, apart + 1, other);
  const { re, im } = emptyOf(size);
  for (let k = 1; k < last; k += 1) {
    re[k] = one.re[k]! - other.im[k]!;
    im[k] = one.im[k]! + other.re[k]!;
    re[size - k] = one.re[k]! + other.im[k]!;
    im[size - k] = other.re[k]! - one.im[k]!;
  }
  fft.back(re, im);
  return [re, im];
}

/** A value between samples of a sound that goes round. */
function between(values: Float64Array, at: number): number {
  const [whole, { length }] = [Math.floor(at), values];
  const part = at - whole;
  const of = (index: number) => values[(index + length) % length]!;
  return (1 - part) * of(whole) + part * of(whole + 1);
}

/** What bars so many apart say. */
interface Likeness {
  readonly apart: number;
  /** How many pairs of bars lie so. */
  readonly pairs: number;
  readonly values: Float64Array;
}

/** Adds what bars so many apart say of each length that is tried. @param step samples at one bar from a length to the next */
function addLikeness(to: Float64Array, { apart, pairs, values }: Likeness, step: number): void {
  const middle = to.length >> 1;
  const reach = Math.ceil(apart * step * middle);
  const chance = rootMeanSquare(
    Float64Array.from({ length: 2 * reach + 1 }, (_, i) => between(values, i - reach)),
  );
  if (chance === 0) return;
  const weight = Math.sqrt(pairs) / chance;
  for (let i = 0; i < to.length; i += 1)
    to[i] = to[i]! + weight * between(values, apart * (i - middle) * step);
}

/** The bars of a machine in a take, where there is one. @param even the take's sound, evened */
export function exactBars(even: Float32Array, tracked: readonly TrackedBar[]): ExactBars | null {
  const endSeconds = even.length / ANALYSIS_RATE;
  const bars = tracked
    .filter(({ startSeconds, barSeconds }) => startSeconds + barSeconds <= endSeconds)
    .slice(0, MOST_BARS);
  if (bars.length < FEWEST_BARS) return null;
  const { at, slope } = fitLine(bars.map(({ startSeconds }, x) => ({ x, y: startSeconds, weight: 1 })));
  const length = Math.round(slope * ANALYSIS_RATE);
  const farthest = Math.min(FARTHEST, bars.length - 1);
  const reach = Math.round(REACH_SECONDS * ANALYSIS_RATE);
  const size = 2 ** Math.ceil(Math.log2(length + 2 * reach * farthest));
  const first = Math.round(at * ANALYSIS_RATE);
  const fft = new ComplexFft(size);
  const starts = bars.map((_, index) => first + index * length);
  const spectra = spectraOf(fft, even, starts, length);
  const tried = new Float64Array(2 * Math.round((reach * farthest) / STEP) + 1);
  for (let apart = 1; apart <= farthest; apart += 2) {
    for (const [more, values] of likeness(fft, spectra, apart).entries()) {
      const pairs = spectra.length - apart - more;
      if (apart + more <= farthest)
        addLikeness(tried, { apart: apart + more, pairs, values }, STEP / farthest);
    }
  }
  const best = findPeak(tried, FOUND);
  if (best === null) return null;
  const barSeconds = (length + ((best - (tried.length >> 1)) * STEP) / farthest) / ANALYSIS_RATE;
  return {
    barSeconds,
    fromSeconds: median(bars.map(({ startSeconds }, i) => startSeconds - i * barSeconds)),
  };
}
