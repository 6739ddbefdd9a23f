/**
 * Limbs that played alone, laid over each other: what they would sound like together on this kit, in this room, on this device.
 * Sounds add up in the air and before the microphone, so that whoever has each limb by itself has every unison of them.
 *
 * Conventions: mono samples of ANALYSIS_RATE; seconds from the first of them. Each mixture is of strokes of one half of the
 * check alone, so that what was learnt from one half can be tried on the other. The same check gives the same mixtures.
 */
import { seededRandom, type Voice } from '@shedbook/core';
import { dbToGain } from '@shedbook/signal';
import { ANALYSIS_RATE } from '../signal/bands.data.ts';
import type { Alone } from './strokes-alone.ts';

/** Mixtures for each voice, and how long each lasts, as four beats at 120; between two of them is a pause. */
const EACH = 30;
const SECONDS = 2;
const PAUSE_SECONDS = 0.3;
const LEAD_SECONDS = 0.5;
/** A voice takes part in so many of them, and falls together with the others in so many of those. */
const TAKES_PART = 0.5;
const TOGETHER = 0.6;
/** How far limbs are apart that fall together, a standard deviation. */
const SCATTER_SECONDS = 0.012;
/** How loud a limb is beside how it was played alone: mean and standard deviation, dB. */
const LEVEL_DB = -2;
const LEVEL_SPREAD_DB = 4;
/** A stretch begins so long before its first stroke, and its ends fade in so many samples. */
const BEFORE_SECONDS = 0.1;
const EDGE = 200;

/** A stretch of one limb alone, with the strokes in it. */
interface Part {
  readonly voice: Voice;
  readonly samples: Float32Array;
  readonly strokes: readonly number[];
}

/** Mixtures one after another. */
export interface Mixed {
  readonly samples: Float32Array;
  readonly strokes: readonly { readonly voice: Voice; readonly seconds: number }[];
  /** Of which half of the check the sound at a moment is: 0 or 1. */
  readonly halfAt: (seconds: number) => number;
}

function partsOf(samples: Float32Array, { voice, strokes }: Alone): readonly [Part, Part] {
  const half = strokes.length >> 1;
  const gap = (strokes.at(-1)! - strokes[0]!) / (strokes.length - 1);
  const cut = (from: number, to: number): Part => {
    const own = strokes.slice(from, to);
    const start = Math.max(0, Math.round((own[0]! - BEFORE_SECONDS) * ANALYSIS_RATE));
    const end = Math.round(((strokes[to] ?? own.at(-1)! + gap) - BEFORE_SECONDS) * ANALYSIS_RATE);
    return {
      voice,
      samples: samples.slice(start, end),
      strokes: own.map((seconds) => seconds - start / ANALYSIS_RATE),
    };
  };
  return [cut(0, half), cut(half, strokes.length)];
}

/** A normal deviate, by G. E. P. Box and M. E. Muller, Ann. Math. Stat. 29(2), 1958. */
function normal(random: ReturnType<typeof seededRandom>): number {
  return Math.sqrt(-2 * Math.log(1 - random.next())) * Math.cos(2 * Math.PI * random.next());
}

/** Lays a part over others, round and round, its first sample at `shift` of the mixture. @returns when its strokes are */
function lay(into: Float32Array, { samples, strokes }: Part, shift: number, gain: number): readonly number[] {
  const length = samples.length;
  for (let i = 0; i < into.length; i += 1) {
    const k = (((i - shift) % length) + length) % length;
    const edge = Math.min(1, Math.min(k, length - k) / EDGE);
    into[i]! += gain * edge * samples[k]!;
  }
  const round = length / ANALYSIS_RATE;
  const first = (shift / ANALYSIS_RATE) % round;
  return strokes.flatMap((seconds) =>
    Array.from(
      { length: Math.ceil(into.length / length) + 2 },
      (_, k) => seconds + first + (k - 1) * round,
    ).filter((at) => at >= 0 && at < into.length / ANALYSIS_RATE),
  );
}

/** Mixtures of limbs that played alone in a recording. */
export function mix(samples: Float32Array, alone: readonly Alone[]): Mixed {
  const random = seededRandom('line check');
  const parts = alone.map((one) => partsOf(samples, one));
  const length = Math.round(SECONDS * ANALYSIS_RATE);
  const each = length + Math.round(PAUSE_SECONDS * ANALYSIS_RATE);
  const lead = Math.round(LEAD_SECONDS * ANALYSIS_RATE);
  const count = EACH * parts.length;
  const mixed = new Float32Array(lead + count * each);
  const strokes: { voice: Voice; seconds: number }[] = [];
  for (let m = 0; m < count; m += 1) {
    const start = lead + m * each;
    const into = mixed.subarray(start, start + length);
    const some = parts.filter(() => random.next() < TAKES_PART);
    for (const halves of some.length > 0 ? some : [parts[random.below(parts.length)]!]) {
      const part = halves[m % 2]!;
      const first = part.strokes[random.below(part.strokes.length)]!;
      const isTogether = random.next() < TOGETHER;
      const off = isTogether ? SCATTER_SECONDS * normal(random) : random.next() * SECONDS;
      const shift = Math.round((BEFORE_SECONDS + off - first) * ANALYSIS_RATE);
      const gain = dbToGain(LEVEL_DB + LEVEL_SPREAD_DB * normal(random));
      for (const at of lay(into, part, shift, gain))
        strokes.push({ voice: part.voice, seconds: start / ANALYSIS_RATE + at });
    }
  }
  return {
    samples: mixed,
    strokes,
    halfAt: (seconds) => Math.floor((seconds * ANALYSIS_RATE - lead) / each) & 1,
  };
}
