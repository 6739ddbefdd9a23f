/**
 * How loud each voice of a take is, measured from its sound.
 *
 * The network guesses levels from what kits and microphones are usually like. Once the strokes are known, the sound
 * tells more: each voice is a spectrum of its own, each moment the sum of the spectra of what was struck, and the spectra
 * are those that explain all moments best.
 *
 * Conventions: K-weighted levels in dB re full scale over a stroke's first 100 ms, as by `detect/energy.ts`.
 * Source: non-negative matrix factorisation by the multiplicative updates for the Kullback–Leibler divergence (D. D. Lee
 * and H. S. Seung, NIPS 13, 2001), activations held at zero where the score-informed decision has no stroke (S. Ewert and
 * M. Müller, ICASSP 2012).
 */

import type { Voice } from '@shedbook/core';
import { dbToPower, median, powerToDb } from '@shedbook/signal';
import type { HeardStroke } from '../decide/heard-stroke.ts';
import { ENERGY_BANDS } from '../detect/energy.ts';
import type { HeardEvent } from '../detect/events.ts';
import { FEWEST_ALONE } from './lead-level.ts';

/** Strokes this near to each other are one moment. */
const MOMENT_SECONDS = 0.035;
/** A moment whose 100 ms hold the beginning of the next one is not looked at. */
const CLEAR_SECONDS = 0.09;
/** How far an event may be from the first stroke of a moment. */
const EVENT_SECONDS = 0.015;
/** What sounded before a moment has this share left of its power, on the whole, over the 100 ms after. */
const RINGING = 0.6;
const ROUNDS = 60;
/** Strokes are taken as equally loud for so many rounds. */
const EQUAL_ROUNDS = 10;
/** A stroke's power is at most this many times its voice's usual, and at least one over that. */
const FURTHEST = 30;
/** Fewer strokes than this tell nothing. */
const FEWEST = 3;
/** What the guess lacks beside the others', where it is all that is known: on two seeds of the built-in kit. */
const GUESSED_DB: Readonly<Partial<Record<Voice, number>>> = { rimshot: 0.6, crash: -1.1 };
/** A bass drum has next to nothing over this band (366 Hz), and is always struck together with something that has. */
const BASS_BANDS = 6;
/** With less than this of any voice's power over the analysed band, a recording has been through a phone or a codec. */
const FULL_RANGE = 0.1;
/** Weight of the measured level beside the network's in a recording that has lost its highs, and so perhaps its lows. */
const NARROW_WEIGHT = 0.5;
const TINY = 1e-13;

interface Moment {
  readonly energy: Float64Array;
  readonly ringing: Float64Array;
  readonly strokes: readonly HeardStroke[];
  /** Index of each stroke's voice. */
  readonly voices: readonly number[];
  /** Power of each stroke, of its voice's usual. */
  readonly strengths: Float64Array;
}

interface Spectrum {
  readonly power: Float64Array;
  readonly explained: Float64Array;
  strength: number;
}

function powers(energyDb: Float32Array, from: number): Float64Array {
  return Float64Array.from({ length: ENERGY_BANDS }, (_, band) => dbToPower(energyDb[from + band]!));
}

function eventNear(events: readonly HeardEvent[], from: number, seconds: number): number {
  let at = from;
  const distance = (index: number) => Math.abs(events[index]!.timeSeconds - seconds);
  while (at + 1 < events.length && distance(at + 1) <= distance(at)) at += 1;
  return at;
}

/** The moments with something struck and nothing soon after. `strokes` in order of time. */
function momentsOf(
  events: readonly HeardEvent[],
  strokes: readonly HeardStroke[],
  voices: readonly Voice[],
): readonly Moment[] {
  const groups: HeardStroke[][] = [];
  for (const stroke of strokes) {
    const group = groups.at(-1);
    if (group && stroke.timeSeconds - group[0]!.timeSeconds < MOMENT_SECONDS) group.push(stroke);
    else groups.push([stroke]);
  }
  let at = 0;
  return groups.flatMap((group, index) => {
    const seconds = group[0]!.timeSeconds;
    const next = groups[index + 1]?.[0]?.timeSeconds ?? Number.POSITIVE_INFINITY;
    at = eventNear(events, at, seconds);
    const { timeSeconds, energyDb } = events[at]!;
    if (next - seconds < CLEAR_SECONDS || Math.abs(timeSeconds - seconds) > EVENT_SECONDS) return [];
    return [
      {
        energy: powers(energyDb, 0),
        ringing: powers(energyDb, ENERGY_BANDS).map((power) => RINGING * power),
        strokes: group,
        voices: group.map((stroke) => voices.indexOf(stroke.voice)),
        strengths: new Float64Array(group.length).fill(1),
      },
    ];
  });
}

