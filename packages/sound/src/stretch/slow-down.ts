/**
 * Slower sound of the same pitch: attacks sound once and as they were struck, what rings between them is drawn out.
 *
 * Conventions: samples; a speed is a ratio, 0.5 is half as fast; what lies at a moment of the sound lies at that moment
 * divided by the speed in what is slower.
 * Source: waveform similarity overlap-add (W. Verhelst and M. Roelands, "An overlap-add technique based on waveform
 * similarity (WSOLA) for high quality time-scale modification of speech", ICASSP 1993, II-554).
 * Differs from the source: attacks are copied as they are (as E. Moulines and J. Laroche, Speech Communication 16,
 * 1995, advise for transients), each stretch between two of them is drawn out by itself; where two pieces that are not
 * alike overlap, as in the noise of cymbals, their sum is brought back to the power of one.
 */
import type { Hertz } from '@shedbook/core';
import { findAttacks } from './attacks.ts';

/** An attack is kept from so long before its onset, and so long after. */
const BEFORE_SECONDS = 0.006;
const ATTACK_SECONDS = 0.04;
/** Onsets nearer than this are one attack: a flam is heard as it was struck. */
const ONE_ATTACK_SECONDS = 0.045;
/** What the ear heard counts; other attacks are found, if they are so far away from it. */
const APART_SECONDS = 0.06;
/** Length of an overlap, and how far a piece may be taken from where it should be. */
const OVERLAP_SECONDS = 0.012;
const REACH_SECONDS = 0.012;
/** Over so long a stretch gives way to the next attack. */
const JOINT_SECONDS = 0.002;

/** How a sound is slowed down. */
export interface SlowDown {
  readonly rateHz: Hertz;
  /** A ratio from above 0 to 1. */
  readonly speed: number;
  /** Known onsets in seconds. */
  readonly onsets: readonly number[];
}

type Channels = readonly Float32Array[];

function summed(channels: Channels): Float32Array {
  const [first] = channels;
  if (!first) return new Float32Array(0);
  if (channels.length === 1) return first;
  return first.map((_, i) => channels.reduce((sum, channel) => sum + (channel[i] as number), 0));
}

/** Where attacks are, the known ones where they are known. */
function anchorsOf(mono: Float32Array, { rateHz, onsets }: SlowDown): readonly number[] {
  const known = onsets.map((seconds) => Math.round(seconds * rateHz));
  const found = findAttacks(mono, rateHz).filter((at) =>
    known.every((other) => Math.abs(other - at) > APART_SECONDS * rateHz),
  );
  const anchors: number[] = [];
  for (const at of [...known, ...found].toSorted((a, b) => a - b))
    if (at >= 0 && at < mono.length && at - (anchors.at(-1) ?? -Infinity) > ONE_ATTACK_SECONDS * rateHz)
      anchors.push(at);
  return anchors;
}

/** How alike two pieces are: their correlation, −1 to 1. @param step every how many samples are looked at */
function likeness(samples: Float32Array, a: number, b: number, length: number, step: number): number {
  let [dot, one, other] = [1e-12, 1e-12, 1e-12];
  for (let i = 0; i < length; i += step) {
    const [x, y] = [samples[a + i] as number, samples[b + i] as number];
    dot += x * y;
    one += x * x;
    other += y * y;
  }
  return dot / Math.sqrt(one * other);
}

/** The place in a range whose sound is most like that at another place. */
function mostAlike(
  samples: Float32Array,
  to: number,
  [least, most]: readonly [number, number],
  length: number,
) {
  const best = (from: number, until: number, by: number, step: number) => {
    let [at, score] = [from, Number.NEGATIVE_INFINITY];
    for (let place = from; place <= until; place += by) {
      const now = likeness(samples, to, place, length, step);
      if (now > score) [at, score] = [place, now];
    }
    return { at, score };
  };
  const coarse = best(least, most, 4, 3).at;
  return best(Math.max(least, coarse - 4), Math.min(most, coarse + 4), 1, 1);
}

