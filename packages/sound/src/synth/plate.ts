/**
 * A model of a cymbal: hundreds of modes, dense and inharmonic, in bands that build up one after another.
 *
 * A tip excites every mode at once, the low ones most; within tens of milliseconds the bending of the plate
 * couples modes and energy climbs into the kilohertz range: the harder the stroke, the more of it. Each band
 * of modes therefore has a prompt share, a time constant with which it settles and a touch (how much faster than the
 * stroke it grows).
 *
 * Conventions: levels in dB per octave of bandwidth; drives in dB relative to a plain stroke.
 * Source: T. D. Rossing and N. H. Fletcher, The Physics of Musical Instruments, ch. 20: early low-frequency
 * energy, 700–1000 Hz strong after 10–20 ms, 3–5 kHz dominating from about 50 ms on; modes evenly dense as in
 * a flat plate.
 * Differs from the source: modes are thinned (wider apart than a real cymbal's 10 Hz at the top) and energy
 * transfer is prescribed band by band, not computed.
 */

import { type Random, seededRandom } from '@shedbook/core';
import { dbToGain, easePerSample, fallPerSample } from '@shedbook/signal';
import { type Curve, curveAt } from './curve.ts';
import { addModes, type Mode } from './modes.ts';

/** A cymbal, or a pair of them, described by curves over frequency. */
export interface Plate {
  readonly seed: string;
  readonly lowestHz: number;
  readonly highestHz: number;
  /** Distance between neighbouring modes, in hertz. */
  readonly spacingHz: Curve;
  readonly levelDb: Curve;
  readonly t60Seconds: Curve;
  /** Amplitude at the first moment, relative to the settled one: under 1 a band builds up, over 1 it pings. */
  readonly prompt: Curve;
  /** Time constant with which it settles. */
  readonly riseSeconds: Curve;
  /** dB gained beyond the stroke's own for every dB of drive. */
  readonly touch: Curve;
  /** How much modes of one frequency differ in ringing time, as a factor: 1 is not at all. */
  readonly unevenness: number;
  /** How much the place of striking changes each mode from take to take, 0…1. */
  readonly variety: number;
}

/** One band of modes, rung once. */
interface Band {
  readonly centreHz: number;
  readonly buffer: Float32Array;
}

const BAND_EDGES_HZ = [0, 250, 450, 700, 1000, 1500, 2200, 3200, 4500, 6300, 8500, 11000, 14000, 24000];

function plateModes(plate: Plate, take: number): readonly Mode[] {
  const random = seededRandom(plate.seed);
  const own = seededRandom(`${plate.seed} take ${take}`);
  const modes: Mode[] = [];
  for (let hz = plate.lowestHz; hz < plate.highestHz; ) {
    const spacing = curveAt(plate.spacingHz, hz);
    const frequencyHz = hz + spacing * (random.next() - 0.5);
    const power = dbToGain(curveAt(plate.levelDb, hz)) ** 2 * (spacing / hz);
    const where = Math.sqrt(1 - plate.variety ** 2) * bell(random) + plate.variety * bell(own);
    modes.push({
      frequencyHz,
      amplitude: Math.sqrt(2 * power) * where,
      phase: 2 * Math.PI * random.next(),
      t60Seconds: curveAt(plate.t60Seconds, hz) * plate.unevenness ** (2 * random.next() - 1),
    });
    hz += spacing;
  }
  return modes;
}

/** A number spread like a mode's amplitude at a random place of the plate: about normal, deviation 1. */
function bell(random: Random): number {
  return (random.next() + random.next() + random.next() - 1.5) * 2;
}

/** Rings every band of a plate once, for one place of striking. */
export function ringPlate(
  plate: Plate,
  take: number,
  sampleRateHz: number,
  seconds: number,
): readonly Band[] {
  const modes = plateModes(plate, take);
  return BAND_EDGES_HZ.slice(1).flatMap((high, i) => {
    const low = BAND_EDGES_HZ[i] ?? 0;
    const own = modes.filter((mode) => mode.frequencyHz >= low && mode.frequencyHz < high);
    if (own.length === 0) return [];
    const longest = 1.4 * Math.max(...own.map((mode) => mode.t60Seconds));
    const buffer = new Float32Array(Math.ceil(sampleRateHz * Math.min(seconds, longest)));
    addModes(buffer, sampleRateHz, own);
    return [{ centreHz: Math.sqrt(Math.max(low, plate.lowestHz) * high), buffer }];
  });
}

/** How a stroke drives a plate. */
export interface PlateStroke {
  readonly driveDb: number;
  /** Time over which contact sets the modes going. */
  readonly contactSeconds: number;
  /** Extra damping of the whole, as a ringing time; infinite for none. */
  readonly dampedT60Seconds: number;
}

/** Adds a stroke on a rung plate to a buffer. */
export function addPlateStroke(
  out: Float32Array,
  sampleRateHz: number,
  plate: Plate,
  bands: readonly Band[],
  stroke: PlateStroke,
): void {
  for (const band of bands) addBand(out, sampleRateHz, plate, band, stroke);
}

/** After this many time constants whatever rises has risen (to one part in two million). */
const RISEN = 14.5;

function addBand(out: Float32Array, rate: number, plate: Plate, band: Band, stroke: PlateStroke): void {
  const { buffer, centreHz } = band;
  const gain = dbToGain(curveAt(plate.touch, centreHz) * stroke.driveDb);
  const late = 1 - curveAt(plate.prompt, centreHz);
  const riseSeconds = curveAt(plate.riseSeconds, centreHz);
  const rise = easePerSample(riseSeconds, rate);
  const contact = easePerSample(stroke.contactSeconds, rate);
  const damping = fallPerSample(stroke.dampedT60Seconds, rate);
  const length = Math.min(out.length, buffer.length);
  const risen = Math.min(length, Math.ceil(RISEN * rate * Math.max(riseSeconds, stroke.contactSeconds)));
  let [lacking, notYet, level] = [1, contact, gain];
  for (let i = 0; i < risen; i += 1) {
    out[i] = (out[i] as number) + (buffer[i] as number) * level * (1 - late * lacking) * (1 - notYet);
    lacking *= rise;
    notYet *= contact;
    level *= damping;
  }
  for (let i = risen; i < length; i += 1) {
    out[i] = (out[i] as number) + (buffer[i] as number) * level;
    level *= damping;
  }
}
