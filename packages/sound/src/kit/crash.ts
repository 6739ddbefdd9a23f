/**
 * The crash cymbal: the shoulder of the stick on the edge of a 16-inch thin cymbal.
 *
 * Sources of the numbers: as for the ride; a thin cymbal struck on its edge builds up for longer and brighter.
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
