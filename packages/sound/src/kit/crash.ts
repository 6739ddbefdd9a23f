/**
 * Cymbals struck on their edge with the shoulder of the stick: the crash, 16 inches and thin; the splash, 8 inches and
 * thinner; the china, 18 inches with its rim turned over.
 *
 * Sources of the numbers: as for the ride; a thin cymbal struck on its edge builds up for longer and brighter. A small one
 * speaks at once and is gone within a second; a rim that is turned over breaks the plate up into noise with little pitch.
 */
import type { Plate } from '../synth/plate.ts';
import { type CymbalVoicing, makeCymbal } from './cymbal.ts';
import { makeWash } from './ride.ts';
import type { RawSound } from './sound.ts';

const CRASH: Plate = {
  seed: 'crash',
  lowestHz: 140,
  highestHz: 19000,
  spacingHz: [
    [200, 16],
    [2000, 18],
    [6000, 24],
    [12000, 40],
  ],

  levelDb: [
    [150, -20],
    [350, -13],
    [800, -10],
    [1500, -8],
    [2500, -4],
    [4500, 0],
    [7000, -2],
    [11000, -5],
    [15000, -12],
    [19000, -30],
  ],

  t60Seconds: [
    [250, 5],
    [1000, 4.8],
    [3000, 4.2],
    [5000, 3.5],
    [8000, 2.3],
    [12000, 1.4],
    [16000, 0.9],
  ],

  prompt: [
    [250, 3.5],
    [700, 3.2],
    [1200, 2],
    [2200, 0.5],
    [4000, 0.12],
    [9000, 0.15],
  ],

  riseSeconds: [
    [300, 0.022],
    [1000, 0.02],
    [2500, 0.014],
    [5000, 0.024],
    [9000, 0.035],
  ],
  touch: [
    [300, -0.15],
    [1000, -0.05],
    [3000, 0.15],
    [6000, 0.3],
    [12000, 0.45],
  ],
  unevenness: 1.7,
  variety: 0.42,
};

const EDGE: CymbalVoicing = {
  plate: CRASH,
  click: { levelDb: -1, t60Seconds: 0.03, riseSeconds: 0.0003, lowHz: 900, highHz: 9000 },
  drivesDb: [-24, -12, -2, 8],
  takes: 2,
  seconds: 5,
  contactSeconds: 0.0004,
  dampedT60Seconds: Number.POSITIVE_INFINITY,
  softT60Seconds: 4,
};

const WASH: Plate = {
  ...CRASH,
  seed: 'crash wash',
  lowestHz: 1500,
  prompt: [[1000, 0]],
  riseSeconds: [[1000, 0.05]],
};

/** The shoulder of the stick on the edge. */
export function makeCrash(rate: number, seed: string): RawSound {
  return { ...makeCymbal(EDGE, rate, seed), wash: makeWash(WASH, rate, seed) };
}

/** So much smaller a plate, every mode so much higher. */
function smaller(curve: Plate['levelDb'], ratio: number): Plate['levelDb'] {
  return curve.map(([hz, value]) => [Math.min(19000, hz * ratio), value]);
}

const SPLASH: Plate = {
  ...CRASH,
  seed: 'splash',
  lowestHz: 420,
  spacingHz: smaller(CRASH.spacingHz, 2).map(([hz, spacing]) => [hz, 2 * spacing]),
  levelDb: [
    [450, -20],
    [900, -12],
    [2000, -6],
    [4000, -1],
    [7000, 0],
    [11000, -2],
    [15000, -8],
    [19000, -26],
  ],
  t60Seconds: [
    [450, 1.5],
    [2000, 1.3],
    [5000, 1],
    [9000, 0.7],
    [15000, 0.4],
  ],
  riseSeconds: [
    [450, 0.008],
    [3000, 0.006],
    [9000, 0.01],
  ],
};

const CHINA: Plate = {
  ...CRASH,
  seed: 'china',
  lowestHz: 190,
  spacingHz: CRASH.spacingHz.map(([hz, spacing]) => [hz, 1.3 * spacing]),
  levelDb: [
    [200, -16],
    [400, -7],
    [800, -3],
    [1600, 0],
    [3000, 0],
    [5000, -2],
    [8000, -5],
    [12000, -11],
    [19000, -34],
  ],
  t60Seconds: [
    [250, 2.6],
    [1000, 2.4],
    [3000, 2],
    [6000, 1.4],
    [12000, 0.7],
  ],
  riseSeconds: [
    [300, 0.012],
    [2000, 0.006],
    [8000, 0.012],
  ],
  unevenness: 3,
  variety: 0.6,
};

/** The shoulder of the stick on the edge of the splash. */
export function makeSplashCymbal(rate: number, seed: string): RawSound {
  return makeCymbal({ ...EDGE, plate: SPLASH, seconds: 2 }, rate, seed);
}

/** The shoulder of the stick on the edge of the china. */
export function makeChina(rate: number, seed: string): RawSound {
  return makeCymbal({ ...EDGE, plate: CHINA, seconds: 3.5 }, rate, seed);
}
