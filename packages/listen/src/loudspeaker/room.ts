/**
 * How a loudspeaker sounds in a recording: its delay, and what loudspeaker, room and microphone do to it.
 *
 * Conventions: mono samples of one rate, both counted from the take's first one; the room is a filter of ROOM_SAMPLES.
 * Sources: the delay by the generalised cross-correlation with phase transform (C. H. Knapp and G. C. Carter, IEEE
 * Trans. ASSP 24(4), 1976); the filter by the Wiener–Hopf equations over the whole take, solved by conjugate gradients
 * with the Toeplitz product taken by transforms (R. H. Chan and M. K. Ng, SIAM Review 38(3), 1996).
 */
import { ComplexFft, hann } from '@shedbook/signal';
import { addProducts, findPeak, type Products, whiten } from './products.ts';

/** Samples of the filter: 186 ms at 44 100 Hz. */
const ROOM_SAMPLES = 8192;
/** The filter begins so many samples before the delay that was found. */
const BEFORE = 64;
/** Longest delay that is looked for, in samples: 0.74 s at 44 100 Hz. */
const LONGEST_DELAY = 32_768;
/** So many samples does a piece of the known sound rise and fall, where its delay is looked for. */
const FADE = 256;
/**
 * A delay is found where the correlation is so many times its root mean square. Who plays the same as a page that the microphone
 * does not hear came to 8 to 14, a page 20 dB under them to 34 and more (eight exercises, two hands). What is softer is not taken
 * out: a filter that is learnt beside a student leaves more than that.
 */
const FOUND = 18;
const ROUNDS = 60;
/** Added to the known sound's power, as a share: what is so weak in it tells nothing. */
const FLOOR = 1e-4;
const TINY = 1e-20;

/** Sums of products of two sounds, one delayed by 0 up to `lags` samples, as a spectrum. @param piece what is taken of the known */
function productsOf(
  fft: ComplexFft,
  known: Float32Array,
  take: Float32Array,
  piece: (at: number) => Float32Array = (at) => known.subarray(at, at + fft.size / 2),
): Products {
  const to = { re: new Float64Array(fft.size), im: new Float64Array(fft.size) };
  for (let at = 0; at < take.length; at += fft.size / 2)
    addProducts(fft, piece(at), take.subarray(at, at + fft.size), to);
  return to;
}

function correlate(known: Float32Array, take: Float32Array, lags: number): Float64Array {
  const fft = new ComplexFft(2 * lags);
  const { re, im } = productsOf(fft, known, take);
  fft.back(re, im);
  return re.slice(0, lags);
}

/** A piece of a sound that rises and falls at its ends: cut off, both sounds have a click where it begins. */
function faded(sound: Float32Array, from: number, count: number): Float32Array {
  const piece = sound.slice(from, from + count);
  const last = piece.length - 1;
  for (let i = 0; i < Math.min(FADE, last); i += 1) {
    const gain = hann(i / FADE / 2);
    piece[i] = gain * piece[i]!;
    piece[last - i] = gain * piece[last - i]!;
  }
  return piece;
}

/** The delay of a known sound in a take, in samples from 0; null where the sound is not found in it. */
function delayOf(known: Float32Array, take: Float32Array): number | null {
  const fft = new ComplexFft(2 * LONGEST_DELAY);
  const products = productsOf(fft, known, take, (at) => faded(known, at, LONGEST_DELAY));
  whiten(products);
  fft.back(products.re, products.im);
  return findPeak(products.re.subarray(0, LONGEST_DELAY), FOUND);
}

/** Solves the equations of a symmetric Toeplitz matrix, given by its first row. */
function solveToeplitz(row: Float64Array, right: Float64Array): Float64Array {
  const count = row.length;
  const fft = new ComplexFft(2 * count);
  const [circleRe, circleIm] = [new Float64Array(2 * count), new Float64Array(2 * count)];
  circleRe.set(row);
  for (let i = 1; i < count; i += 1) circleRe[2 * count - i] = row[i]!;
  fft.forward(circleRe, circleIm);
  const [re, im] = [new Float64Array(2 * count), new Float64Array(2 * count)];
  const times = (vector: Float64Array): Float64Array => {
    re.fill(0);
    im.fill(0);
    re.set(vector);
    fft.forward(re, im);
    for (let k = 0; k < 2 * count; k += 1) {
      re[k] = re[k]! * circleRe[k]!;
      im[k] = im[k]! * circleRe[k]!;
    }
    fft.back(re, im);
    return re.slice(0, count);
  };
  const dot = (a: Float64Array, b: Float64Array) => a.reduce((sum, value, i) => sum + value * b[i]!, 0);
  const found = new Float64Array(count);
  const rest = right.slice();
  const way = right.slice();
  let power = dot(rest, rest);
  for (let round = 0; round < ROUNDS && power > TINY; round += 1) {
    const product = times(way);
    const step = power / dot(way, product);
    for (let i = 0; i < count; i += 1) {
      found[i] = found[i]! + step * way[i]!;
      rest[i] = rest[i]! - step * product[i]!;
    }
    const next = dot(rest, rest);
    for (let i = 0; i < count; i += 1) way[i] = rest[i]! + (next / power) * way[i]!;
    power = next;
  }
  return found;
}

/** A sound through a filter, as long as it was. */
function through(filter: Float64Array, sound: Float32Array): Float32Array {
  const block = filter.length;
  const fft = new ComplexFft(2 * block);
  const [filterRe, filterIm] = [new Float64Array(2 * block), new Float64Array(2 * block)];
  filterRe.set(filter);
  fft.forward(filterRe, filterIm);
  const filtered = new Float32Array(sound.length);
  const [re, im] = [new Float64Array(2 * block), new Float64Array(2 * block)];
  for (let at = 0; at < sound.length; at += block) {
    re.fill(0);
    im.fill(0);
    re.set(sound.subarray(at, at + block));
    fft.forward(re, im);
    for (let k = 0; k < 2 * block; k += 1) {
      const real = re[k]! * filterRe[k]! - im[k]! * filterIm[k]!;
      im[k] = re[k]! * filterIm[k]! + im[k]! * filterRe[k]!;
      re[k] = real;
    }
    fft.back(re, im);
    const end = Math.min(2 * block, sound.length - at);
    for (let i = 0; i < end; i += 1) filtered[at + i] = filtered[at + i]! + re[i]!;
  }
  return filtered;
}

/** A loudspeaker in a take. */
export interface Echo {
  /** What it sounds like there: as many samples as the take. */
  readonly samples: Float32Array;
  /** In samples. */
  readonly delay: number;
}

/**
 * What a known sound sounds like in a take, or null where it is not in it.
 * @param known what a loudspeaker played, from the take's first sample on
 */
export function echoOf(known: Float32Array, take: Float32Array): Echo | null {
  const delay = delayOf(known, take);
  if (delay === null) return null;
  const late = new Float32Array(take.length);
  const shift = delay - BEFORE;
  for (let i = Math.max(0, shift); i < take.length; i += 1) late[i] = known[i - shift] ?? 0;
  const own = correlate(late, late, ROOM_SAMPLES);
  own[0] = own[0]! * (1 + FLOOR) + TINY;
  const filter = solveToeplitz(own, correlate(late, take, ROOM_SAMPLES));
  return { samples: through(filter, late), delay };
}
