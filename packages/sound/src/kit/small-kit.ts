/**
 * A small kit: every sound of the set in one plain stroke of a few tenths of a second, made in milliseconds. It stands in
 * where the whole kit takes a device too long; voices are told apart and as loud as they are asked to be, and that is
 * all.
 *
 * Conventions: Hz and seconds; decibels relative to the first ringing part of a sound.
 */
import { seededRandom } from '@shedbook/core';
import { dbToGain, highPass, lowPass } from '@shedbook/signal';
import { addModes } from '../synth/modes.ts';
import { addBurst, fadeEnd } from '../synth/noise.ts';
import { CLICK_HZ } from './click.ts';
import { type Kit, type KitOptions, kitOf } from './kit.ts';
import { type RawSound, SOUND_NAMES, type SoundMaker, type SoundName } from './sound.ts';

/** One way of ringing: frequency, level, time to fall by 60 dB. */
type Ring = readonly [hz: number, levelDb: number, t60Seconds: number];

/** Noise between two corners: level, time to fall by 60 dB. */
type Hiss = readonly [lowHz: number, highHz: number, levelDb: number, t60Seconds: number];

/** What a stroke is made of. */
interface Plain {
  readonly rings: readonly Ring[];
  readonly hiss: Hiss;
}

const drum = (hz: number, t60Seconds: number, hiss: Hiss): Plain => ({
  // published: Fletcher and Rossing, The Physics of Musical Instruments: first partials of a membrane, 1 : 1.59 : 2.14
  rings: [
    [hz, 0, t60Seconds],
    [1.59 * hz, -10, 0.6 * t60Seconds],
    [2.14 * hz, -16, 0.4 * t60Seconds],
  ],
  hiss,
});

const plate = (hz: number, hiss: Hiss): Plain => ({
  // by ear: partials that stand in no simple ratio
  rings: [1, 1.47, 2.09, 2.56].map((ratio, i): Ring => [ratio * hz, -3 * i, hiss[3]]),
  hiss,
});

const block = (hz: number): Plain => ({
  rings: [
    [hz, 0, 0.08],
    [1.62 * hz, -9, 0.06],
  ],
  hiss: [hz, 5000, -20, 0.01],
});

const SNARE = drum(190, 0.12, [1500, 9000, 4, 0.2]);
const RIDE = plate(3300, [5000, 16_000, -2, 0.5]);
const HATS = plate(5200, [7000, 16_000, 2, 0.08]);

/** Each sound. Source: by ear, after the whole kit. */
const PLAIN: Readonly<Record<SoundName, Plain>> = {
  ride: RIDE,
  'ride-bell': plate(1900, [4000, 14_000, -14, 0.6]),
  'ride-shoulder': plate(2700, [3500, 14_000, 2, 0.7]),
  hihat: HATS,
  'hihat-shoulder': plate(4300, [5500, 15_000, 4, 0.14]),
  'hihat-open': plate(5000, [6000, 16_000, 4, 0.5]),
  'hihat-foot': plate(4200, [5000, 12_000, -2, 0.05]),
  'hihat-splash': plate(4600, [5500, 16_000, 0, 0.45]),
  crash: plate(2100, [2500, 16_000, 6, 0.9]),
  bass: drum(58, 0.28, [60, 900, -12, 0.02]),
  'bass-heel-down': drum(55, 0.34, [60, 500, -18, 0.02]),
  snare: SNARE,
  'snare-edge': drum(230, 0.1, [2000, 9000, 4, 0.16]),
  'snare-buzz': drum(190, 0.2, [1500, 9000, 8, 0.4]),
  'snare-tap': drum(210, 0.06, [2500, 11_000, 8, 0.12]),
  'snare-sweep': drum(210, 0.02, [3000, 12_000, 14, 0.3]),
  sidestick: block(1650),
  rimshot: drum(260, 0.16, [1800, 10_000, 6, 0.22]),
  'tom-high': drum(165, 0.3, [200, 3000, -14, 0.03]),
  'tom-mid': drum(125, 0.36, [160, 2600, -14, 0.03]),
  'tom-low': drum(88, 0.42, [120, 2200, -14, 0.03]),
  'tom-floor': drum(70, 0.46, [100, 2000, -14, 0.03]),
  splash: plate(3000, [4000, 16_000, 4, 0.4]),
  china: plate(1500, [1500, 12_000, 6, 0.7]),
  cowbell: block(845),
  clap: { rings: [], hiss: [700, 5000, 6, 0.09] },
  'click-accent': block(CLICK_HZ['click-accent']),
  'click-beat': block(CLICK_HZ['click-beat']),
  'click-subdivision': block(CLICK_HZ['click-subdivision']),
};

function strike(name: SoundName, rate: number, seed: string): RawSound {
  const { rings, hiss } = PLAIN[name];
  const [lowHz, highHz, levelDb, t60Seconds] = hiss;
  const seconds = Math.max(t60Seconds, ...rings.map(([, , t60]) => t60));
  const samples = new Float32Array(Math.ceil(seconds * rate));
  const modes = rings.map(([frequencyHz, ringDb, t60]) => ({
    ...{ frequencyHz, amplitude: dbToGain(ringDb), t60Seconds: t60 },
    // From rest: a sine that begins at its height would click.
    phase: 0,
  }));
  addModes(samples, rate, modes);
  const filters = [highPass(lowHz, 0.7, rate), lowPass(highHz, 0.7, rate)];
  addBurst(
    samples,
    rate,
    { gain: dbToGain(levelDb), riseSeconds: 0.0005, t60Seconds, filters },
    seededRandom(`${seed} small ${name}`),
  );
  fadeEnd(samples, rate, 0.3 * seconds);
  return { layers: [{ driveDb: 0, takes: [samples] }], wash: [] };
}

/** @returns the small kit. @throws RangeError when the sample rate is not 8000 to 192000 */
export function createSmallKit(options: KitOptions): Kit {
  const makers = SOUND_NAMES.map((name): [SoundName, SoundMaker] => [
    name,
    (rate, seed) => strike(name, rate, seed),
  ]);
  return kitOf(Object.fromEntries(makers) as Record<SoundName, SoundMaker>, options);
}
