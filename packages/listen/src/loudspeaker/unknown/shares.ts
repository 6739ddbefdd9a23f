/**
 * How much of what sounds at a voice's places is a machine's: a sound that is the same at all of them, to a fraction of a
 * millisecond, is one; what a hand plays there is never in the same place.
 *
 * Conventions: samples at ANALYSIS_RATE, seconds from the first; powers beside all that sounds in a band at a moment.
 * Method: by least squares, bin by bin, the one sound that each voice has at all of its places, as loud as is written; and of
 * what is left the power that comes with each voice, by non-negative least squares. What comes with other voices at the same
 * moments is so theirs.
 */

import type { Voice } from '@shedbook/core';
import { ComplexFft, dbToGain, hann, median } from '@shedbook/signal';
import { ANALYSIS_RATE } from '../../signal/bands.data.ts';
import { gram, inverse, nonNegative } from './solve.ts';

const SIZE = 2048;
/** A moment is heard from so long before it on, rising so long, and falling so long to its end. */
const BEFORE_SECONDS = 0.03;
const RISE_SECONDS = 0.025;
const FALL_SECONDS = 0.03;
/** Bands by their edges, in hertz. */
const EDGES_HZ = [150, 300, 600, 1200, 2400, 4800, 9600] as const;
/** A moment counts as no softer in a band than this, as power beside the one in the middle. */
const SOFTEST = 0.1;
/** Added to each voice's own product, as a share of it, so that voices which hardly differ share what they have. */
const RIDGE = 0.01;
const TINY = 1e-20;

/** The bands, by index, in which a voice is known: the lowest octave tells no hand, whose bass drum may be as even. */
const DRUM_BANDS = [0, 1, 2] as const;
const BASS_BANDS = [0, 1] as const;
const WOOD_BANDS = [1, 2, 3, 4] as const;
const CYMBAL_BANDS = [3, 4, 5] as const;
const BANDS_OF: Readonly<Partial<Record<Voice, readonly number[]>>> = {
  bass: BASS_BANDS,
  snare: DRUM_BANDS,
  rimshot: DRUM_BANDS,
  'tom-high': DRUM_BANDS,
  'tom-mid': DRUM_BANDS,
  'tom-low': DRUM_BANDS,
  'tom-floor': DRUM_BANDS,
  sidestick: WOOD_BANDS,
  cowbell: WOOD_BANDS,
  clap: WOOD_BANDS,
};

/** A stroke as a machine would play it. */
export interface DueStroke {
  readonly voice: Voice;
  readonly seconds: number;
  readonly levelDb: number;
}

/** What is a machine's at the places of a voice. */
export interface MachineShare {
  /** How many times the power that chance gives it has: about 1 where there is none. */
  readonly overChance: number;
  /** Its share of the power that comes with this voice, 0 to 1. */
  readonly share: number;
}

