/**
 * A sound in which every moment of every frequency is about as loud as any other: what a quiet loudspeaker plays between a
 * player's strokes, and what a player strikes, count alike in it.
 *
 * Conventions: mono samples at ANALYSIS_RATE; frames overlap by half, under a sine before and after the transform.
 * Source: the phase transform (C. H. Knapp and G. C. Carter, IEEE Trans. ASSP 24(4), 1976), frame by frame.
 */
import { ComplexFft, energyOf } from '@shedbook/signal';
import { ANALYSIS_RATE } from '../../signal/bands.data.ts';

const SIZE = 1024;
const HOP = SIZE / 2;
/** Lower ones tell no times, in hertz. */
const LOWEST_HZ = 150;
/** Higher ones are mostly noise, in hertz. */
export const HIGHEST_HZ = 8000;
/** What is softer than this beside the loudest frame, as power, is nothing. */
const FLOOR = 1e-7;

const sine = Float64Array.from({ length: SIZE }, (_, i) => Math.sin((Math.PI * (i + 0.5)) / SIZE));
const binOf = (hz: number) => Math.round((hz * SIZE) / ANALYSIS_RATE);

const FIRST_BIN = binOf(LOWEST_HZ);
const LAST_BIN = binOf(HIGHEST_HZ);

/** Of each magnitude its eighth root is kept: roots of roots take a quarter of the time of any other power. */
function gainOf(re: number, im: number, least: number): number {
  const magnitude = Math.sqrt(re * re + im * im + least);
  return Math.sqrt(Math.sqrt(Math.sqrt(magnitude))) / magnitude;
}

/** Levels the spectra of two real frames, of which one is the real and one the imaginary part of what was transformed. */
function level(re: Float64Array, im: Float64Array, least: number): void {
  const [allRe, allIm] = [re.slice(), im.slice()];
  re.fill(0);
  im.fill(0);
  for (let k = FIRST_BIN; k <= LAST_BIN; k += 1) {
    const [x, y] = [allRe[k]!, allIm[k]!];
    const [u, v] = [allRe[SIZE - k]!, allIm[SIZE - k]!];
    // definition: a real frame's spectrum is its own conjugate, mirrored
    const [oneRe, oneIm] = [(x + u) / 2, (y - v) / 2];
    const [otherRe, otherIm] = [(y + v) / 2, (u - x) / 2];
    const one = gainOf(oneRe, oneIm, least);
    const other = gainOf(otherRe, otherIm, least);
    re[k] = one * oneRe - other * otherIm;
    im[k] = one * oneIm + other * otherRe;
    re[SIZE - k] = one * oneRe + other * otherIm;
    im[SIZE - k] = other * otherRe - one * oneIm;
  }
}

/** The sound, evened. */
export function evened(sound: Float32Array): Float32Array {
  const fft = new ComplexFft(SIZE);
  const even = new Float32Array(sound.length + 2 * SIZE);
  let loudest = 0;
  for (let at = 0; at < sound.length; at += HOP)
    loudest = Math.max(loudest, energyOf(sound.subarray(at, at + SIZE)));
  const [re, im] = [new Float64Array(SIZE), new Float64Array(SIZE)];
  // two frames at once, since a transform of complex numbers holds two sounds
  for (let at = 0; at < sound.length; at += 2 * HOP) {
    for (let i = 0; i < SIZE; i += 1) {
      re[i] = sine[i]! * (sound[at + i] ?? 0);
      im[i] = sine[i]! * (sound[at + HOP + i] ?? 0);
    }
    fft.forward(re, im);
    level(re, im, FLOOR * loudest);
    fft.back(re, im);
    for (let i = 0; i < SIZE; i += 1) {
      even[at + i] = even[at + i]! + sine[i]! * re[i]!;
      even[at + HOP + i] = even[at + HOP + i]! + sine[i]! * im[i]!;
    }
  }
  return even.subarray(0, sound.length);
}