/** Spectra to begin with: the mean of all moments, shared out by the network's levels. */
function firstSpectra(moments: readonly Moment[], voices: readonly Voice[]): readonly Spectrum[] {
  const mean = new Float64Array(ENERGY_BANDS);
  for (const { energy } of moments) {
    for (let band = 0; band < ENERGY_BANDS; band += 1) mean[band]! += energy[band]! / moments.length;
  }
  const strokes = moments.flatMap((moment) => moment.strokes);
  const guesses = voices.map((voice) =>
    dbToPower(median(strokes.filter((one) => one.voice === voice).map((one) => one.levelDb))),
  );
  const all = guesses.reduce((sum, guess) => sum + guess, 0);
  return voices.map((voice, index) => ({
    power: mean.map((power, band) =>
      voice === 'bass' && band >= BASS_BANDS ? 0 : (power * guesses[index]!) / all + TINY,
    ),
    explained: new Float64Array(ENERGY_BANDS),
    strength: 0,
  }));
}

function sum(values: Float64Array): number {
  let all = 0;
  for (let i = 0; i < values.length; i += 1) all += values[i]!;
  return all;
}

/** How much more there is in each band of a moment than its strokes explain, as a factor, into `factors`. */
function findUnexplained(moment: Moment, spectra: readonly Spectrum[], factors: Float64Array): void {
  factors.set(moment.ringing);
  for (let i = 0; i < moment.voices.length; i += 1) {
    const { power } = spectra[moment.voices[i]!]!;
    for (let band = 0; band < ENERGY_BANDS; band += 1) factors[band]! += moment.strengths[i]! * power[band]!;
  }
  for (let band = 0; band < ENERGY_BANDS; band += 1)
    factors[band] = moment.energy[band]! / (factors[band]! + TINY);
}

/** One round: each stroke's strength and each voice's spectrum move towards what explains the moments. */
function improve(moments: readonly Moment[], spectra: readonly Spectrum[], moveStrengths: boolean): void {
  const factors = new Float64Array(ENERGY_BANDS);
  for (const spectrum of spectra) {
    spectrum.explained.fill(0);
    spectrum.strength = 0;
  }
  for (const moment of moments) {
    findUnexplained(moment, spectra, factors);
    for (let i = 0; i < moment.voices.length; i += 1) {
      const spectrum = spectra[moment.voices[i]!]!;
      const strength = moment.strengths[i]!;
      let toward = 0;
      for (let band = 0; band < ENERGY_BANDS; band += 1) {
        spectrum.explained[band]! += strength * factors[band]!;
        toward += spectrum.power[band]! * factors[band]!;
      }
      spectrum.strength += strength;
      // half a step, since strengths and spectra move at once
      const step = moveStrengths ? Math.sqrt(toward / (sum(spectrum.power) + TINY)) : 1;
      moment.strengths[i] = Math.min(FURTHEST, Math.max(1 / FURTHEST, strength * step));
    }
  }
  for (const { power, explained, strength } of spectra) {
    for (let band = 0; band < ENERGY_BANDS; band += 1)
      power[band]! *= explained[band]! / Math.max(TINY, strength);
  }
}

/** What the moments tell of a voice. */
interface Told {
  /** From the network's guess to what was measured, in dB. */
  readonly shiftDb: number;
  /** Of how many strokes. */
  readonly count: number;
}

/** How far the strokes of a voice lie from the network's guess: those that sound alone, where they are enough. */
function toldBy(moments: readonly Moment[], index: number, { power }: Spectrum): Told {
  const powerDb = powerToDb(sum(power) + TINY);
  const own = moments.flatMap(({ voices, strengths, strokes }) =>
    voices.flatMap((one, i) =>
      one === index
        ? [{ db: powerDb + powerToDb(strengths[i]!) - strokes[i]!.levelDb, isAlone: strokes.length === 1 }]
        : [],
    ),
  );
  const alone = own.filter(({ isAlone }) => isAlone);
  const telling = alone.length < FEWEST_ALONE ? own : alone;
  return { shiftDb: median(telling.map(({ db }) => db)), count: own.length };
}

/** The strokes with their voices' levels set to what the sound tells; as they were where it tells nothing. */
export function measureLevels(
  events: readonly HeardEvent[],
  strokes: readonly HeardStroke[],
): readonly HeardStroke[] {
  if (strokes.length === 0 || !(events[0] && events[0].energyDb.length > 0)) return strokes;
  const voices = [...new Set(strokes.map((stroke) => stroke.voice))];
  const moments = momentsOf(events, strokes, voices);
  if (moments.length < FEWEST) return strokes;
  const spectra = firstSpectra(moments, voices);
  for (let round = 0; round < ROUNDS; round += 1) improve(moments, spectra, round >= EQUAL_ROUNDS);
  const highest = Math.max(...spectra.map(({ power }) => power[ENERGY_BANDS - 1]! / (sum(power) + TINY)));
  const weight = highest < FULL_RANGE ? NARROW_WEIGHT : 1;
  const told = new Map<Voice, Told>();
  voices.forEach((voice, index) => {
    const own = toldBy(moments, index, spectra[index]!);
    if (own.count >= FEWEST) told.set(voice, { ...own, shiftDb: weight * own.shiftDb });
  });
  // The network guesses levels up to one constant a take: of a voice that is hardly struck that much is known.
  const [surest] = [...told.values()].toSorted((one, other) => other.count - one.count);
  const constant = surest?.shiftDb ?? 0;
  return strokes.map((stroke) => ({
    ...stroke,
    levelDb: stroke.levelDb + (told.get(stroke.voice)?.shiftDb ?? constant + (GUESSED_DB[stroke.voice] ?? 0)),
  }));
}
