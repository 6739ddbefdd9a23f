/**
 * The ride cymbal: tip on the bow, tip on the bell, and the wash that gathers under repeated strokes.
 *
 * A 20-inch ride, medium thin. Sources of the numbers: published descriptions in synth/plate.ts; band levels and
 * ringing times set beside recordings of acoustic rides.
 */
import type { Plate } from '../synth/plate.ts';
import { addPlateStroke, ringPlate } from '../synth/plate.ts';
import { type CymbalVoicing, makeCymbal, trimSilence } from './cymbal.ts';
import type { RawSound } from './sound.ts';

const RIDE: Plate = {
  seed: 'ride',
  lowestHz: 180,
  highestHz: 19000,
  spacingHz: [
    [200, 14],
    [2000, 16],
    [6000, 22],
    [12000, 40],
  ],

  levelDb: [
    [150, -24],
    [350, -17],
    [700, -15],
    [1500, -11],
    [2600, -5],
    [4200, 0],
    [6500, 0],
    [9000, -2],
    [12000, -6],
    [15000, -14],
    [19000, -34],
  ],

  t60Seconds: [
    [250, 4.6],
    [700, 3.8],
    [1500, 3],
    [3000, 2.1],
    [5000, 1.6],
    [8000, 1],
    [12000, 0.6],
    [16000, 0.4],
  ],

  prompt: [
    [300, 1.6],
    [900, 1],
    [2500, 1.2],
    [4500, 1.7],
    [9000, 2],
    [15000, 2.2],
  ],

  riseSeconds: [
    [300, 0.02],
    [1000, 0.012],
    [4000, 0.014],
    [12000, 0.012],
  ],
  touch: [
    [300, -0.15],
    [1000, -0.05],
    [3000, 0.1],
    [6000, 0.25],
    [12000, 0.4],
  ],
  unevenness: 2.1,
  variety: 0.42,
};

const BOW: CymbalVoicing = {
  plate: RIDE,
  click: { levelDb: 11, t60Seconds: 0.016, riseSeconds: 0.00008, lowHz: 2800, highHz: 13000 },
  drivesDb: [-24, -14, -6, 2, 10],
  takes: 3,
  seconds: 5,
  contactSeconds: 0.00012,
  dampedT60Seconds: Number.POSITIVE_INFINITY,
  softT60Seconds: 6,
};

const SHOULDER: CymbalVoicing = {
  ...BOW,
  plate: {
    ...RIDE,
    seed: 'ride shoulder',
    levelDb: [
      [150, -20],
      [350, -11],
      [700, -8],
      [1500, -5],
      [2600, -2],
      [4200, 0],
      [6500, -1],
      [9000, -4],
      [12000, -9],
      [15000, -18],
      [19000, -36],
    ],
  },
  click: { levelDb: 4, t60Seconds: 0.022, riseSeconds: 0.00025, lowHz: 1800, highHz: 10000 },
  drivesDb: [-24, -12, 0, 10],
  takes: 2,
  seconds: 4,
  contactSeconds: 0.00032,
};

const BELL: CymbalVoicing = {
  ...BOW,
  plate: {
    ...RIDE,
    seed: 'ride bell',
    lowestHz: 420,
    spacingHz: [
      [400, 95],
      [2000, 110],
      [6000, 130],
      [12000, 170],
    ],

    levelDb: [
      [400, -22],
      [800, -12],
      [1300, -2],
      [2600, 2],
      [4200, 1],
      [7000, -4],
      [11000, -9],
      [16000, -22],
    ],

    prompt: [
      [500, 1.8],
      [4000, 1.5],
      [10000, 1.8],
    ],
    t60Seconds: [
      [400, 5],
      [1500, 4.6],
      [3000, 4],
      [5000, 3],
      [8000, 1.6],
      [12000, 0.8],
      [16000, 0.5],
    ],
    unevenness: 1.4,
    variety: 0.12,
  },
  click: { levelDb: 3, t60Seconds: 0.015, riseSeconds: 0.0001, lowHz: 2500, highHz: 14000 },
  drivesDb: [-24, -12, 0, 10],
};

/** What sounds beyond the sum of strokes when the cymbal rings already: slow to rise, between 2 and 9 kHz. */
const WASH: Plate = {
  ...RIDE,
  seed: 'ride wash',
  lowestHz: 1600,
  highestHz: 10000,
  levelDb: [
    [1600, -12],
    [3000, 0],
    [5000, 0],
    [9000, -9],
  ],
  prompt: [[1000, 0]],
  riseSeconds: [[1000, 0.05]],
  t60Seconds: [
    [1600, 2.6],
    [4000, 1.9],
    [9000, 0.9],
  ],
};

/** The tip on the bow. */
export function makeRide(rate: number, seed: string): RawSound {
  return { ...makeCymbal(BOW, rate, seed), wash: makeWash(WASH, rate, seed) };
}

/** The shoulder of the stick on the bow: less of a click, more of the plate. */
export function makeRideShoulder(rate: number, seed: string): RawSound {
  return makeCymbal(SHOULDER, rate, seed);
}

/** The tip on the bell. */
export function makeRideBell(rate: number, seed: string): RawSound {
  return makeCymbal(BELL, rate, seed);
}

/** A wash lies under the strokes themselves, so it ends earlier. */
const WASH_END_DB = -48;

/** Two takes of a wash. */
export function makeWash(plate: Plate, rate: number, seed: string): readonly Float32Array[] {
  const own = { ...plate, seed: `${seed} ${plate.seed}` };
  const stroke = { driveDb: 0, contactSeconds: 0.001, dampedT60Seconds: Number.POSITIVE_INFINITY };
  return [0, 1].map((take) => {
    const out = new Float32Array(Math.ceil(3 * rate));
    addPlateStroke(out, rate, own, ringPlate(own, take, rate, 3), stroke);
    return trimSilence(out, rate, WASH_END_DB);
  });
}
