/**
 * The snare drum: 14 inches, wires on; tip near the centre, ghost notes, rim shots; and the side stick.
 *
 * The wires lie on the other head: they answer its motion a moment later with a rattle of collisions, strongest
 * in proportion when the stroke is soft, longest when it is hard.
 * Source: coupled lowest modes of a snare drum near 180 and 330 Hz (Rossing and Fletcher, ch. 18).
 */

import { seededRandom } from '@shedbook/core';
import {
  bandPass,
  dbToGain,
  easePerSample,
  fallPerSample,
  filterInPlace,
  highPass,
  lowPass,
} from '@shedbook/signal';
import { addModes, type Mode } from '../synth/modes.ts';
import { addBurst, whiteNoise } from '../synth/noise.ts';
import { trimSilence } from './cymbal.ts';
import { type Head, strikeHead } from './drum.ts';
import type { RawSound } from './sound.ts';

/** The batter head of the snare. */
export const SNARE_HEAD: Head = {
  lowestHz: 196,
  partnerHz: 338,
  partnerDb: -8,
  highestRatio: 9,
  position: 0.14,
  wander: 0.08,
  t60Seconds: [
    [180, 0.27],
    [400, 0.22],
    [1000, 0.15],
    [2000, 0.1],
  ],
  breathing: 0.8,
  contact: { plainSeconds: 0.0011, exponent: 0.25 },
  glide: 0.02,
  glideSeconds: 0.03,
};

const DRIVES_DB = [-36, -30, -24, -18, -12, -6, 0, 6, 12];
const TAKES = 4;

/** One stroke to be made. */
export interface Strike {
  /** Samples a second. */
  readonly rate: number;
  readonly driveDb: number;
  readonly seed: string;
}

/** The rattle of the wires under a head that moves as `head` does. */
export function addWires(out: Float32Array, head: Float32Array, { rate, driveDb, seed }: Strike): void {
  const softness = Math.max(0, -driveDb / 36);
  const t60Seconds = 0.25 * 10 ** (driveDb / 70);
  const noise = whiteNoise(
    Math.min(out.length, Math.ceil(t60Seconds * 1.3 * rate)),
    seededRandom(`${seed} wires`),
  );
  const body = noise.slice();
  filterInPlace(body, bandPass(4800 * 10 ** (driveDb / 160), 0.5, rate));
  const dull = lowPass(10500 * 10 ** (driveDb / 50), 0.6, rate);
  filterInPlace(noise, highPass(1000, 0.7, rate));
  filterInPlace(noise, dull);
  filterInPlace(body, dull);
  const gain = dbToGain(-3 + 2 * softness);
  const fall = fallPerSample(t60Seconds, rate);
  const answer = easePerSample(0.0016, rate);
  let [level, lacking, moved] = [gain, 1, 0];
  for (let i = 0; i < noise.length; i += 1) {
    moved = Math.max(Math.abs(head[i] as number), moved * 0.998);
    const slap = 0.55 + 0.45 * Math.abs((head[i] as number) / (moved + 1e-9));
    out[i] =
      (out[i] as number) +
      (0.6 * (noise[i] as number) + 0.9 * (body[i] as number)) * level * slap * (1 - lacking);
    level *= fall;
    lacking *= answer;
  }
}

/** Near the edge: modes with nodal diameters are heard more, the lowest less. */
const EDGE_HEAD: Head = { ...SNARE_HEAD, position: 0.72, wander: 0.05, partnerDb: -12, breathing: 0.7 };

function strikeSnare(strike: Strike, of: Head = SNARE_HEAD): Float32Array {
  const { rate, driveDb, seed } = strike;
  const head = strikeHead(of, { driveDb, seconds: 0.6, seed }, rate);
  const out = head.slice();
  addWires(out, head, strike);
  const filters = [highPass(1200, 0.7, rate), lowPass(7500 * 10 ** (driveDb / 45), 0.6, rate)];
  const gain = dbToGain(-3 + 0.25 * driveDb);
  addBurst(out, rate, { gain, riseSeconds: 0.0002, t60Seconds: 0.014, filters }, seededRandom(`${seed} tip`));
  return out;
}

/** Modes of the hoop and shell, which a rim shot and a side stick set ringing. */
const RIM: readonly (readonly [frequencyHz: number, levelDb: number, t60Seconds: number])[] = [
  [412, -10, 0.16],
  [547, -6, 0.22],
  [893, -3, 0.2],
  [1287, -2, 0.17],
  [1733, -6, 0.12],
  [2410, -5, 0.1],
  [3290, -7, 0.075],
  [4480, -8, 0.055],
  [6130, -11, 0.04],
];