interface Spectrum {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

const emptyOf = (bins: number): Spectrum => ({ re: new Float64Array(bins), im: new Float64Array(bins) });

/** Strokes nearer than this are one moment, in seconds. */
const ONE_MOMENT = 0.01;

const edge = (seconds: number, most: number) => hann(Math.min(1, Math.max(0, seconds / most)) / 2);
const WINDOW = Float64Array.from(
  { length: SIZE },
  (_, i) => edge(i / ANALYSIS_RATE, RISE_SECONDS) * edge((SIZE - i) / ANALYSIS_RATE, FALL_SECONDS),
);
const fft = new ComplexFft(SIZE);

/** The spectrum of what sounds round a moment, which may lie between samples. */
function spectrumAt(sound: Float32Array, seconds: number): Spectrum {
  const at = (seconds - BEFORE_SECONDS) * ANALYSIS_RATE;
  const [first, [re, im]] = [Math.floor(at), [new Float64Array(SIZE), new Float64Array(SIZE)]];
  for (let i = 0; i < SIZE; i += 1) re[i] = WINDOW[i]! * (sound[first + i] ?? 0);
  fft.forward(re, im);
  for (let k = 0; k < SIZE / 2; k += 1) {
    const angle = (2 * Math.PI * k * (at - first)) / SIZE;
    const [cos, sin, a, b] = [Math.cos(angle), Math.sin(angle), re[k]!, im[k]!];
    re[k] = a * cos - b * sin;
    im[k] = a * sin + b * cos;
  }
  return { re, im };
}

/** Moments, each with the gain of every group of voices in it. */
interface Moments {
  readonly seconds: readonly number[];
  readonly gains: readonly (readonly number[])[];
  /** Voices that always come together, which nothing parts but their bands. */
  readonly groups: readonly (readonly Voice[])[];
}

/** The moments of strokes, in order of time. */
function momentsOf(due: readonly DueStroke[]): Moments {
  const moments: { seconds: number; gains: Map<Voice, number> }[] = [];
  for (const { voice, seconds, levelDb } of due.toSorted((a, b) => a.seconds - b.seconds)) {
    const last = moments.at(-1);
    const isOne = last !== undefined && seconds - last.seconds < ONE_MOMENT;
    if (isOne) last.gains.set(voice, dbToGain(levelDb));
    else moments.push({ seconds, gains: new Map([[voice, dbToGain(levelDb)]]) });
  }
  const groups = new Map<string, Voice[]>();
  for (const voice of new Set(due.map((stroke) => stroke.voice))) {
    const where = moments.map(({ gains }) => (gains.has(voice) ? 1 : 0)).join('');
    groups.set(where, [...(groups.get(where) ?? []), voice]);
  }
  const all = [...groups.values()];
  const gainsOf = (gains: ReadonlyMap<Voice, number>) =>
    all.map((voices) => Math.max(...voices.map((voice) => gains.get(voice) ?? 0)));
  return {
    seconds: moments.map(({ seconds }) => seconds),
    gains: moments.map(({ gains }) => gainsOf(gains)),
    groups: all,
  };
}

/** Powers in a band, of each group. */
interface Powers {
  /** Of its one sound; and what chance gives it. */
  readonly same: number;
  readonly chance: number;
  /** Of what else comes with it. */
  readonly other: number;
}

function powerIn({ re, im }: Spectrum, from: number, to: number): number {
  let sum = 0;
  for (let k = from; k < to; k += 1) sum += re[k]! ** 2 + im[k]! ** 2;
  return sum;
}

/** What the one sound of each group is found by. */
interface Solving {
  readonly spectra: readonly Spectrum[];
  /** For each group the weight of every moment. */
  readonly factors: readonly Float64Array[];
  readonly solved: readonly (readonly number[])[];
}

/** The sums of a bin over all moments, by the weights of each group, into `right`. */
function weighBin(bin: number, { spectra, factors }: Solving, right: Spectrum): void {
  for (let a = 0; a < factors.length; a += 1) {
    const own = factors[a]!;
    let [re, im] = [0, 0];
    for (let i = 0; i < own.length; i += 1) {
      const factor = own[i]!;
      if (factor === 0) continue;
      re += factor * spectra[i]!.re[bin]!;
      im += factor * spectra[i]!.im[bin]!;
    }
    right.re[a] = re;
    right.im[a] = im;
  }
}

/** The one sound that each group has in a bin, into `sounds`. */
function sameIn({ solved }: Solving, right: Spectrum, sounds: Spectrum): void {
  for (let a = 0; a < solved.length; a += 1) {
    const row = solved[a]!;
    let [re, im] = [0, 0];
    for (let b = 0; b < row.length; b += 1) {
      re += row[b]! * right.re[b]!;
      im += row[b]! * right.im[b]!;
    }
    sounds.re[a] = re;
    sounds.im[a] = im;
  }
}

/** Adds to a sum the power that is left of a bin of a moment without the sounds of its groups. */
function addLeft(
  sum: number,
  bin: number,
  { re, im }: Spectrum,
  gains: readonly number[],
  sounds: Spectrum,
): number {
  let [leftRe, leftIm] = [re[bin]!, im[bin]!];
  for (let a = 0; a < gains.length; a += 1) {
    leftRe -= gains[a]! * sounds.re[a]!;
    leftIm -= gains[a]! * sounds.im[a]!;
  }
  return sum + leftRe * leftRe + leftIm * leftIm;
}

/** What is a machine's in a band. */
function powersIn(spectra: readonly Spectrum[], { gains, groups }: Moments, from: number, to: number) {
  const powers = spectra.map((spectrum) => powerIn(spectrum, from, to));
  const least = SOFTEST * median(powers) + TINY;
  const weights = powers.map((power) => 1 / Math.sqrt(Math.max(power, least)));
  const rows = gains.map((row, i) => row.map((gain) => gain * weights[i]!));
  const products = gram(rows).map((row, a) => row.map((value, b) => (a === b ? value * (1 + RIDGE) : value)));
  const solved = inverse(products);
  const same = groups.map(() => 0);
  const rest = powers.map(() => 0);
  const factors = groups.map((_, a) => Float64Array.from(rows, (row, i) => row[a]! * weights[i]!));
  const solving = { spectra, factors, solved };
  const [right, sounds] = [emptyOf(groups.length), emptyOf(groups.length)];
  for (let k = from; k < to; k += 1) {
    weighBin(k, solving, right);
    sameIn(solving, right, sounds);
    for (let a = 0; a < same.length; a += 1)
      same[a] = same[a]! + sounds.re[a]! * sounds.re[a]! + sounds.im[a]! * sounds.im[a]!;
    for (let i = 0; i < rest.length; i += 1) rest[i] = addLeft(rest[i]!, k, spectra[i]!, gains[i]!, sounds);
  }
  const levelled = rest.map((power, i) => power * weights[i]! ** 2);
  const spread = levelled.reduce((sum, power) => sum + power, 0) / Math.max(1, rest.length - groups.length);
  const withEach = rows.map((row, i) => [...row.map((gain) => gain ** 2), weights[i]! ** 2]);
  const other = nonNegative(withEach, levelled);
  return groups.map(
    (_, a): Powers => ({ same: same[a]!, chance: solved[a]![a]! * spread, other: other[a]! }),
  );
}

/** What is a machine's at the places of each voice. */
export function machineShares(
  sound: Float32Array,
  due: readonly DueStroke[],
): ReadonlyMap<Voice, MachineShare> {
  const moments = momentsOf(due);
  const spectra = moments.seconds.map((seconds) => spectrumAt(sound, seconds));
  const bins = EDGES_HZ.map((hz) => Math.round((hz * SIZE) / ANALYSIS_RATE));
  const bands = bins.slice(1).map((to, band) => powersIn(spectra, moments, bins[band]!, to));
  return new Map(
    moments.groups.flatMap((voices, group) =>
      voices.map((voice) => {
        const own = (BANDS_OF[voice] ?? CYMBAL_BANDS).map((band) => bands[band]![group]!);
        const sum = (of: (powers: Powers) => number) => own.reduce((all, powers) => all + of(powers), 0);
        const machine = sum(({ same, chance }) => Math.max(0, same - chance));
        const overChance = sum(({ same }) => same) / (sum(({ chance }) => chance) + TINY);
        return [voice, { overChance, share: machine / (machine + sum(({ other }) => other) + TINY) }];
      }),
    ),
  );
}