/** A run of samples that is copied, faded in over what comes before it. */
interface Piece {
  /** Where it begins in what is slower, and in the sound. */
  readonly into: number;
  readonly from: number;
  readonly length: number;
  /** Samples over which it is faded in. */
  readonly fade: number;
  /** How alike it and what goes on before it are: their correlation, −1 to 1. */
  readonly alike: number;
}

/** A stretch from one attack to before the next: its samples, and those that it becomes. */
interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly into: number;
  readonly until: number;
}

/** The pieces of a stretch: its attack as it is, then pieces that go on where the one before left off. */
function piecesOf(mono: Float32Array, stretch: Stretch, rateHz: number): readonly Piece[] {
  const { from, to, into, until } = stretch;
  const [length, wanted] = [to - from, until - into];
  const joint = Math.round(JOINT_SECONDS * rateHz);
  const overlap = Math.min(Math.round(OVERLAP_SECONDS * rateHz), Math.floor(length / 4));
  const attack = Math.max(overlap, Math.min(Math.round(ATTACK_SECONDS * rateHz), length - 3 * overlap));
  const first: Piece = { into, from, length: attack + overlap, fade: joint, alike: 1 };
  if (wanted <= length || overlap < 8) return [{ ...first, length: Math.min(length, wanted) + joint }];
  const pieces = [first];
  const reach = Math.round(REACH_SECONDS * rateHz);
  const last = to - 2 * overlap;
  for (let at = attack, next = from + attack; at < wanted; at += overlap) {
    const share = (at - attack) / Math.max(1, wanted - attack);
    const ideal = Math.round(from + attack + share * (length - attack - 2 * overlap));
    const most = Math.max(from, Math.min(last, ideal + reach));
    const range = [Math.max(from, Math.min(most, ideal - reach)), most] as const;
    const { at: place, score } = mostAlike(mono, Math.min(next, to - overlap), range, overlap);
    pieces.push({ into: into + at, from: place, length: 2 * overlap, fade: overlap, alike: score });
    next = place + overlap;
  }
  return pieces;
}

/** Lays a piece over what is there: it takes over while it is faded in, at the power of one of them. */
function lay(samples: Float32Array, slow: Float32Array, { into, from, length, fade, alike }: Piece): void {
  for (let i = 0; i < length && into + i < slow.length; i += 1) {
    const own = samples[from + i] ?? 0;
    const w = i < fade ? 0.5 - 0.5 * Math.cos((Math.PI * (i + 0.5)) / fade) : 1;
    const power = w * w + (1 - w) * (1 - w) + 2 * w * (1 - w) * Math.max(0, alike);
    slow[into + i] = ((1 - w) * (slow[into + i] as number) + w * own) / Math.sqrt(power);
  }
}

/** The stretches of a sound; the first begins with it. */
function stretchesOf(mono: Float32Array, how: SlowDown, length: number): readonly Stretch[] {
  const before = Math.round(BEFORE_SECONDS * how.rateHz);
  const starts = anchorsOf(mono, how)
    .filter((at) => at > before)
    .map((at) => ({ from: at - before, into: Math.round(at / how.speed) - before }));
  const all = [{ from: 0, into: 0 }, ...starts];
  return all.map(({ from, into }, index) => {
    const next = all[index + 1] ?? { from: mono.length, into: length };
    return { from, into, to: next.from, until: next.into };
  });
}

/**
 * A sound at another speed, at most as fast as it was.
 * @param channels as long as each other; they stay together
 * @throws RangeError for a speed that is none
 */
export function slowDown(channels: Channels, how: SlowDown): readonly Float32Array<ArrayBuffer>[] {
  if (!(how.speed > 0 && how.speed <= 1))
    throw new RangeError(`At speed: found ${how.speed}, expected above 0 to 1`);
  const mono = summed(channels);
  const length = Math.ceil(mono.length / how.speed);
  if (how.speed === 1) return channels.map((channel) => new Float32Array(channel));
  const pieces = stretchesOf(mono, how, length).flatMap((stretch) => piecesOf(mono, stretch, how.rateHz));
  return channels.map((channel) => {
    const slow = new Float32Array(length);
    for (const piece of pieces) lay(channel, slow, piece);
    return slow;
  });
}
