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
  highestHz: 17000,
  spacingHz: [
    [200, 16],
    [2000, 18],
    [6000, 24],
    [12000, 40],
  ],
  levelDb: [
    [150, -20],
    [350, -8],
    [800, -5],
    [2000, -3],
    [4500, 0],
    [7000, -2],
    [11000, -5],
    [16000, -12],
  ],
  t60Seconds: [
    [250, 4.2],
    [1000, 3.6],
    [3000, 2.8],
    [5000, 2.3],
    [8000, 1.5],
    [12000, 0.9],
    [16000, 0.6],
  ],
  prompt: [
    [400, 0.7],
    [1200, 0.5],
    [4000, 0.22],
    [9000, 0.25],
  ],
  riseSeconds: [
    [400, 0.005],
    [1000, 0.01],
    [3500, 0.022],
    [9000, 0.035],
  ],
  touch: [
    [300, -0.15],
    [1000, -0.05],
    [3000, 0.15],
    [6000, 0.3],
    [12000, 0.45],
  ],
  unevenness: 1.6,
};

const EDGE: CymbalVoicing = {
  plate: CRASH,
  click: { levelDb: -1, t60Seconds: 0.03, riseSeconds: 0.0003, lowHz: 900, highHz: 9000 },
  drivesDb: [-24, -12, -2, 8],
  takes: 2,
  seconds: 4.5,
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