function rimModes(levelDb: number, tilt: number, strike: Strike): readonly Mode[] {
  const random = seededRandom(`${strike.seed} rim`);
  return RIM.map(([hz, rimDb, t60Seconds]) => {
    const brighter = tilt * strike.driveDb * Math.log2(hz / 1000);
    const spread = 3 * (random.next() - 0.5);
    return {
      frequencyHz: hz,
      amplitude: dbToGain(levelDb + rimDb + brighter + spread),
      phase: 0,
      t60Seconds,
    };
  });
}

function strikeRim(strike: Strike): Float32Array {
  const out = strikeSnare({ ...strike, driveDb: strike.driveDb + 6 });
  addModes(out, strike.rate, rimModes(-5, 0.05, strike));
  const { rate, driveDb, seed } = strike;
  const filters = [highPass(1800, 0.7, rate), lowPass(11000 * 10 ** (driveDb / 50), 0.6, rate)];
  const crack = { gain: dbToGain(4 + 0.1 * driveDb), riseSeconds: 0.0001, t60Seconds: 0.018, filters };
  addBurst(out, rate, crack, seededRandom(`${seed} crack`));
  return out;
}

/** Modes of the stick that lies across the drum, muffled by the hand. */
const STICK: readonly (readonly [frequencyHz: number, levelDb: number, t60Seconds: number])[] = [
  [386, -12, 0.11],
  [745, -9, 0.09],
  [985, -6, 0.08],
  [1180, -3, 0.1],
  [1620, 0, 0.1],
  [2010, -6, 0.075],
  [2370, -4, 0.07],
  [2890, -8, 0.06],
  [3560, -5, 0.055],
  [4210, -8, 0.05],
  [4900, -5, 0.045],
  [5830, -10, 0.035],
  [6800, -10, 0.03],
  [9200, -14, 0.02],
];

function strikeAcross(strike: Strike): Float32Array {
  const { rate, driveDb, seed } = strike;
  const random = seededRandom(`${seed} across`);
  const out = new Float32Array(Math.ceil(0.35 * rate));
  const modes = STICK.map(([hz, levelDb, t60Seconds]) => ({
    frequencyHz: hz * (1 + 0.004 * (random.next() - 0.5)),
    amplitude: dbToGain(levelDb + 0.14 * driveDb * Math.log2(hz / 1000) + 3 * (random.next() - 0.5)),
    phase: 0,
    t60Seconds: t60Seconds * 10 ** (driveDb / 120),
  }));
  addModes(out, rate, modes);
  const filters = [highPass(900, 0.7, rate), lowPass(8000 * 10 ** (driveDb / 45), 0.7, rate)];
  const gain = dbToGain(-4 + 0.1 * driveDb);
  addBurst(out, rate, { gain, riseSeconds: 0.0002, t60Seconds: 0.012, filters }, seededRandom(`${seed} tap`));
  const rattle = [highPass(2500, 0.7, rate), lowPass(7000 * 10 ** (driveDb / 60), 0.7, rate)];
  const wires = {
    gain: dbToGain(-22 + 0.1 * driveDb),
    riseSeconds: 0.003,
    t60Seconds: 0.22,
    filters: rattle,
  };
  addBurst(out, rate, wires, seededRandom(`${seed} rattle`));
  return out;
}

/** A sound of several takes from soft to loud. */
export function inLayers(by: (strike: Strike) => Float32Array, rate: number, seed: string): RawSound {
  const take = (driveDb: number, of: number) =>
    trimSilence(by({ rate, driveDb, seed: `${seed} ${of}` }), rate);
  const takes = (driveDb: number) => Array.from({ length: TAKES }, (_, of) => take(driveDb, of));
  return { layers: DRIVES_DB.map((driveDb) => ({ driveDb, takes: takes(driveDb) })), wash: [] };
}

/** The tip near the centre, down to a ghost note. */
export function makeSnare(rate: number, seed: string): RawSound {
  return inLayers((strike) => strikeSnare(strike), rate, `${seed} snare`);
}

/** The tip near the edge of the head: thinner, with more ring. */
export function makeSnareEdge(rate: number, seed: string): RawSound {
  return inLayers((strike) => strikeSnare(strike, EDGE_HEAD), rate, `${seed} snare edge`);
}

/** Tip on the head and shoulder on the hoop at once. */
export function makeRimShot(rate: number, seed: string): RawSound {
  return inLayers(strikeRim, rate, `${seed} rim shot`);
}

/** The stick laid across the drum, its butt struck on the hoop. */
export function makeSideStick(rate: number, seed: string): RawSound {
  return inLayers(strikeAcross, rate, `${seed} side stick`);
}
